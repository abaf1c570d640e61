"""A ring that was measured, or by how much it is off, in a talk that asks of other things too."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk

THIN = "my m42 to E ring is 0.15 mm too thin, 28mm f2.8 lens, what shim"
EARLY = "C/Y 50/1.4 on an E body: real infinity falls at the 12 m mark. shim?"
FLUSH = "85mm f1.8 FD lens on an EF body with a 2 mm glassless ring, how far can it see"


def error_of(answer):
    return answer.chains[0].listed.judged.trace.value("register_error_mm").shortest.nominal


@pytest.mark.parametrize("between", ["does it cover full frame", "shutter at f11 noon iso 100?", "framing on aps-c?"])
def test_an_error_of_the_ring_holds_on_past_what_is_asked_beside_it(club, between):
    *_, found = talk(
        club, "50mm M42 on E with a ring that is 0.3 too thick, how far", between, "and infinity with a 28?"
    )
    assert error_of(found) == pytest.approx(0.3)


def test_a_ring_that_was_measured_holds_on_too(club):
    *_, found = talk(
        club, "50mm f2 LTM on E, ring is 11.1, infinity?", "does it cover aps-c", "infinity with a 28 on it"
    )
    assert error_of(found) == pytest.approx(0.3, abs=0.001)


@pytest.mark.parametrize("turn", ["a 21 on that ring?", "does infinity work with my 21"])
def test_a_mark_told_of_one_lens_is_an_error_for_another_on_the_ring(club, turn):
    _, found = talk(club, EARLY, turn)
    assert error_of(found) == pytest.approx(-0.21, abs=0.001)
    assert "2.15 m mark" in flat(found)


def test_a_reason_asked_after_a_mark_is_of_the_seat_it_tells(club):
    _, found = talk(club, EARLY, "why does it go past")
    assert "register error, + too far from the sensor: -0.21 mm" in flat(found)


@pytest.mark.parametrize("first", [THIN, EARLY, "50mm M42 on E, my ring is 0.15 mm too thin, what shim"])
def test_another_body_has_another_ring_of_which_no_error_is_known(club, first):
    _, found = talk(club, first, "on a Z body?")
    assert error_of(found) == pytest.approx(0.0, abs=0.001)


def test_a_mark_tells_how_thick_the_ring_is_and_should_be(club):
    (found,) = talk(club, EARLY)
    assert "Right is 27.5 mm" in flat(found)
    assert "27.29 mm thick" in flat(found)


@pytest.mark.parametrize("turn", ["how big does it show a coin at the far end", "how close then, and how big"])
def test_how_large_it_gets_goes_by_the_seat_that_was_judged(club, turn):
    _, found = talk(club, FLUSH, turn)
    assert error_of(found) == pytest.approx(4.0)
    assert "mm of tube" not in flat(found)


def test_a_ring_where_none_could_be_right_is_no_tube_behind_another(club):
    (found,) = talk(club, "50mm MD lens on EF with a 1 mm ring, how close does it get")
    assert error_of(found) == pytest.approx(1.5)


@pytest.mark.parametrize("turn", ["depth there wide open?", "how deep is the sharp bit at that end", "dof there?"])
def test_what_is_sharp_where_a_ring_ends_a_lens(club, turn):
    _, found = talk(club, FLUSH, turn)
    assert found.intent == "depth-of-field"
    assert "it stops at 1.98 m: what is sharp there" in flat(found)
    assert "hyperfocal" not in flat(found)


def test_a_subject_beyond_that_end_is_not_sharp(club):
    _, found = talk(club, FLUSH, "dof at 5 m")
    assert "nothing at 5 m comes sharp" in flat(found)


def test_a_flat_ring_is_no_cup_by_a_word_for_depth(club):
    _, found = talk(club, FLUSH, "how deep is that in focus")
    assert found.question.adapters[0].piece == "adapter"


@pytest.mark.parametrize("turn", ["depth at 1.5 wide open", "dof at 1.5 f1.7"])
def test_a_number_beside_the_stop_is_how_far_away_it_is_set(club, turn):
    _, found = talk(club, "50mm 1.7 K lens on Z", turn)
    assert found.question.distance_mm == 1500


def test_a_decimal_nearly_as_long_is_what_the_ring_comes_out_at(club):
    *_, found = talk(club, "K 55/1.8 on Z, what ring", "does infinity hold if it comes out 29.7", "and at 29.4?")
    assert error_of(found) == pytest.approx(-0.06, abs=0.001)


@pytest.mark.parametrize("turn", ["flat 1mm one?", "a 1 mm one?"])
def test_a_millimetre_is_the_length_of_a_ring_and_of_no_lens(club, turn):
    _, found = talk(club, "does a 16mm C lens keep infinity on MFT", turn)
    assert error_of(found) == pytest.approx(2.724, abs=0.001)


@pytest.mark.parametrize("turn", ["why only the wide shows it", "how come the long one is fine on it"])
def test_why_a_wide_lens_alone_shows_an_error(club, turn):
    _, found = talk(club, THIN, turn)
    assert "with the square of the focal length" in flat(found)


@pytest.mark.parametrize("turn", ["what do i file", "so how much do i file off"])
def test_what_is_to_be_filed_off_a_measured_ring(club, turn):
    *_, found = talk(club, "P6 80/2.8 on a Z body, how", "the one i bought is 58.4", turn)
    assert "take 0.3 mm off" in flat(found)


@pytest.mark.parametrize(
    ("first", "turn", "error"),
    [
        ("D mount 13 on Q body, ring", "is infinity safe with 3.2", 0.11),
        ("K 50 on E, which ring", "and with 27.6", 0.14),
    ],
)
def test_a_decimal_near_the_ring_that_is_right_is_a_ring(club, first, turn, error):
    _, found = talk(club, first, turn)
    assert error_of(found) == pytest.approx(error, abs=0.001)


def test_what_a_part_came_out_too_long_is_no_length_of_it(club):
    *_, found = talk(club, "turning M42 to L, flange to flange?", "it came out a tenth long", "which side do i skim")
    assert "0.1 mm too far out" in flat(found)


def test_foil_is_asked_for_a_ring_that_is_thin(club):
    *_, found = talk(club, "which ring puts a K 35 on MFT", "and if it measured 26.0", "how thick a foil for that")
    assert "add a shim of 0.21 mm" in flat(found)


def test_what_the_mount_of_a_body_means_leaves_lens_and_body(club):
    *_, found = talk(club, "C 50 on a CS camera, ring?", "whats CS mean", "without the ring what happens")
    assert error_of(found) == pytest.approx(-5.0)


@pytest.mark.parametrize("turn", ["does that hurt a 100 as well", "and a 100 on the same ring?"])
def test_a_mark_on_the_moon_is_that_of_the_lens_it_was_told_of(club, turn):
    _, found = talk(club, "FD 28 on E sharp at the 4 m mark for the moon, how thick a shim", turn)
    assert "the same 0.2 mm for this lens" in flat(found)
    assert "51 m mark of the 100 mm lens" in flat(found)


@pytest.mark.parametrize(
    ("first", "turn", "seat"),
    [
        ("28mm M lens on E, my M to E ring calipers 9.65", "other ring says 9.87", 9.87),
        ("50mm C/Y on E, ring measures 27.3", "my other ring is 27.62", 27.62),
        ("OM 28 on MFT, adapter measured 26.6", "another adapter i have measures 26.81", 26.81),
        ("M 35 on Z, ring 11.7", "other adapter 11.85", 11.85),
        ("AR 50 on E, ring 22.4 thick", "other ring from the drawer: 22.61", 22.61),
    ],
)
def test_another_ring_nearly_as_long_stands_in_the_place_of_the_one_measured(club, first, turn, seat):
    *_, found = talk(club, first, turn)
    held = found.chains[0].listed.judged.trace.value("seat_mm").shortest.nominal
    assert held == pytest.approx(seat)
    assert found.intent in ("focus-verdict", "chain")


@pytest.mark.parametrize(
    ("first", "turn", "seat"),
    [
        ("ok om 28 on mft. they told me 26.0", "and the four thirds zoom", 19.42),
        ("F lens on K? thats 1mm", "what about an OM lens on E", 28.0),
        ("FD 50 on RF, they told me 21.9", "what about my K 50", 25.46),
    ],
)
def test_a_lens_of_another_mount_has_another_ring(club, first, turn, seat):
    *_, found = talk(club, first, turn)
    assert found.chains[0].listed.judged.trace.value("seat_mm").shortest.nominal == pytest.approx(seat, abs=0.01)


def test_a_mount_named_alone_in_a_row_of_bodies_is_the_next_body(club):
    *_, found = talk(club, "why is everyone saying F lenses go on nearly anything", "even K?", "EF then")
    assert "An F-mount lens on an EF-mount body" in flat(found)
