"""Which of tubes and extenders named beside one lens takes more of the light."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.close.drawn import is_drawn
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals
from engine.answers.parts.wording import trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics.focus import light_lost_stops
from grammar.questions import Question, Thing

TUBE: Final = "extension-tube"
TWO: Final = 2


def with_light_apart(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind by how many stops each darkens, where light is asked about and can be told."""
    told = _pieces_apart(question)
    quantities = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=quantities) if told.lines else answer


def _pieces_apart(question: Question) -> Told:
    """Of tubes and glass named beside one lens: what each takes of the light, the most first."""
    lenses = focals(question)
    rows = [row for piece in question.adapters if (row := _taken(piece, lenses)) is not None]
    if len(rows) < TWO or len(lenses) != 1:
        return Told()
    rows.sort(key=lambda row: -row[1])
    costs = [
        f"{name} costs {trimmed(stops, 2)} stops" if stops > 0 else f"{name} gives {trimmed(-stops, 2)} stops"
        for name, stops in rows
    ]
    even = (
        "; pupils taken for even, focus ring at infinity"
        if any(piece.thickness_mm for piece in question.adapters)
        else ""
    )
    quantities = tuple(Quantity("light_difference_stops", Interval.exact(abs(stops)), name) for name, stops in rows)
    return Told((Line("head", f"{', '.join(costs)}{even}."),), quantities)


def _taken(piece: Thing, lenses: tuple[float, ...]) -> tuple[str, float] | None:
    """The stops that a piece takes; below nought it gives so many."""
    if piece.factor:
        return f"{piece.factor:g}x", TWO * log2(piece.factor)
    length = piece.thickness_mm[1] if piece.thickness_mm is not None else None
    drawn = piece.piece == TUBE or is_drawn(piece)
    if not length or not drawn or len(lenses) != 1:
        return None
    lost = light_lost_stops(Interval.exact(length / lenses[0]), Interval.exact(1.0))
    return (f"{trimmed(length, 2)} mm of tube", lost.nominal) if is_known(lost) else None
