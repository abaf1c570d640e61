"""Pieces with their lengths told behind them, or run out in a turn: none becomes a lens, a mark or another piece."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize("turn", [
    "i have a lipped 39-42 bush 1 mm thick and an M42-X ring. any good",
    "a 39 to 42 step 1mm and m42-x, does it reach infinity",
    "i have a 39-42 bush with a 1 mm lip and an M42 to X. infinity?",
    "would a 39-42 step (1 mm) plus an m42-x ring do",
])  # fmt: skip
def test_a_lipped_bush_is_counted_with_its_thickness(club, turn):
    found = talk(club, "50mm M39x1 SLR lens. ring for X?", turn)[-1]
    assert "1.26 mm too far out" in flat(found)


@pytest.mark.parametrize(("asked", "most"), [
    ("M to E helicoid w/ 5mm, 50 that stops at 1 m, how close", (5.0, 5.0)),
    ("M42 to X helicoid with 10 mm, 135 on X, how close", (10.0, 10.0)),
    ("M to E helicoid on a 90 that stops at 1 metre, how close now", None),
])  # fmt: skip
def test_where_a_lens_stops_is_no_length_of_its_helicoid(club, asked, most):
    (piece,) = talk(club, asked)[-1].question.adapters
    assert (piece.piece, piece.thickness_mm) == ("helicoid", most)


@pytest.mark.parametrize("asked", [
    "when you screw a 28mm backwards on a 112mm what magnification",
    "i want to screw my 50 in reverse on the front of a 200, how big",
])  # fmt: skip
def test_a_lens_that_is_screwed_on_reversed_is_no_thread(club, asked):
    assert "both at infinity: 4x" in flat(talk(club, asked)[-1])


@pytest.mark.parametrize("turn", [
    "helicoid run out, lens left on infinity",
    "with the lens at infinity and the helicoid all the way out?",
    "helicoid fully out, lens itself at infinity",
])  # fmt: skip
def test_a_helicoid_run_out_stays_the_one_that_was_told(club, turn):
    first = "50mm M lens, marked down to 0.7, L body with a 5mm M helicoid. closest?"
    *_, found, light = talk(club, first, turn, "light lost there?")
    assert "at its infinity mark: 60 cm" in flat(found)
    assert "5 mm of extension" in flat(light)
    assert talk(club, first, "and without the helicoid, lens on infinity")[-1].question.adapters == ()


@pytest.mark.parametrize(("asked", "long"), [
    ("300/4 M42 on mft for birds. how long is that really", 600),
    ("a 180mm FD on a Q, how long does it behave", 837),
    ("85/1.8 on aps-c, how long a tele is that", 130),
])  # fmt: skip
def test_how_long_a_lens_really_is_asks_for_its_equivalent(club, asked, long):
    assert f"frames like {long} mm on full frame" in flat(talk(club, asked)[-1])
