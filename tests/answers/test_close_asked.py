"""Close up as it is asked for and told, the numbers worked by hand."""

from __future__ import annotations

from math import log2

import pytest

from tests.answers.picture import close, flat, numbers, one
from tests.answers.talks import flat as flat_text
from tests.answers.talks import talk


@pytest.mark.parametrize(
    "text",
    [
        "how close does the godwit focus on the punt with 20 mm of tube at f/8",
        "macro with the godwit and a 20 mm extension tube on the punt at f/8",
        "smallest field of the godwit on the punt with 20 mm of extension at f/8",
    ],
)
def test_the_picture_close_up_at_the_far_end(asked, text):
    found = asked(text)
    case = "at the infinity mark"
    f, gap, a, p, x = 50, 2, 30, 1.1, 20
    assert one(found, "far_from_sensor_mm", case) == close(2 * f + gap + f * f / x + x)
    assert one(found, "magnification", case) == close(x / f)
    assert one(found, "working_distance_mm", case) == close(a + f * f / x)
    assert one(found, "field_width_mm", case) == close(36 * f / x)
    assert one(found, "field_height_mm", case) == close(24 * f / x)
    assert one(found, "effective_f_number", case) == close(8 * (1 + x / f / p))
    assert one(found, "light_difference_stops", case) == close(2 * log2(1 + x / f / p))


def test_tubes_named_alone_go_with_the_ring_that_seats_the_lens(asked):
    found = asked("can the godwit reach infinity on the punt with 20 mm of extension")
    assert found["chains"][0]["verdict"] == "macro-only"
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(20, abs=0.1)
    assert not found["chains"][0]["glass"]


def test_a_subject_that_would_touch_the_lens_is_warned_of(asked):
    text = " ".join(
        asked("does the subject touch the lens with the dunlin and 15 mm of tubes on the dory")["text"].split()
    )
    assert "Caution: at the infinity mark" in text
    assert (
        "Caution: at the infinity mark"
        not in asked("how close does the godwit focus on the punt with 10 mm of tube")["text"]
    )


def test_close_up_lenses_on_an_own_lens_at_infinity_and_at_its_nearest_mark(asked):
    found = asked("+4 close-up lens on the godwit on the punt: how close and how big")
    assert one(found, "working_distance_mm", "at infinity") == close(250)
    assert one(found, "magnification", "at infinity") == close(50 * 4 / 1000)
    assert one(found, "field_width_mm", "at infinity") == close(36 / 0.2)
    spread = 450 - 102
    x = (spread - (spread**2 - 4 * 2500) ** 0.5) / 2
    m = x / 50
    assert one(found, "magnification", "45 cm mark") == close(m + 0.2 * (1 + m))
    assert one(found, "working_distance_mm", "45 cm mark") == close(1 / (4 / 1000 + 1 / (30 + 2500 / x)))


def test_inches_are_answered_in_inches(asked):
    text = asked("how close with the godwit and a 20 mm tube, in inches")["text"]
    assert " in from the sensor" in text
    assert " cm" not in text


def test_unknown_planes_are_said_to_be_assumed_and_known_ones_are_not(asked):
    assert "Assumed by construction" in asked("how close does a 50mm lens focus with a 20 mm tube")["text"]
    assert "Assumed by construction" not in asked("how close does the godwit focus with a 20 mm tube")["text"]


@pytest.mark.parametrize(
    "text", ["macro with a 28mm zoom and a 20 mm tube", "re-mark the scale of a 28mm zoom with a 2 mm tube"]
)
def test_distances_of_a_lens_that_moves_in_part_are_not_told(asked, text):
    found = asked(text)
    assert "moving only a part of itself" in flat(found)
    assert not numbers(found, "far_from_sensor_mm")
    assert not numbers(found, "remarked_mm")


def test_the_picture_in_steps_from_the_infinity_mark_to_the_nearest(asked):
    found = asked("how close does the godwit focus on the punt with 5 mm of tube at f/8")
    spread = 450 - 102
    own = (spread - (spread**2 - 4 * 2500) ** 0.5) / 2
    for case, x in (("infinity mark", 5), ("a third out", 5 + own / 3), ("its nearest", 5 + own)):
        assert one(found, "magnification", case) == close(x / 50)
        assert one(found, "field_width_mm", case) == close(36 * 50 / x)


def test_a_bellows_is_told_at_both_ends_of_the_draw_it_is_said_to_have(asked):
    found = asked("how close does a 40mm enlarger lens focus on mft with bellows 60 to 150 mm")
    # its register and the draw make the image distance; flange to image of such a lens is 0.85 to 1.05 f
    for draw in (60, 150):
        ((least, greatest),) = numbers(found, "magnification", f"bellows at {draw} mm")
        assert (least, greatest) == close((draw + 19.25 - 1.05 * 40) / 40, (draw + 19.25 - 0.85 * 40) / 40)


def test_what_a_bellows_costs_in_light_and_leaves_sharp_is_told_at_both_ends(asked):
    light = asked("light loss of a 40mm enlarger lens at f/8 on bellows of 60 to 150 mm")
    assert one(light, "light_difference_stops", "60 mm, even pupils") == close(2 * log2(1 + 60 / 40))
    sharp = asked("depth of field of a 40mm enlarger lens at f/8 on mft with bellows of 60 to 150 mm")
    assert not numbers(sharp, "hyperfocal_mm")
    assert numbers(sharp, "dof_mm", "60 mm")
    assert numbers(sharp, "dof_mm", "150 mm")


def test_a_helicoid_between_is_told_drawn_in_and_drawn_out_on_its_seat(asked):
    found = asked("how close does a 75mm M42 lens focus on an E-mount body with an m42 helicoid 36-90")
    (seat,) = [chain["register_error_mm"] for chain in found["chains"][:1]]
    middle = (seat["least"] + seat["greatest"]) / 2
    assert one(found, "magnification", "drawn in, the lens") == pytest.approx((middle - 54 / 2) / 75, rel=0.01)
    assert one(found, "magnification", "drawn out, the lens") == pytest.approx((middle + 54 / 2) / 75, rel=0.01)
    assert seat["greatest"] - seat["least"] > 54


@pytest.mark.parametrize(
    ("text", "tubes"),
    [
        ("m42 50mm on E, tubes of 10 and 26. how close", {10, 26, 36}),
        ("50mm m42 on E with a tube of 10. how close", {10}),
    ],
)
def test_tubes_of_so_many_need_no_unit(asked, text, tubes):
    found = {round(low * 50) for low, _, *_ in numbers(asked(text), "magnification")}
    assert tubes <= found


@pytest.mark.parametrize(
    ("text", "field"),
    [
        ("how wide is the thing i see at 0.5x on full frame", "72 x 48 mm"),
        ("how tall is the subject at 1:3 on aps-c", "71 x 47 mm"),
        ("how big is what i see at 2x on mft", "8.7 x 6.5 mm"),
    ],
)
def test_how_large_the_field_is_at_a_magnification_comes_first(asked, text, field):
    found = asked(text)
    assert found["intent"] == "macro-distance"
    assert field in found["text"].split("\n")[0]


@pytest.mark.parametrize(
    ("text", "focal", "away"),
    [
        ("100mm lens, subject sits 40 cm in front of the front principal plane, how much extension is that", 100, 400),
        ("50mm lens, object 20 cm before the front principal plane. extension?", 50, 200),
        ("80mm, subject 30 cm from the front nodal point, what magnification", 80, 300),
    ],
)
def test_before_the_front_principal_plane_the_extension_hangs_on_no_plane(asked, text, focal, away):
    found = asked(text)
    x = focal**2 / (away - focal)
    assert close(x) in [row[0] for row in numbers(found, "extension_mm")]
    assert close(x / focal) in [row[0] for row in numbers(found, "magnification")]


@pytest.mark.parametrize(
    "text",
    [
        "how much extension for a 90 mm at half life size",
        "what extension on a 90 gives 1:2",
        "how much extension with a 90 for 0.5x",
    ],
)
def test_what_an_extension_is_wanted_for_is_the_lens(asked, text):
    assert close(45) in [row[0] for row in numbers(asked(text), "extension_mm")]


@pytest.mark.parametrize(
    ("text", "sizes"),
    [("+2 or +4 diopter on 100mm, size", {0.2, 0.4}), ("+1 vs +3 on a 200, how close", {0.2, 0.6})],
)
def test_close_up_lenses_to_choose_from_do_not_add_up(asked, text, sizes):
    assert {round(low, 2) for low, _ in numbers(asked(text), "magnification")} == sizes


def test_close_up_lenses_that_are_stacked_add_up(asked):
    assert "+4 dioptre" in flat(asked("+1 and +3 stacked on a 135, how close"))


@pytest.mark.parametrize(
    ("text", "tubes"),
    [
        ("50mm lens, 10 or 16 mm tube, magnification", [(10, 10), (16, 16)]),
        ("50mm lens, 10 and 16 mm tubes, magnification", [(10, 10), (16, 16)]),
        ("my 50mm lens, 12, 20 and 36 mm tubes, how close", [(12, 12), (20, 20), (36, 36)]),
    ],
)
def test_the_first_of_a_row_of_tubes_behind_a_lens_is_a_tube(desk, text, tubes):
    assert [piece.thickness_mm for piece in desk.ask(text).question.adapters] == tubes


@pytest.mark.parametrize(
    ("text", "focal", "tube"),
    [
        ("tube 36 on 200mm, min focus 2.5m normally. how near now", 200, 36),
        ("tube 12 behind a 50, size?", 50, 12),
    ],
)
def test_the_number_behind_a_tube_is_its_length_where_its_lens_follows(club, text, focal, tube):
    found = club.ask(text).question
    assert [lens.focal_length_mm for lens in found.lenses] == [focal]
    assert [piece.thickness_mm for piece in found.adapters] == [(tube, tube)]


def test_a_tube_named_by_its_length_and_thread_is_no_lens_mount(talked):
    found = talked("28mm w/ 16mm M42 tube, does the bug touch the glass?")
    assert close(16 / 28) in [row[0] for row in numbers(found, "magnification")]


@pytest.mark.parametrize("then", ["how much light does the 10 eat", "how many stops does that 10 cost"])
def test_the_tube_spoken_of_by_its_length_is_no_other_lens(talked, then):
    found = talked("25mm c mount, 5mm ring behind it, how close", "and with 10?", then)
    assert close(2 * log2(1.4)) in [row[0] for row in numbers(found, "light_difference_stops")]


def test_whether_a_tube_loses_light_takes_no_tube_away(talked):
    found = talked("100mm, 36mm tube", "does that 36 lose light")
    assert close(2 * log2(1.36)) in [row[0] for row in numbers(found, "light_difference_stops")]


@pytest.mark.parametrize("text", ["50 on bellows, 2x", "50 on bellows, 2x of stamps"])
def test_behind_a_bellows_a_factor_is_how_large_it_draws(asked, text):
    found = asked(text)
    assert "magnification 2:1" in found["reading"]


@pytest.mark.parametrize("lens", ["i have a 135", "got a 135mm", "135?"])
def test_a_focal_length_after_an_infinity_objective_is_that_of_its_tube_lens(club, lens):
    found = talk(club, "10x objective falls through my 25-52 ring", "it says infinity sign", lens)[-1]
    assert found.intent == "macro-distance"
    assert "behind 135 mm: 6.8x to 8.2x" in flat_text(found)  # 10 x 135 / (165 to 200)
    assert "image circle 12 to 18 mm" in flat_text(found)


def test_a_focal_length_in_another_talk_is_a_lens(club):
    found = talk(club, "50 1.8 m42 on E", "what is a flange", "i have a 135")[-1]
    assert "tube lens" not in flat_text(found)


def test_a_focal_length_behind_a_comma_is_no_length_of_the_helicoid_before_it(asked):
    found = asked(
        "m42 to E ring w 10mm helicoid built in, my 50 goes to 0.5m on its own, what do i get all the way out"
    )
    assert "50 mm M42 lens" in found["reading"]
    assert "at its 50 cm mark" in flat(found)


@pytest.mark.parametrize(
    ("text", "extension"),
    [
        ("how much extension does a 60mm need for half life size", 30),
        ("how much extension will a 40 mm need for twice life size", 80),
        ("how much extra extension would the 80mm take to reach 0.7x", 56),
    ],
)
def test_a_length_with_an_article_that_needs_extension_is_the_lens(asked, text, extension):
    assert numbers(asked(text), "extension_mm") == [(close(extension), close(extension))]


def test_a_number_right_behind_a_tube_is_how_long_that_is(club):
    (found,) = talk(club, "tube 12 for a 50, how close")
    assert [lens.focal_length_mm for lens in found.question.lenses] == [50]
    assert [piece.thickness_mm for piece in found.question.adapters] == [(12, 12)]


@pytest.mark.parametrize(
    ("say", "focal", "tubes"),
    [
        ("dragonflies with a 60 and 20mm or 40mm of tube. distances please for both", 60, (20, 40)),
        ("a 50 with 12 or 25mm of tubes, how close each", 50, (12, 25)),
        ("a 75mm lens with 20mm vs 30mm of tube, working distance", 75, (20, 30)),
        ("my 35 and 8 or 16 mm of tubes?", 35, (8, 16)),
    ],
)
def test_tubes_to_choose_from_are_no_lenses(asked, say, focal, tubes):
    found = asked(say)
    for x in tubes:
        assert close(x / focal) in [one for pair in numbers(found, "magnification") for one in pair]
    assert "Together" not in found["text"]


@pytest.mark.parametrize(
    ("say", "focal", "tube", "at"),
    [
        ("effective stop of a 50 with an 8mm tube if i set 8", 50, 8, 8),
        ("real f number of a 75 on 25 of tubes if the ring says 5.6", 75, 25, 5.6),
        ("true f-number of a 100 on 20 mm of tube with the ring on 11", 100, 20, 11),
    ],
)
def test_the_stop_that_is_set_counts_less_and_is_told_first(asked, say, focal, tube, at):
    found = asked(say)
    assert close(at * (1 + tube / focal)) in [one for pair in numbers(found, "effective_f_number") for one in pair]
    assert flat(found).startswith(f"f/{at:g} counts as f/")


def test_the_stop_that_is_set_holds_the_tube_told_before(talked):
    found = talked("how close is a 50 with 20 mm of tube", "and the real aperture if the dial says 11")
    assert close(11 * 1.4) in [one for pair in numbers(found, "effective_f_number") for one in pair]


@pytest.mark.parametrize(
    "said",
    [
        "with working distance of 120 mm", "working distance must be 120 mm", "120 mm between front glass and object",
        "i need 120 mm of clearance", "no closer than 120 mm",
    ],
)  # fmt: skip
def test_the_room_that_is_wanted_is_before_the_front_glass(asked, said):
    found = asked(f"16mm C lens, {said}, magnification")
    assert "120 mm in front of the glass" in found["reading"]
    assert "120 mm before the front glass" in flat(found)


def test_the_room_that_is_wanted_is_no_other_lens(talked):
    found = talked("16 mm C lens close up", "what if the working distance must be 120 mm")
    assert "16 mm C-mount lens" in found["reading"]
    found = talked("16 mm C lens close up", "working distance must be 120 mm", "it must stay 150 mm away")
    assert "at 150 mm" in found["reading"]
    assert "120 mm" not in found["reading"]


def test_a_subject_so_many_millimetres_away_is_no_lens(asked):
    found = asked("C-mount 25mm on 1/2 sensor, lens over a belt 300 mm away, field?")
    assert "at 300 mm" in found["reading"]
    assert "300 mm lens" not in found["reading"]


@pytest.mark.parametrize("told", ["magnification -1", "-1x magnification", "magnification 1"])
def test_an_image_on_its_head_is_as_large_as_one_that_stands(asked, told):
    found = asked(f"50 mm at {told}, stops lost")
    assert one(found, "light_difference_stops", "even") == close(2)


def test_no_size_costs_no_light(asked):
    assert one(asked("50 mm at magnification 0, how close"), "light_difference_stops") == 0


@pytest.mark.parametrize(
    ("text", "f", "x"),
    [
        ("100mm bellows head drawn out 100mm past infinity", 100, 100),
        ("50mm racked out 25mm past infinity, magnification?", 50, 25),
        ("135 bellows lens, 60 mm beyond the infinity position", 135, 60),
        ("60mm lens 20mm further out than infinity, mag", 60, 20),
    ],
)
def test_what_is_drawn_out_beyond_infinity_is_extension_and_no_error(asked, text, f, x):
    found = asked(text)
    assert found["intent"] == "macro-distance"
    assert (x / f) in [pytest.approx((low + high) / 2, rel=0.01) for low, high in numbers(found, "magnification")]


def test_a_lens_that_goes_past_infinity_by_tenths_is_off(asked):
    found = asked("my 50 goes 0.3mm past infinity. shim?")
    assert found["intent"] == "shim-calibration"
    assert "0.3 mm too close" in flat(found)


@pytest.mark.parametrize(
    ("text", "f", "tubes"),
    [("two m42 tubes 7 and 14, 135 on X", 135, [7, 14]), ("tubes 10 and 16, 100 on E, how close", 100, [10, 16])],
)
def test_what_is_longer_than_any_tube_and_goes_on_a_body_is_the_lens(club, text, f, tubes):
    (found,) = talk(club, text)
    assert found.question.lens.focal_length_mm == f
    assert [one.thickness_mm[0] for one in found.question.adapters] == tubes
