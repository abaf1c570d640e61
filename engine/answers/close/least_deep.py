"""Of several lenses, which is least deep: by what is sharp around the distance told, else by where infinity begins."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import distance
from engine.base.interval import is_known
from grammar.questions import Question

_AROUND, _HYPERFOCAL = "dof_mm", "hyperfocal_mm"


def least_deep(question: Question, told: Told) -> Told:
    """The order of the lenses told, where it is asked which is shallower or deeper; nothing of one lens."""
    if len(question.lenses) < 2 or not mentions(question, "which-deeper"):
        return Told()
    rows = _rows(told, _AROUND)
    if len(rows) < 2:
        return _by_hyperfocal(_rows(told, _HYPERFOCAL))
    ordered = "; ".join(f"{row.case}, {distance(size, question.feet)}" for size, row in rows)
    return Told((Line("head", f"Least deep first: {ordered}."),))


def _by_hyperfocal(rows: list[tuple[float, Quantity]]) -> Told:
    """From the same place, and not close up, depth goes by the hyperfocal distance alone: the farther, the less."""
    if len(rows) < 2:
        return Told()
    ordered = "; ".join(row.case or "" for _, row in reversed(rows))
    text = f"From the same place least deep first: {ordered}. Framed alike it goes by the stop in full frame terms."
    return Told((Line("head", text),))


def _rows(told: Told, name: str) -> list[tuple[float, Quantity]]:
    rows = [(row.value.nominal, row) for row in told.quantities if row.name == name and is_known(row.value)]
    return sorted(rows, key=lambda row: row[0])
