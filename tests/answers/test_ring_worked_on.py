"""A ring with sheet laid under it, or metal taken off it: what is told of it then counts, until it is undone."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from tests.answers.talks import flat, talk


def error_mm(club, *turns):
    record = record_of(talk(club, *turns)[-1], club.knowledge)
    if record.get("chains"):
        told = record["chains"][0]["register_error_mm"]
    else:
        told = record["quantities"]["register_error_mm"]
        told = told[0] if isinstance(told, list) else told
    return (told["least"] + told["greatest"]) / 2


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("m42 50 on E with a 27.38 ring and 0.1 of tape under it, infinity?",), 0.02),
        (("ltm 35 2.8 on E, my ring is 10.74 plus two layers of 0.03 tape, infinity?",), 0.0),
        (("ltm 35 f2.8 on E, ring ltm-e with 0.15 tape, infinity?",), 0.15),
        (("pl 50 on E, ring 33.95, shimmed 0.1. infinity?",), 0.05),
        (("35mm ltm on E with the 10.8 ring, thinned by 0.1. infinity?",), -0.1),
        (("m42 50 f1.8 on E, ring 27.38", "add 0.1 of tape under it; infinity?"), 0.02),
        (("m42 50 f1.8 on E, ring 27.38", "two layers of 0.04 foil under it"), 0.0),
        (("f 24 2.8 on EF, ring measured 2.62", "i ground 0.05", "infinity?"), 0.07),
        (("f 24 2.8 on EF, ring measured 2.62", "i ground 0.05", "ok ground the other 0.07", "now?"), 0.0),
        (("pl 50 f2 on E, ring is 33.95", "0.05 tape plus 0.02 foil under it, infinity?"), 0.02),
        (("ltm 50 3.5 on Z", "i measured 12.71", "what about an e body, ring 10.74 + tape 0.1"), 0.04),
    ],
)
def test_what_is_laid_under_a_ring_or_taken_off_it_counts(club, turns, error):
    assert error_mm(club, *turns) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("took the tape off again. infinity?",), -0.08),
        (("and the 28 2.8?", "without the tape"), -0.08),
        (("took the tape off", "tape back on, infinity?"), 0.02),
        (("two layers. infinity?",), 0.12),
        (("make it 0.05 of tape, infinity?",), -0.03),
    ],
)
def test_what_lies_under_a_ring_is_known_until_it_is_taken_out(club, turns, error):
    first = ("m42 50 f1.8 on E, ring 27.38", "with 0.1 tape under it")
    assert error_mm(club, *first, *turns) == pytest.approx(error, abs=0.012)


def test_a_ring_that_is_right_now_leaves_nothing_to_shim(club):
    found = talk(club, "f 24 2.8 on EF, ring measured 2.62", "i ground 0.12 off")[-1]
    assert flat(found).startswith("Just right")


def test_what_mends_a_thin_ring_in_part_does_not_make_it_worse(club):
    found = talk(club, "m42 50 f1.8 on E, ring 27.38. which shim?", "add 0.1 of tape under it")[-1]
    assert "makes it worse, not better" not in flat(found)


def test_which_sheet_to_take_lays_none(club):
    found = talk(club, "pl 50 f2 on E, ring 33.95", "my shim set has .01 .02 .05, what do i add")[-1]
    assert all(piece.thickness_mm in (None, (33.95, 33.95)) for piece in found.question.adapters)


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("c 25 f1.4 on mft, ring -1.6. infinity?",), 0.124),
        (("c 25 f1.4 on mft, ring is a flat disc 0 thick. infinity?",), 1.724),
        (
            ("c 25 f1.4 on mft, ring is a flat disc 0 thick", "friend turned me one recessed 1.7", "infinity now?"),
            0.024,
        ),
        (("c 25 f1.4 on mft, ring recessed 1.7", "i measured it again: recess is 1.65 only"), 0.074),
        (("c 25 f1.4 on mft, a 1.65 deep cup with 0.05 tape on it. infinity?",), 0.124),
        (("c 16mm f1.8 on E, ring -0.3. infinity?", "ring with .1 foil below"), 0.274),
        (("d 13mm f1.9 on mft, ring sits at -6.9, infinity?",), 0.06),
    ],
)
def test_a_sunk_seat_told_by_a_number_is_so_deep(club, turns, error):
    assert error_mm(club, *turns) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("ltm 35mm f2.8 on E, rings 1.06 and 9.82, infinity?",), 0.08),
        (("ltm 35 f2.8 on E with two rings, 1.02 and 9.75, infinity?",), -0.03),
        (("ltm 35 f2.8 on E with a 1.03 ltm-m and a 9.9 m-e, infinity?",), 0.13),
        (("ltm 35 f2.8 on E with a ltm-m ring and a m-e ring", "the pair of rings is 0.08 over. horizon?"), 0.08),
        (("ltm 35 f2.8 on E, ltm-m 1.02 and m-e 9.8", "the rings add up to 10.9, horizon?"), 0.1),
        (("ltm 35 f2.8 on E, ltm-m 1.02 and m-e 9.8", "the two together are 0.05 short, infinity?"), -0.05),
    ],
)
def test_two_rings_count_together(club, turns, error):
    assert error_mm(club, *turns) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("c 25 1.4 on cs body, ring is 4.9", "and put a 2nd 5mm ring on top"), 4.9),
        (("ltm 50 3.5 on a Z body, ring 12.9", "what about a second ring on top, ltm-ltm 1mm spacer"), 1.1),
        (("ltm 50 3.5 on a Z body, ring 12.9", "put a 0.5 ring on top of it too, infinity?"), 0.6),
    ],
)
def test_a_second_ring_on_top_is_added_and_is_no_second_way(club, turns, error):
    assert error_mm(club, *turns) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize("said", ["another ring came, 12.82", "a second ring arrived, it is 12.82"])
def test_another_ring_of_nearly_that_length_stands_in_its_place(club, said):
    turns = ("ltm 50 3.5 on a Z body, ring 12.9", said)
    assert talk(club, *turns)[-1].intent == "focus-verdict"
    assert error_mm(club, *turns) == pytest.approx(0.02, abs=0.012)


def test_the_ring_for_another_body_is_not_the_one_that_was_measured(club):
    found = talk(club, "m42 28 f2.8 on L body, ring 25.55", "and the ring for the E body, what must it be")[-1]
    assert all(piece.thickness_mm is None for piece in found.question.adapters)


def test_a_cup_is_no_tube_close_up(club):
    found = talk(club, "c 25 f1.4 on mft, cup 1.7 deep and a 5 mm tube, how close")[-1]
    assert "stops at 18 cm" in flat(found)
    assert "1.7 mm of tube" not in flat(found)


def test_the_same_ring_is_the_cup_of_before(club):
    found = talk(club, "c 25 f1.4 on mft, ring recessed 1.65", "what about a 12.5mm f1.9 same ring, infinity?")[-1]
    assert [piece.thickness_mm for piece in found.question.adapters] == [(1.65, 1.65)]


@pytest.mark.parametrize("text", ["PL 50mm t2 on E, ring 33.95", "50mm T2 PL lens on E, ring 33.95"])
def test_t2_beside_a_focal_length_and_a_mount_is_a_stop(club, text):
    found = talk(club, text)[-1]
    assert [lens.ids for lens in found.question.lenses] == [("pl",)]


@pytest.mark.parametrize(
    ("turns", "travel"),
    [
        (("pulled out 1 mm, how close",), "1 mm"),
        (("out 2 mm",), "2 mm"),
        (("pulled out 1 mm", "and all the way out?"), "4 mm"),
        (("half way out",), "2 mm"),
        (("all out", "and only 1 mm out"), "1 mm"),
        (("pulled out 1 mm", "closed again. infinity?"), None),
    ],
)
def test_a_helicoid_is_drawn_out_anew_and_not_further(club, turns, travel):
    found = talk(club, "m 35 f2 on E with the M-E helicoid ring, 4mm travel", *turns)[-1]
    assert found.question.said("travel") == travel
    assert found.question.lenses[0].focal_length_mm == 35


def test_a_helicoid_named_again_is_that_behind_the_ring_of_before(club):
    first = "ltm 50 f1.4 on E with ltm-m 1.0 and a M to E helicoid, closed 9.8"
    found = talk(club, first, "M to E helicoid pulled out 1 mm, how close with the 50")[-1]
    assert [lens.ids for lens in found.question.lenses] == [("ltm",)]
    assert "1 mm of travel: sharp at 2.6 m" in flat(found)


def test_a_helicoid_behind_a_measured_ring_is_as_long_as_its_own_mounts_want(club):
    turns = ("ltm 50 f1.4 on E with ltm-m 1.06 and a M to E helicoid, 5 mm travel. infinity?", "closed, infinity?")
    assert error_mm(club, *turns) == pytest.approx(0.06, abs=0.012)


def test_a_ring_that_joins_two_mounts_is_no_tube(club):
    found = talk(club, "ltm 50 f1.4 on M to E helicoid with 4 mm travel, ltm-m ring 1.0", "pulled out 1 mm")[-1]
    assert "1 mm of tube" not in flat(found)


def test_a_length_before_infinity_is_asked_is_no_mark(club):
    text = "m42 135 f3.5 on E with an m42-e helicoid 15.2 closed, the tube ring on it 12.1. infinity?"
    assert talk(club, text)[-1].question.said("mark") is None


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("with a 10mm tube between", "take the tube out. infinity?"), 0.1),
        (("with a 5mm tube how close", "take the spacer off, leave the tape"), 0.1),
        (("with a 5mm tube how close", "tube out. tape off too. infinity?"), 0.0),
        (("without the tube, infinity?",), 0.1),
    ],
)
def test_a_measured_ring_with_its_tape_stays_where_a_tube_comes_and_goes(club, turns, error):
    first = ("m42 28 f2.8 on E, ring 27.46", "add 0.1 of tape under it")
    assert error_mm(club, *first, *turns) == pytest.approx(error, abs=0.012)


def test_what_is_left_to_shim_counts_the_body_that_was_measured(club):
    turns = ("pl 50 f2 on L, ring 32.04", "i measured the body at 20.03 flange", "take a 0.04 shim out of it")
    assert error_mm(club, *turns) == pytest.approx(0.03, abs=0.012)


@pytest.mark.parametrize(
    ("said", "intent", "lens"),
    [
        ("by how much on the scale for the 105", "shim-calibration", 105),
        ("so where does it put far on the lens scale", "shim-calibration", 24),
        ("which way should i go, thinner or thicker", "shim-calibration", 24),
        ("does the lens hit infinity before the stop", "focus-verdict", 24),
    ],
)
def test_the_ring_of_before_is_what_is_asked_about(club, said, intent, lens):
    found = talk(club, "105 f2.5 F lens on EF, ring 2.44", "and the 24 f2.8 on it", said)[-1]
    assert (found.intent, found.question.lenses[0].focal_length_mm) == (intent, lens)
    assert found.question.said("mark") is None
    assert [piece.thickness_mm for piece in found.question.adapters] == [(2.44, 2.44)]


def test_a_body_at_twenty_point_nought_is_no_stop(club):
    found = talk(club, "pl 50 f2 on L, ring 32.04", "same for RF body at 20.0")[-1]
    assert found.question.f_number is None


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("peel it off",), -0.09),
        (("two layers", "three?"), 0.09),
        (("two layers", "all off again"), -0.09),
        (("and .1?",), 0.01),
        (("two layers", "which way is it off now"), 0.03),
    ],
)
def test_what_lies_under_a_ring_is_meant_by_it_and_by_a_count(club, turns, error):
    first = ("50mm f2 F on L, F-L ring, digital caliper says 26.41", "tape of 0.06 one layer")
    assert error_mm(club, *first, *turns) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize(
    ("said", "error"),
    [("thinner by 0.03?", -0.06), ("same Z ring, 20 2.8", -0.03), ("a 2nd F-Z ring here is 30.44", -0.06)],
)
def test_a_ring_told_by_its_mount_is_the_one_that_was_measured_or_another(club, said, error):
    assert error_mm(club, "50mm f2 F on Z with a ring of 30.47, infinity?", said) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize(
    ("turns", "error"),
    [
        (("c 16 f1.4 on mft with a cup 1.62 deep", "i filed the seat 0.08 deeper"), 0.024),
        (("c 16 f1.4 on mft with a cup 1.62 deep", "went too deep, 1.78"), -0.056),
        (("c 16 f1.4 on mft with a cup 1.62 deep", "went too deep, 1.78", "washer of .05 in it"), -0.006),
        (("c 16 f1.4 on E, a flat ring 0 thick. infinity?", "filed it to -0.4"), 0.074),
        (("c 16 f1.4 on Q, ring is 8.4", "0.1 less. infinity?"), -0.026),
    ],
)
def test_a_seat_that_is_worked_deeper_lies_so_deep(club, turns, error):
    assert error_mm(club, *turns) == pytest.approx(error, abs=0.012)


@pytest.mark.parametrize(
    ("said", "pitch"), [("7.5", "0.75 mm"), ("7.5. body is L", "0.75 mm"), ("10. body is E", "1 mm")]
)
def test_ten_crests_at_once_answer_what_the_pitch_is(club, said, pitch):
    found = talk(club, "42mm screw lens 50mm 1.8, what mount", said)[-1]
    assert found.question.said("pitch") == pitch
    assert found.question.said("flange_to_image") is None


def test_a_far_limit_without_end_is_told_as_such(club):
    found = talk(club, "c 25 f1.4 on mft with a 0.05 washer under it, infinity?")[-1]
    assert "stops at 13 m (6.23 m or more)" in flat(found)
