"""Light and circle of what stands together: coupled lenses, spacers, plates, a lens held by hand; worked by hand."""

from __future__ import annotations

from math import hypot, log2

import pytest

from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import close, flat, numbers, one


@pytest.mark.parametrize(
    ("text", "counts", "lost"),
    [
        ("reversed 28/2.8 before a 135/3.5, stops lost?", 135 / 28 * 2.8, 2 * log2(135 / 28 * 2.8 / 3.5)),
        ("28 2.8 and 135 3.5 coupled front to front, effective f", 13.5, 2 * log2(13.5 / 3.5)),
        ("two 50 1.8 face to face, how much light lost", 1.8, 0),
    ],
)
def test_of_coupled_lenses_the_narrower_opening_counts(asked, text, counts, lost):
    found = asked(text)
    assert one(found, "effective_f_number") == close(counts)
    assert one(found, "light_difference_stops", "coupled") == pytest.approx(lost, abs=1e-6)


def test_two_of_a_kind_are_lenses_and_no_seconds(asked):
    found = asked("two 50s coupled with a male male ring, how much light lost")
    assert not numbers(found, "shutter_s")
    assert "runs parallel" in flat(found)


@pytest.mark.parametrize(
    ("text", "x", "focal", "circle"),
    [
        ("25mm c lens, 16mm circle, 10mm ring: does it fill mft now?", 10, 25, 16),
        ("does racking out help? 25mm c with a 16mm circle, +5 mm behind it", 5, 25, 16),
        ("13mm circle 25mm lens pulled 6mm further out, cover 1 inch sensor?", 6, 25, 13),
        ("12.5mm lens, 8 mm circle, another 2mm behind it. 1/1.8 sensor filled?", 2, 12.5, 8),
    ],
)
def test_a_circle_grows_by_whatever_moves_the_lens_out(asked, text, x, focal, circle):
    grown = numbers(asked(text), "image_circle_mm")[0]
    assert grown == close(circle * (1 + 0.45 * x / focal), circle * (1 + 1.1 * x / focal))


def test_a_ring_as_thick_as_the_seat_moves_nothing_out(asked):
    found = asked("16 mm circle, 50mm M42 lens on MFT with a 26 mm ring, does it cover")
    assert numbers(found, "image_circle_mm")[0] == close(16, 16)


@pytest.mark.parametrize(
    ("text", "time"),
    [
        ("1/focal rule with a 135 on mft via plain ring. what shutter", 1 / 135 / (hypot(36, 24) / hypot(17.3, 13))),
        ("55 f1.2 with 0.71 booster on apsc handheld min shutter", 1 / 55 / 0.71 / (hypot(36, 24) / hypot(23.6, 15.7))),
        ("135 on full frame, 3 stops ibis, slowest shutter by hand", 8 / 135),
    ],
)
def test_by_hand_the_shutter_goes_by_the_view(asked, text, time):
    assert one(asked(text), "shutter_s") == close(time)


def test_a_plate_is_told_in_centimetres(asked):
    found = asked("135mm f4.5 from a 9x12 plate folder, will it cover apsc")
    assert numbers(found, "image_circle_mm")[0][0] == pytest.approx(150)


def test_what_a_lens_is_for_and_what_it_is_put_on_are_told_apart(asked):
    found = asked("210mm for 13x18, room for shift on 44x33")
    long, short = numbers(found, "shift_mm")
    circle = hypot(130, 180)
    assert long[0] == pytest.approx(((circle**2 - 32.9**2) ** 0.5 - 43.8) / 2, abs=0.01)
    assert short[0] > long[0]


def test_an_enlarger_lens_much_shorter_than_those_known_is_asked_for_its_circle(asked):
    found = asked("28mm enlarger lens on full frame, cover?")
    assert not numbers(found, "lit_share")
    assert "measure its circle" in flat(found)


def test_the_stops_of_a_pair_are_asked_after_its_size(desk):
    talk = Talk()
    desk.ask("reversed 28/2.8 before a 135/3.5", talk)
    found = record_of(desk.ask("stops lost?", talk), desk.knowledge)
    assert one(found, "light_difference_stops") == close(2 * log2(13.5 / 3.5))


@pytest.mark.parametrize(
    ("text", "at", "crop"),
    [
        ("is f2 on mft really f4, do i expose for f4 then??", 2, hypot(36, 24) / hypot(17.3, 13)),
        ("50 1.8 on aps-c, people say it is 2.8. true for exposure?", 1.8, hypot(36, 24) / hypot(23.6, 15.7)),
    ],
)
def test_a_stop_set_against_its_crop_exposes_as_it_is(asked, text, at, crop):
    found = asked(text)
    assert one(found, "equivalent_f_number") == close(at * crop)
    assert flat(found).startswith(f"No: f/{at:g} exposes as f/{at:g} on any sensor")


@pytest.mark.parametrize(
    "text",
    ["0.71 behind a full frame lens, X body. corners ok", "full frame lens on X, stick a .71 in, corners dark?"],
)
def test_a_small_number_that_nothing_small_is_measured_by_is_a_reducer(asked, text):
    assert numbers(asked(text), "image_circle_mm")[0] == close(*(2 * [0.71 * hypot(36, 24)]))


def _talk(desk, *lines):
    talk = Talk()
    answers = [record_of(desk.ask(line, talk), desk.knowledge) for line in lines]
    return answers[-1]


@pytest.mark.parametrize(
    ("lines", "wanted"),
    [
        (["50mm exakta lens, X body. ring?", "equiv on that body?", "so stabiliser gets 77"], 50),
        (["135 on mft, do i type 270 in the stabiliser"], 135),
        (["stabiliser asks a number, lens is 58", "with a 2x doubler"], 116),
        (["stabiliser asks a number, lens is 58", "with a 2x doubler", "and the .71 instead"], 58 * 0.71),
    ],
)
def test_the_stabiliser_wants_the_focal_length_and_no_equivalent(desk, lines, wanted):
    assert one(_talk(desk, *lines), "ibis_focal_mm") == close(wanted)


def test_glass_taken_out_again_is_out(desk):
    found = _talk(desk, "35 1.4 and a 0.71 on apsc, what is it", "and take it off again, equiv")
    assert one(found, "equivalent_focal_mm") == close(35 * hypot(36, 24) / hypot(23.6, 15.7))


def test_the_reducer_of_before_is_what_a_plain_ring_is_set_against(desk):
    found = _talk(desk, "50 f/2 with 0.71 on apsc", "is it worth it against a plain ring")
    assert one(found, "light_difference_stops") == close(-2 * log2(0.71))


def test_the_crop_of_the_largest_clean_picture_is_told(desk):
    found = _talk(
        desk, "16mm 1 inch tv lens on X, corners?", "i measured it, 17mm. biggest 16:9", "what crop factor is that"
    )
    assert one(found, "crop_factor") == close(hypot(36, 24) / 17)


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("75mm on super16 vs what on mft", [75 * hypot(17.3, 13) / hypot(12.52, 7.41)]),
        ("50 on ff, whats that on super 16?", [50 * hypot(12.52, 7.41) / hypot(36, 24)]),
        (
            "i love my 40 on half frame. which focal on ff, and on apsc?",
            [40 * hypot(36, 24) / 30, 40 * hypot(23.6, 15.7) / 30],
        ),
    ],
)
def test_of_two_formats_the_one_behind_the_lens_is_matched_on_the_other(asked, text, wanted):
    found = numbers(asked(text), "focal_length_mm", "like")
    assert [low for low, _ in found] == pytest.approx(wanted, rel=1e-3)


def test_full_frame_that_all_is_likened_to_is_no_second_format(asked):
    assert not numbers(asked("25 on mft in full frame terms"), "focal_length_mm", "like")
    assert not numbers(asked("35 on ff body in 1.5 crop mode"), "focal_length_mm", "like")


@pytest.mark.parametrize(
    ("text", "crop"),
    [
        ("25 mm on mft in 4k 2.3x crop, equivalent?", 2.3),
        ("20 on mft with another 1.25 crop in 4k, equiv", 1.25 * hypot(36, 24) / hypot(17.3, 13)),
        ("50 on aps-c, 1.8 crop in 4k. like?", 1.8),
    ],
)
def test_a_crop_beyond_that_of_the_format_counts_from_full_frame(asked, text, crop):
    assert one(asked(text), "crop_factor") == close(crop)


def test_what_a_zoom_is_set_to_is_its_focal_length(asked):
    assert one(asked("which ibis number for 24-70 at 35 via 0.71"), "ibis_focal_mm") == close(35 * 0.71)
    assert one(asked("12-120 zoom at 25 on s16, equivalent?"), "equivalent_focal_mm") == close(
        25 * hypot(36, 24) / hypot(12.52, 7.41)
    )


def test_a_setting_told_in_ev(asked):
    assert one(asked("iso 3200 at f2 1/25 in my kitchen, whats that in ev"), "scene_ev") == close(log2(4 * 25) - 5)


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ("nd and cpl together on a 135, dark corners?", "the corners stay clear"),
        ("3 filters stacked on the 20 2.8, full frame, does it vignette", "they cut the corners"),
        ("two filters on a 28 on full frame, vignetting?", "they may cut the corners"),
        ("72-52 step down on my 28, corners?", "Yes: a step down"),
    ],
)
def test_a_stack_before_the_lens_is_judged_by_its_view(asked, text, says):
    assert says in flat(asked(text))


def test_frames_without_a_mount_are_set_apart_by_what_is_lit(asked):
    found = asked("e mount apsc or ff body for 16mm cine glass")
    assert len(numbers(found, "lit_share")) == 2


def test_a_letter_behind_an_article_is_the_body_that_it_is_put_on(asked):
    assert "Q-mount" in asked("1/3 cctv zoom on a q, covers?")["reading"]


@pytest.mark.parametrize(
    ("text", "circle"),
    [
        ("80mm off a 6x6, on 44x33 back, is there 5mm of rise left", hypot(56, 56)),
        ("i get a 20mm wide circle from the 16mm film lens. s35 mode enough?", 20),
    ],
)
def test_the_circle_is_that_of_what_the_lens_came_off_or_as_measured(asked, text, circle):
    assert numbers(asked(text), "image_circle_mm")[0][0] == pytest.approx(circle)


@pytest.mark.parametrize(
    ("text", "factor"),
    [
        ("300 f4 with the 1.4 on apsc what do i have", 1.4),
        ("1.4x behind the crop lens, does it cover full frame then", 1.4),
    ],
)
def test_an_extender_is_told_by_where_it_stands(asked, text, factor):
    assert f"{factor:g}x teleconverter" in asked(text)["reading"]


def test_two_bare_lenses_each_on_its_frame(asked):
    found = asked("20mm lens on 1.6 crop vs 14 on mft, which wider")
    assert "28 mm against 32 mm" in flat(found)


def test_marks_set_against_each_other_are_not_added_up(asked):
    assert flat(asked("is ND64 same as 1.8 or 6 stop one")).startswith("Yes, all the same: 6 stops.")


@pytest.mark.parametrize(("text", "said"), [
    ("nd 0.9, thats about 1 stop right?", "No, not 1 but 3 stops."), ("is nd8 8 stops", "No, not 8 but 3 stops."),
    ("ND 1.5, 5 stops?", "Yes, 5 stops."), ("my nd filter is 1.8, i need 2 stops", "2 stops wanted"),
])  # fmt: skip
def test_what_a_filter_is_taken_for_is_no_wish(asked, text, said):
    assert flat(asked(text)).startswith(said)


def test_density_that_is_on_already_counts(asked):
    assert one(asked("2 stops over on the histogram, nd 0.6 on already. what now"), "nd_stops") == close(4, rel=0.01)


def test_of_two_changes_the_sum_is_said_first(asked):
    found = asked("i opened from 5.6 to 2 and 1/60 to 1/250, net?")
    net = 2 * log2(5.6 / 2) - log2(250 / 60)
    assert one(found, "light_difference_stops", "in all") == close(net)
    assert flat(found).startswith("In all the picture is 0.91 stops brighter.")


def test_frame_rates_in_the_order_of_the_change(asked):
    found = asked("240 fps from 24, light?")
    assert one(found, "light_difference_stops") == close(log2(10))
    assert "stops less light" in flat(found)


def test_a_squeeze_and_a_focal_length_are_no_frame(asked):
    assert one(asked("ibis for anamorphic 2x 40mm"), "ibis_focal_mm", "plain") == close(40)


def test_a_range_of_a_zoom_is_no_magnification(asked):
    found = asked("20x zoom f1.6 -> f2.4 at long end how many stops")
    assert one(found, "light_difference_stops") == close(2 * log2(2.4 / 1.6))


def test_mounts_set_apart_by_what_they_light(asked):
    assert len(numbers(asked("C or D mount for mft video, what covers more"), "lit_share")) == 2


@pytest.mark.parametrize(
    ("lines", "circle"),
    [
        (["25mm c on e mount aps-c, covers?", "i measured 20mm"], 20),
        (["microscope objective on ff, covers?", "mine measures 20"], 20),
        (["16mm cine zoom on aps-c e, covers?", "id say 14"], 14),
        (["pl lens on mft, covers?", "reckon 15. biggest 16:9"], 15),
    ],
)
def test_a_size_told_after_whether_a_lens_covers_is_its_circle(desk, lines, circle):
    assert numbers(_talk(desk, *lines), "image_circle_mm")[0][0] == pytest.approx(circle)


def test_another_lens_told_after_whether_one_covers_is_a_lens(desk):
    assert "a 50 mm zoom lens" in _talk(desk, "16mm cine zoom on aps-c e, covers?", "its a 50 actually")["reading"]


def test_glass_in_a_ring_has_a_factor(desk):
    found = _talk(desk, "50 1.7 MD lens on EF body", "there is one w/ glass in, 1.2x. what does that make it")
    assert one(found, "focal_length_mm") == close(60)


def test_a_number_on_the_rim_of_a_filter_is_its_density(asked):
    assert one(asked("filter says 1.8 on the rim, how many stops"), "nd_stops", "1.8") == close(6, rel=0.01)


@pytest.mark.parametrize("text", ["whats wider, 12 on mft or 17 on apsc", "12 on mft vs 17 on apsc, wider?"])
def test_two_bare_numbers_each_on_its_frame_are_lenses(asked, text):
    assert "24 mm against 26 mm" in flat(asked(text))


def test_a_shape_cut_out_of_a_frame_has_its_own_crop(asked):
    assert one(asked("if i crop a 35 to square on ff, what equivalent"), "crop_factor") == close(
        hypot(36, 24) / hypot(24, 24)
    )


def test_density_follows_the_iso(asked):
    assert one(asked("8 stops nd but iso now 800 was 100, how many"), "nd_stops") == close(11)
    assert one(asked("had 8 stops nd at iso 800, now iso 100"), "nd_stops") == close(5)


def test_a_magnification_alone_asks_for_no_shutter(asked):
    found = asked("m=0.5 on a 2.8 lens, exposure f?")
    assert one(found, "effective_f_number") == close(4.2)
    assert not numbers(found, "shutter_s")


def test_held_by_hand_stays_so_in_the_next_turn(desk):
    found = _talk(desk, "what shutter for 85 on apsc no stabiliser handheld", "and with the .71?")
    assert one(found, "shutter_s") == close(1 / 85 / 0.71 / (hypot(36, 24) / hypot(23.6, 15.7)))


def test_letters_behind_numbers_that_are_set_against_each_other_are_mounts(asked):
    reading = asked("12.5 d vs 13 c on 1 inch, which lights more")["reading"]
    assert "12.5 mm D-mount" in reading
    assert "13 mm C-mount" in reading


def test_what_lacks_a_little_of_all_is_not_called_all_of_it(asked):
    text = flat(asked("32.7 mm circle on full frame with a 1.3 crop, covered?"))
    assert "does not cover" in text
    assert "99 % is lit" in text


def test_glass_is_with_the_lens_that_it_is_told_behind(asked):
    found = asked("bare 35 f2 on apsc or 50 f1.4 with .71")
    assert one(found, "focal_length_mm", "35 mm") == close(35)
    assert one(found, "focal_length_mm", "50 mm with") == close(35.5)
    assert one(found, "light_difference_stops") == close(2 * log2(2 / (1.4 * 0.71)))


def test_shutter_angles_set_apart(asked):
    assert one(asked("180 to 90 degree, stops"), "light_difference_stops") == close(1)


def test_a_film_by_its_number_before_in_is_no_length_in_inches(asked):
    assert one(asked("60 on 645 in 35mm terms"), "equivalent_focal_mm") == close(60 * hypot(36, 24) / hypot(56, 41.5))


def test_a_shutter_by_hand_is_not_that_of_a_scene(asked):
    assert len(numbers(asked("hand hold 50 1.4 on mft, shutter?"), "shutter_s")) == 1


def test_a_stop_below_one_behind_a_point(asked):
    assert "f/0.95" in asked("17.5mm f.95 mft lens on apsc by some dumb ring, covers?")["reading"]


def test_what_becomes_of_stop_and_shutter_is_told_together(asked):
    found = asked("0.71 on f2: new f, and shutter if it was 1/100")
    assert one(found, "f_number") == close(1.42)
    assert one(found, "shutter_s") == close(0.01 * 0.71**2)


def test_the_number_of_the_stabiliser_stays_on_another_frame(desk):
    found = _talk(desk, "stabiliser number 200mm with 1.4x", "on apsc does it change")
    assert one(found, "ibis_focal_mm", "1.4x") == close(280)
    assert "change nothing" in flat(found)


def test_effective_behind_glass_is_what_the_lens_becomes(asked):
    assert one(asked("fd 50 with .71 on mft effective?"), "focal_length_mm") == close(35.5)


@pytest.mark.parametrize(
    ("text", "stop"),
    [
        (
            "The cine prime says T3.1 and the sheet claims 85 percent transmission. We want the real f-number for a "
            "depth of field table. What is it?",
            3.1 * 0.85**0.5,
        ),
        ("T2 with 88% transmission - what f number goes into the dof calculator", 2 * 0.88**0.5),
        ("cine zoom T4, transmission 0.7: real f stop?", 4 * 0.7**0.5),
        ("our T4 zoom transmits 0.7, which f/stop do i use for dof", 4 * 0.7**0.5),
    ],
)
def test_the_f_number_behind_a_t_stop(asked, text, stop):
    found = asked(text)
    assert found["intent"] == "exposure-nd"
    assert one(found, "f_number") == close(stop)


@pytest.mark.parametrize(
    "text",
    [
        "Photographing coins with a 100mm on a bellows, pulled out by 50 mm past infinity. How many stops do I add?",
        "bellows drawn out 50 mm past infinity on a 100, stops to add",
    ],
)
def test_a_bellows_pulled_out_past_infinity_is_extended_by_so_much(asked, text):
    low, high = numbers(asked(text), "light_difference_stops")[0]
    assert low < 2 * log2(1.5) < high
    assert high < 2


@pytest.mark.parametrize(
    ("text", "stop"),
    [("prime says T1.5. what is that in f", "f/1.34"), ("my lens is marked T1.3, f equivalent?", "f/1.16")],
)
def test_a_t_stop_in_f_is_a_number(talked, text, stop):
    assert stop in flat(talked(text))
