"""Which of several filters holds back more, or that they hold back the same: 'is my 1.8 stronger than an ND64'."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Quantity
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import figures
from engine.base.interval import is_known
from grammar.questions import Question

_COMPARED: Final = "filters-compared"
_SAME: Final = 0.2  # stops by which marks of one strength are rounded apart


def are_compared(question: Question, marks: int) -> bool:
    """Whether two marks are set against each other, and not stacked."""
    return marks > 1 and mentions(question, _COMPARED) and not mentions(question, "added-up")


def compared(rows: Sequence[Quantity]) -> str:
    """That all hold back the same, or which holds back the most and by how many stops more than the next."""
    held = sorted(
        ((row.value.nominal, row.case or "") for row in rows if row.name == "nd_stops" and is_known(row.value)),
        reverse=True,
    )
    if held[0][0] - held[-1][0] < _SAME:
        return f"The same: {' and '.join(name for _, name in held)} are {figures(held[0][0], 3)} stops each."
    by = held[0][0] - held[1][0]
    return f"{held[0][1]} is the stronger: {figures(held[0][0], 3)} stops, {figures(by, 3)} more than {held[1][1]}."
