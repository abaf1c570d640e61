"""What is asked of the seat itself: plain or sunk, among which bodies a mount finds room, what comes with glass in."""

from __future__ import annotations

import pytest

from engine.talk import Talk
from tests.answers.picture import flat as text_of
from tests.answers.picture import numbers, one
from tests.answers.talks import flat, talk


@pytest.mark.parametrize(("body", "said"), [
    ("Z", "1.53 mm in front of the body's flange"), ("MFT", "1.72 mm inside the body's flange"),
])  # fmt: skip
def test_it_is_told_on_which_side_of_the_flange_a_lens_seats(asked, body, said):
    found = asked(f"how do I get a C-mount lens on a {body} body, with a sunk adapter?")
    assert said in text_of(found)


@pytest.mark.parametrize(("say", "said"), [
    ("c mount 50mm on Z, is it a cup or a spacer", "A plain ring, not a sunk one"),
    ("LTM on RF, is that adapter a recessed one or a spacer?", "seats 8.8 mm in front of"),
    ("C mount 25 on MFT, cup or flat ring?", "seats 1.72 mm inside"),
    ("does a D lens need a cup or a spacer on MFT", "seats 6.96 mm inside"),
    ("Is the C to Z adapter recessed or does it stand proud?", "A plain ring, not a sunk one"),
])  # fmt: skip
def test_a_cup_or_a_ring_asks_where_the_lens_seats(asked, say, said):
    found = asked(say)
    assert found["intent"] == "chain"
    assert found["chains"][0]["verdict"] == "infinity"
    assert said in text_of(found)


def test_a_register_is_set_among_those_of_all_bodies(asked):
    found = asked("how come T2 lenses can go on every camera")
    assert one(found, "register_mm") == 55
    assert "a longer way than that of every body's mount" in text_of(found)
    short = text_of(asked("why do C mount lenses reach infinity on hardly any body"))
    assert "a shorter way than" in short
    assert "Z-mount (16 mm)" in short


def test_a_lens_that_lacks_its_own_ring_is_not_held_bare(asked):
    found = asked("have an adaptall-2 lens with no ring on the back, x body")
    assert found["chains"][0]["verdict"] == "infinity"


def test_a_hub_is_counted_against_single_rings(asked):
    found = asked("FD, OM, QBM and Exakta lenses, bodies L and X, through M or singly, how many rings?")
    assert (8, 8) in numbers(found, "adapter_count", "direct")
    assert (6, 6) in numbers(found, "adapter_count", "through the hub")


@pytest.mark.parametrize(("question", "stops"), [
    ("filter says 1.8 on the rim, how many stops", 6), ("nd marked 0.9, stops?", 3),
    ("rim of my grey filter reads 1.2", 4),
])  # fmt: skip
def test_a_number_that_a_grey_filter_is_marked_with_is_its_density(asked, question, stops):
    assert one(asked(question), "nd_stops") == pytest.approx(stops, abs=0.05)


def test_a_factor_beside_glass_is_that_of_the_glass(club):
    *_, found = talk(club, "md 50 f1.7 on EF, plain 2mm ring", "there is one w/ glass in, 1.2x. what does that make it")
    assert "60 mm f/2.04" in flat(found)


def test_what_was_measured_after_a_question_of_coverage_is_the_circle(club):
    *_, found = talk(club, "25mm c lens, E body aps-c. covered?", "i measured 20mm")
    assert "75 % is lit" in flat(found)


def test_a_number_that_was_asked_for_may_be_told_with_more_behind_it(club):
    _, told, stack = talk(
        club, "found a 39mm screw lens in a box no name. what is it", "48, and it has no focus ring",
        "how long a stack for E",
    )  # fmt: skip
    assert told.question.said("flange_to_image") == "48 mm"
    assert "seat 30 mm" in flat(stack)


def test_rings_without_a_mount_are_extension(asked):
    assert one(asked("20mm of rings behind a 50, what do i open up"), "magnification") == pytest.approx(0.4)
    assert one(asked("28mm worth of tube behind a 100, how big"), "magnification") == pytest.approx(0.28)


def test_a_lens_made_into_a_stop_is_told_its_hole(asked):
    assert one(asked("paper stop to make a 135 into f/11, hole size?"), "hole_mm") == pytest.approx(135 / 11)


def test_an_inch_after_a_focal_length_is_the_frame(asked):
    assert "1-type" in asked("hyperfocal of an 8mm at 2.8 for 1 inch")["reading"]


@pytest.mark.parametrize(("question", "off"), [
    ("should the LTM-M ring be 1.0? mine is 0.93", -0.07), ("M42-L should be 25.46 right? mine was 25.6", 0.14),
])  # fmt: skip
def test_what_was_measured_counts_and_not_what_it_should_be(asked, question, off):
    found = asked(question)
    told = found["chains"][0]["register_error_mm"]["least"] if "chains" in found else one(found, "register_error_mm")
    assert told == pytest.approx(off, abs=0.011)


def test_a_decimal_behind_a_magnification_is_the_stop(asked):
    found = asked("how much depth do i get at half life size, 5.6, full frame")
    assert one(found, "dof_mm") == pytest.approx(2 * 5.6 * 1.5 * (43.2666 / 1442) / 0.25, rel=0.01)


def test_a_q_for_a_question_is_no_mount(asked):
    assert "Q-mount" not in asked("super noob Q: PL cine prime on an L mount body??")["reading"]


@pytest.mark.parametrize(
    "asked",
    [
        "every lens hits infinity on the ring except one 50. do i shim the ring",
        "all my lenses are fine on this adapter but one 135 goes past infinity, shim?",
        "one lens out of five goes past infinity on the adapter, the other four are right, shim or not",
    ],
)
def test_a_ring_right_for_the_others_is_not_shimmed_for_one_lens(club, asked):
    told = flat(club.ask(asked, Talk()))
    assert told.startswith("one lens alone that misses infinity")
    assert "A shim cures it" not in told


@pytest.mark.parametrize(
    "asked",
    ["why can nobody sell me an MFT lens to E ring, 19.25 is longer than 18", "why is there no MFT lens to E ring"],
)
def test_a_ring_named_by_the_body_it_ends_on_is_explained_for_that_pair(club, asked):
    assert flat(club.ask(asked, Talk())).startswith(
        "Micro Four Thirds lenses sit 19.25 mm from the sensor, E-mount is 18 mm deep: the lens register is 1.25 mm"
    )


@pytest.mark.parametrize(
    ("asked", "becomes"),
    [
        ("what does a 200/2.8 turn into behind a 1.4x converter", "200 mm f/2.8 with 1.4x is 280 mm f/3.92"),
        ("what does my 300/4 turn into with a 2x extender", "300 mm f/4 with 2x is 600 mm f/8"),
    ],
)
def test_a_lens_and_stop_that_turn_into_something_are_no_turns(club, asked, becomes):
    assert flat(club.ask(asked, Talk())).startswith(becomes)


@pytest.mark.parametrize(
    "asked", ["80mm from a 645 on my full frame - is it an 80 or a 50", "80mm lens off a 645 on full frame, equiv?"]
)
def test_the_film_that_a_lens_comes_from_is_no_focal_length(club, asked):
    found = club.ask(asked, Talk())
    assert 645 not in {lens.focal_length_mm for lens in found.question.lenses}
    assert "80 mm on full frame frames like 80 mm" in flat(found)


@pytest.mark.parametrize(
    ("asked", "stops"),
    [
        ("100mm lens, bellows pulled so its 160mm from sensor, how many stops do i lose", "1.4 stops"),
        ("80mm on bellows, 200 mm from the sensor, how much light do I lose", "2.6 stops"),
    ],
)
def test_light_behind_a_bellows_goes_by_how_far_off_the_image_is_told(club, asked, stops):
    assert f"from lens to image: {stops}" in flat(club.ask(asked, Talk()))


def test_the_nearest_that_a_lens_stops_at_is_no_limit_of_its_ring(club):
    found = flat(club.ask("50mm OM on E with a 28.2 ring, nearest if the lens stops at 45 cm", Talk()))
    assert "stops at 13 m" in found
    assert found == flat(club.ask("50mm OM on E with a 28.2 ring, nearest if the lens goes to 45 cm", Talk()))


@pytest.mark.parametrize(("say", "far_mm"), [
    ("OM tele 200mm on an F body, half a mil short they say. birds at 30 m ok?", 80_400),
    ("MD lens on an EF body, half a mm short they say. 50mm. portraits at 3 m", 5_100),
    ("FD 200 straight on EF without glass, two mil too deep. what's the furthest", 20_402),
])  # fmt: skip
def test_what_two_registers_differ_by_is_no_ring_between_them(asked, say, far_mm):
    first = asked(say)["chains"][0]
    assert first["verdict"] == "macro-only"
    assert first["focus"]["far_from_sensor_mm"]["least"] == pytest.approx(far_mm, rel=0.02)


def test_a_bush_is_the_flush_one_whatever_word_leads_to_it(asked):
    first = asked("zenit M39 58mm on M42-E 27.46 ring with 39-42 bush. horizon?")["chains"][0]
    assert "m39-m42-flush" in [piece["id"] for piece in first["pieces"]]
    assert first["register_error_mm"]["greatest"] < 0.5


def test_too_many_shims_hold_the_lens_too_far_out(asked):
    assert "too far out" in text_of(asked("0.5mm too many shims under an 8mm D lens. farthest sharp thing?"))


def test_a_chimney_that_is_far_enough_calibrates_a_lens(asked):
    assert "500 m is far enough for 135 mm" in text_of(asked("calibrating a 135 on a chimney 500 m off good?"))


def test_two_rings_of_which_one_leads_to_the_other_are_read_as_named(asked):
    found = asked("LTM 90mm via 1mm ring onto M, then M to L ring 7.8. all good at infinity?")
    assert not text_of(found).startswith("Not with the pieces")


@pytest.mark.parametrize(("text", "lens", "body"), [
    ("varifocal 2.8-12 marked CS, camera is a C one, far end of the yard is mush", "cs", "c"),
    ("16mm CS lens, the camera is a C one, far is blurry", "cs", "c"),
    ("camera is a CS one, lens is C 25mm", "c", "cs"),
    ("50mm lens marked M42, my camera is an E one", "m42", "e-mount"),
])  # fmt: skip
def test_a_camera_that_is_one_of_a_mount_has_that_mount(club, text, lens, body):
    found = talk(club, text)[-1].question
    assert (found.lens.id, found.body.id) == (lens, body)


@pytest.mark.parametrize("turn", [
    "really? it screws in all the way", "but it screws right in", "seriously? it mounts without trouble",
    "why? the thread is the same",
])  # fmt: skip
def test_that_it_fits_is_no_reason_for_it_to_focus(club, turn):
    found = talk(club, "CS 6mm lens on a C camera, distant things are mush", turn)[-1]
    assert found.intent == "why"
    assert "They do screw together" in flat(found)


@pytest.mark.parametrize(("say", "off"), [
    ("my double 8 cam has the D thread but lenses from another D cam are all out of focus on it", "4.49 mm too close"),
    ("c lens on my c camera is all out of focus, why", "5 mm too close"),
])  # fmt: skip
def test_a_lens_soft_in_its_own_mount_may_be_of_another_with_that_thread(asked, say, off):
    text = text_of(asked(say))
    assert text.index("Straight on in its own mount it should be sharp") < text.index(off)


def test_a_lens_asked_about_in_its_own_mount_is_not_called_soft(asked):
    assert "it should be sharp" not in text_of(asked("does a C lens reach infinity on a C camera"))


@pytest.mark.parametrize(("say", "off"), [
    ("c to mft cup filed by 0.2 too deep, 8mm c. sharp anywhere?", -0.2),
    ("my C-E cup is 0.1 too deep, 16mm c lens, infinity?", -0.1),
    ("the cup c-mft came out 0.3 mm too shallow, 25mm c. far limit?", 0.3),
    ("21mm M on the M-E helicoid pulled 1 mm, farthest sharp", 1.0),
    ("35mm M on M-Z helicoid drawn 2 mm, farthest sharp?", 2.0),
])  # fmt: skip
def test_what_a_piece_is_off_or_drawn_by_is_not_its_length(asked, say, off):
    told = asked(say)["chains"][0]["register_error_mm"]
    assert (told["least"] + told["greatest"]) / 2 == pytest.approx(off, abs=0.03)


def test_a_cup_told_by_its_depth_keeps_it(asked):
    told = asked("a 12.5 mm C lens in a cup 0.5 deep on E, infinity?")["chains"][0]["register_error_mm"]
    assert told["least"] == pytest.approx(-0.026, abs=0.003)


@pytest.mark.parametrize("turn", [
    "its barrel at the back is 38.5 mm wide. problem?", "the back of the barrel is 38.5 mm wide, does that matter",
    "at the back it is 38.5 mm thick", "the rear is 38.5 wide", "the part above the thread is 38.5 wide",
    "fat bit just above the screw is 38.5 mm in diameter", "its rear end has a diameter of 38.5mm",
    "the lens body is 38.5 mm across near the thread", "it measures 38.5 just above the thread",
])  # fmt: skip
def test_how_wide_a_lens_is_at_the_back_is_no_focal_length_and_no_ring(club, turn):
    found = talk(club, "25mm C lens on MFT", turn)[-1]
    assert found.question.values == (("barrel", "38.5 mm"),)
    assert [lens.focal_length_mm for lens in found.question.lenses] == [25]
    assert not found.question.adapters


@pytest.mark.parametrize(("said", "key"), [
    ("rear glass is 30 mm wide", "width"), ("the flange of the lens is 50 wide", "width"),
    ("thread at the back is 42 wide", "thread"), ("the hole in the ring is 38 mm wide", "bore"),
])  # fmt: skip
def test_how_wide_another_part_is_tells_nothing_of_the_barrel(club, said, key):
    values = dict(talk(club, "25mm C lens on MFT", said)[-1].question.values)
    assert not {"barrel", "rear_reach", "flange_to_image"} & values.keys(), values
    assert key in values or key == "width"
