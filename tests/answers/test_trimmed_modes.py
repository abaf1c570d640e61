"""What a lens frames like in a mode that takes less of the sensor, though nobody calls it a crop."""

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
        ("full frame body narrows video by another 1.3. what does my 35 look like in video?", 35 * 1.3),
        ("my full frame cuts 4k by another 1.2, what field has a 24mm in video?", 24 * 1.2),
        ("full frame camera narrows the 4k by a further 1.5x. what is my 50 in full frame terms", 75.0),
    ],
)
def test_mode_that_takes_less_counts_though_no_crop_is_said(desk: Desk, say: str, wanted: float) -> None:
    told = _values(desk, say, "equivalent_focal_mm")
    assert told[0] == pytest.approx(wanted, rel=0.01)
