"""A ring, and behind it the lens by its length alone: where that ends, why a shorter one ends nearer, what helps."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk

OFF = "on a cheap OM to X adapter the 50 mm only reaches 8 m"


@pytest.mark.parametrize(
    ("said", "focal", "error"),
    [
        ("since I got this FD-E adapter my 35mm stops at 4 m, infinity is fuzzy", 35, 0.31),
        ("I bought an M42 to L ring and the 135mm isn't sharp beyond 40 m", 135, 0.46),
        ("on a cheap OM to X adapter the 50 mm only reaches 8 m. how thick is that ring then", 50, 0.32),
        ("with the OM-Z adapter, my 28 mm will only focus to 5 m", 28, 0.16),
    ],
)
def test_what_focuses_behind_a_ring_is_a_lens(club: Desk, said: str, focal: float, error: float) -> None:
    answer = club.ask(said)
    assert answer.question is not None
    assert answer.question.lenses[0].focal_length_mm == focal
    assert f"{error:g} mm too far out" in flat(answer)


def test_what_is_only_so_long_is_the_ring(club: Desk) -> None:
    question = club.ask("with an M42 ring of 27 mm on E, my lens is soft").question
    assert question is not None
    assert [piece.thickness_mm for piece in question.adapters] == [(27, 27)]


@pytest.mark.parametrize(
    "said", ["the 24 fares worse still, how is it possible?", "why does the 24 suffer so much more", "the 24, how so?"]
)
def test_a_shorter_lens_ends_nearer_by_the_square(club: Desk, said: str) -> None:
    assert "squared" in (told := flat(talk(club, OFF, said)[-1])) or "square" in told


@pytest.mark.parametrize("said", ["could I just use a smaller aperture", "would a higher f-number do with the 50"])
def test_a_smaller_stop_is_asked_from_which_it_helps(club: Desk, said: str) -> None:
    assert "infinity from f/16" in flat(talk(club, OFF, said)[-1])


@pytest.mark.parametrize("said", ["what thickness must be removed?", "what has to be removed then"])
def test_what_must_be_removed_is_the_error(club: Desk, said: str) -> None:
    assert "take 0.32 mm off" in flat(talk(club, OFF, said)[-1])


@pytest.mark.parametrize(
    "said",
    [
        "two ND1000 screwed onto the front of my 300, is it alright to look at the sun in the viewfinder with them",
        "400mm with ND1000 on its front, pointing at the midday sun on the mirrorless for a timelapse, ok?",
    ],
)
def test_a_dark_filter_in_front_makes_the_sun_no_safer(club: Desk, said: str) -> None:
    answer = club.ask(said)
    assert flat(answer).startswith("No")
    assert any(line.kind == "danger" for line in answer.lines)
