"""Measured lengths at the left of a section: each in a lane of its own, lettered in a column without overlap."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.base.compact import compact
from engine.render.drawing import MARGIN, SIZE, Label, Measured, Page
from engine.render.lettering import cut

COLUMN: Final = 32.0
ELBOW: Final = 43.0
FIRST: Final = 45.5
RIGHT: Final = 61.5
STEP: Final = 3.6


@compact
class Gauge:
    """A length between two heights, with the x up to which its end lines reach on each side."""

    one: float
    other: float
    x_one: float
    x_other: float
    lines: tuple[str, ...]
    measured: Measured

    @property
    def ends(self) -> tuple[float, float]:
        return min(self.one, self.other), max(self.one, self.other)


def lanes(rows: Sequence[Gauge]) -> list[int]:
    """A lane for each, 0 nearest the drawing: short ones first, and none beside another in the same lane."""
    taken: list[list[tuple[float, float]]] = []
    out = [0] * len(rows)
    for n in sorted(range(len(rows)), key=lambda k: rows[k].ends[1] - rows[k].ends[0]):
        low, high = rows[n].ends
        free = (k for k, lane in enumerate(taken) if all(high + 2 < a or low - 2 > b for a, b in lane))
        lane = next(free, len(taken))
        if lane == len(taken):
            taken.append([])
        taken[lane].append((low, high))
        out[n] = lane
    return out


def _places(rows: Sequence[Gauge]) -> list[float]:
    found = lanes(rows)
    step = min(STEP, (RIGHT - FIRST) / max(max(found, default=0), 1))
    return [RIGHT - 1.0 - lane * step for lane in found]


def draw_gauges(page: Page, rows: Sequence[Gauge]) -> None:
    """The lengths themselves, with their end lines and slanting strokes at the ends."""
    for row, x in zip(rows, _places(rows), strict=True):
        for y, reach in ((row.one, row.x_one), (row.other, row.x_other)):
            page.line("hair", [(x - 1.2, y), (reach, y)])
            page.line("measure", [(x - 0.7, y + 0.7), (x + 0.7, y - 0.7)])
        page.line("measure", [(x, row.one), (x, row.other)], row.measured)


def gauge_labels(page: Page, rows: Sequence[Gauge], more: Sequence[Label], top: float, bottom: float) -> None:
    """The lettering of the lengths, and of what is not known, in the left column."""
    labels = [
        Label(x, (row.one + row.other) / 2, tuple(cut(words, COLUMN, SIZE) for words in row.lines))
        for row, x in zip(rows, _places(rows), strict=True)
    ]
    page.labels([*labels, *more], MARGIN, ELBOW, top, bottom)
