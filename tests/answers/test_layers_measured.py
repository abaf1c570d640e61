"""How many layers of a foil that was measured make up a gap, whatever verb tells the measuring."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    ("said", "count"),
    [
        ("my foil mics at 0.016, i need 0.13. layers?", 8.125),
        ("my tape measures 0.04, how many for 0.2", 5),
        ("paper measured 0.09 and i need 0.35 mm", 0.35 / 0.09),
    ],
)
def test_what_was_measured_is_the_layer(desk: Desk, said: str, count: float) -> None:
    rows = [row.value for row in desk.ask(said).quantities or () if row.name == "layer_count"]
    assert any(row.least == pytest.approx(count, abs=0.3) for row in rows)
