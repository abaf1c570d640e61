"""Talks that stay with what they are of: the exposure that was right, a danger told before, two lenses."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, rows, talk


@pytest.mark.parametrize("said", ["iso 200 f8 1/60 was right without, now?", "f/8 1/60 was right without, now?"])
def test_stop_and_speed_of_what_was_right_without_the_tubes_stay(club, said):
    *_, answer = talk(club, "50mm on m43, I have 10 and 16 mm tubes", said)
    assert "1/60 s becomes 1/26 s" in flat(answer)


@pytest.mark.parametrize(
    ("before", "asked", "ruling"),
    [
        ("is the old 50/1.4 with yellow glass radioactive", "and take it apart?", "No: never grind, sand"),
        ("my lens has fungus, dangerous?", "take it apart?", "a technician's work, not answered here"),
    ],
)
def test_taking_it_apart_is_ruled_by_what_was_wrong_with_it(club, before, asked, ruling):
    *_, answer = talk(club, before, asked)
    assert answer.intent == "hazard"
    assert ruling in flat(answer)


def test_which_of_two_lenses_to_take_compares_them(club):
    *_, answer = talk(
        club,
        "16mm f/1.4 C on the small Q sensor, dark corners?",
        "and the 25?",
        "which of the two do i take for wide",
    )
    assert answer.intent == "compare"
    assert "16 mm f/1.4 C-mount lens: widest" in flat(answer)


@pytest.mark.parametrize(
    "turns",
    [
        ("I want 1:1 with my 90", "i only have 65 mm of tube"),
        ("I want 1:1 with my 90", "with tubes how many mm", "i've only got 65"),
    ],
)
def test_a_size_that_was_hoped_for_is_not_what_the_lens_has(club, turns):
    *_, answer = talk(club, *turns)
    assert pytest.approx(0.722, abs=0.01) in rows(answer, "magnification").values()
    assert max(rows(answer, "magnification").values()) < 1.01


def test_a_size_that_the_lens_has_grows_with_the_tube(club):
    *_, answer = talk(club, "my 90 macro goes to 1:2", "with 25 mm of tube")
    assert pytest.approx(0.778, abs=0.01) in rows(answer, "magnification").values()
