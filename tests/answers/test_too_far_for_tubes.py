"""A subject farther off than tubes let the lens reach is said to be, with the tube that would reach it."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    ("said", "most"),
    [
        ("135 with 7 mm tube, can i shoot the cat at 4m", "4.89 mm"),
        ("300mm with 25mm ring, deer at 20 m?", "4.64 mm"),
        ("2 mm spacer left under my 100, can it do the barn 6 m away", "1.72 mm"),
    ],
)
def test_it_is_out_of_reach(desk: Desk, said: str, most: str) -> None:
    (first, *_) = desk.ask(said).lines
    assert "out of reach" in first.text
    assert most in first.text


@pytest.mark.parametrize(
    "said",
    [
        "85 and a 10mm tube, subject at 60cm?",
        "my 85 goes down to 1 m, 10 mm tube, how near",
        "100 mm, closest 2 m by itself, with a 20 mm tube",
    ],
)
def test_what_is_near_enough_or_its_own_mark_is_not(desk: Desk, said: str) -> None:
    assert not any("out of reach" in line.text for line in desk.ask(said).lines)
