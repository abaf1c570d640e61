"""Which of several filters holds back more, or that they hold back the same, one by one or together: 'is my 1.8
stronger than an ND64'."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Quantity
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import figures
from engine.base.interval import is_known
from engine.physics import density
from grammar.questions import Question

_COMPARED: Final = "filters-compared"
_SAME: Final = 0.2  # stops by which marks of one strength are rounded apart
_AS_MARKED: Final = 0.1  # stops by which one is rounded: a factor of 64 is a density of 1.8


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


def summed_as(question: Question, total: float) -> str:
    """How it begins what several hold back together: with yes or no where they were taken to make a mark."""
    taken = question.said("factor_taken") or ""
    stops = density.stops_of_name(taken)
    if not is_known(stops):
        return "Together"
    return "Yes, together" if abs(stops.nominal - total) < _AS_MARKED else f"No, not {taken}: together"


def taken_for(held: float, told: float) -> str:
    """Whether a mark holds back as many stops as it is taken to."""
    so_many = f"{figures(held, 3)} stop{'' if held == 1 else 's'}"
    return f"Yes, {so_many}." if abs(held - told) < _AS_MARKED else f"No, not {figures(told, 3)} but {so_many}."


def same_or_not(held: list[float]) -> str:
    """Whether marks that are set against each other hold back the same."""
    if max(held) - min(held) < _AS_MARKED:
        return f"Yes, all the same: {figures(held[0], 3)} stops."
    return f"No: {', '.join(figures(one, 3) for one in held)} stops."
