"""Which of several spacers told for one lens on one body go between: 'tubes 0.5 1 2 5 10, C on CS, which one'."""

from __future__ import annotations

from itertools import combinations
from typing import Final

from grammar.questions import Question, Thing

_LEAST: Final = 3  # fewer are mostly all meant to be used
_MOST: Final = 8
_NEAR_MM: Final = 0.1
_CLOSE: Final = ("magnification", "distance", "close_focus")  # said where things are looked at close up


def with_rings_chosen(question: Question, right_mm: float) -> Question:
    """The question with the fewest of them whose lengths add up to the seat that is right, where which is asked.

    `right_mm`: lens register less body register. Nothing changes where no sum of them is near it.
    """
    rings = [one for one in question.adapters if _is_spacer(one)]
    asked = question.mentions("which-of-these") and not any(question.said(key) for key in _CLOSE)
    if not asked or not _LEAST <= len(rings) <= _MOST or len(rings) < len(question.adapters) or right_mm <= 0:
        return question
    sums = [row for size in range(1, len(rings) + 1) for row in combinations(rings, size)]
    found = next((row for row in sums if abs(_length(row) - right_mm) <= _NEAR_MM), None)
    return question if found is None else question.with_(adapters=found)


def _is_spacer(piece: Thing) -> bool:
    ends = piece.thickness_mm
    return ends is not None and ends[0] == ends[1] and not piece.ids and not piece.front


def _length(row: tuple[Thing, ...]) -> float:
    return sum(one.thickness_mm[0] for one in row if one.thickness_mm is not None)
