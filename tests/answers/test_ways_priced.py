"""What a ring with glass costs beside the plain one: both are told, each with its price."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of

PLAIN, GLASS = (8, 25), (80, 180)


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    ("said", "plain"),
    [
        ("price of a booster ring w glass in (focal reducer) for m42 on X vs the dumb ring?", PLAIN),
        ("cost of a plain M42 to X ring against one with a reducer", PLAIN),
        ("whats a reducer for M42 on X cost next to the plain ring", PLAIN),
        ("cost of a plain K to E ring against one with a reducer", (10, 25)),
    ],
)
def test_both_are_told_with_their_prices(desk: Desk, said: str, plain: tuple[int, int]) -> None:
    bands = [(row.value.least, row.value.greatest) for row in desk.ask(said).quantities or () if row.name == "price"]
    assert plain in bands
    assert GLASS in bands
