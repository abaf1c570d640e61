"""What to turn the lens to for a meter beside the camera, and what glass in a home-made ring adds to it."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.base.interval import is_known


def _values(desk: Desk, say: str, name: str) -> list[float]:
    rows = desk.ask(say).quantities or ()
    return [row.value.nominal for row in rows if row.name == name and is_known(row.value)]


@pytest.mark.parametrize(
    ("say", "wanted"),
    [
        ("Hand meter gives f/4 with a 0.71x focal reducer fitted. To which f-number do I turn the lens?", 4 / 0.71),
        ("0.7x booster behind the lens, meter app shows f/11. what stop should I close the lens to?", 11 / 0.7),
        ("meter app reads f/8, 0.71x speed reducer on. which aperture must the lens be at", 8 / 0.71),
        ("handheld meter says f/8, 2x teleconverter on. what f-number should i turn the ring to", 4.0),
    ],
)
def test_lens_is_set_so_that_the_glass_makes_it_what_was_metered(desk: Desk, say: str, wanted: float) -> None:
    assert _values(desk, say, "f_number") == pytest.approx([wanted], rel=0.01)


@pytest.mark.parametrize(
    ("say", "glass_mm"),
    [
        ("Home made adapter with a 2 mm glass filter built into it, how much longer must the tube be?", 2.0),
        ("printed ring with a 1 mm clear glass window inside, how much do i lengthen the ring?", 1.0),
        ("my own adapter holds a filter in it, glass 2.5 mm thick. how much longer must the tube be", 2.5),
    ],
)
def test_ring_with_glass_in_it_is_longer_by_the_shift(desk: Desk, say: str, glass_mm: float) -> None:
    shift = _values(desk, say, "glass_shift_mm")
    assert shift == pytest.approx([glass_mm * (1 - 1 / 1.52)], rel=0.03)
