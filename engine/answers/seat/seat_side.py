"""On which side of the body's flange a chain seats the lens, where that is asked: 'a normal ring or a sunk one'."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import small_mm
from engine.base.interval import is_known
from engine.base.span import Span
from engine.judging.judge import Judged
from grammar.questions import Question

LEAST_MM = 0.0005  # what is less is level with the flange


def seat_side(question: Question, judged: Judged) -> Told:
    """Whether the seat lies before the flange or within it, by how much; nothing where it is not asked or not known."""
    seat = judged.trace.value("seat_mm")
    if not mentions(question, "seat-side") or not isinstance(seat, Span) or not is_known(seat.shortest):
        return Told()
    at = seat.shortest.nominal
    if at > LEAST_MM:
        text = f"A plain ring, not a sunk one: the lens seats {small_mm(at)} in front of the body's flange."
    elif at < -LEAST_MM:
        text = f"A sunk one: the lens seats {small_mm(-at)} inside the body's flange, in a cup."
    else:
        text = "The lens seats level with the body's flange."
    return Told((Line("text", text),))
