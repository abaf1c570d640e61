"""Talks that stay with what they are of: the exposure that was right, a danger told before, two lenses."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


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
