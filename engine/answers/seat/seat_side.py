"""On which side of the body's flange a chain seats the lens, where that is asked: 'a normal ring or a sunk one'."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import SEAT_READS_MM, small_mm
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.base.span import Span
from engine.facts.catalogue import Catalogue
from engine.judging.judge import Judged
from grammar.kinds import CHAIN, COMPARE
from grammar.questions import Question

SUNK = "recessed"
SIDES = frozenset([SUNK, "adapter", "extension-tube"])  # pieces that stand for the one side or the other
EITHER = " or "


def as_side(question: Question) -> Question:
    """'C on Z, a cup or a spacer': pieces named only for where they seat the lens are none that it must go by."""
    pieces = question.adapters
    pair = len(question.lenses) == len(question.bodies) == 1 and question.lenses[0].ids and question.bodies[0].ids
    kinds = {piece.piece for piece in pieces}
    if not pair or not mentions(question, "seat-side") or not kinds <= SIDES:
        return question
    if SUNK not in kinds and not is_either_asked(question):
        return question
    if any(piece.front and piece.rear and piece.front[:1] != question.lenses[0].ids[:1] for piece in pieces):
        return question  # 'a CS lens in a C to E cup adapter' has that ring
    if any(piece.ids or piece.factor or any(piece.thickness_mm or ()) for piece in pieces):
        return question
    asked = CHAIN if question.intent == COMPARE else question.intent
    return question.with_(intent=asked, adapters=(), limits=replace(question.limits, without_glass=False))


def is_either_asked(question: Question) -> bool:
    """'cup or flat ring': that it is the one or the other is asked, and not said."""
    return any(EITHER in question.text[one.at : one.end].casefold() for one in question.places("seat-side"))


def seat_side(question: Question, judged: Judged) -> Told:
    """Whether the seat lies before the flange or within it, by how much; nothing where it is not asked or not known."""
    seat = judged.trace.value("seat_mm")
    if not mentions(question, "seat-side") or not isinstance(seat, Span) or not is_known(seat.shortest):
        return Told()
    at = seat.shortest.nominal
    if at > SEAT_READS_MM:
        text = f"A plain ring, not a sunk one: the lens seats {small_mm(at)} in front of the body's flange."
    elif at < -SEAT_READS_MM:
        text = f"A sunk one: the lens seats {small_mm(-at)} inside the body's flange, in a cup."
    else:
        text = "The lens seats level with the body's flange."
    return Told((Line("text", text),))


def weighed(question: Question, facts: Catalogue) -> Question:
    """'one ring direct, or LTM to M and then M to L': the two ways are set apart, however it is asked."""
    if question.intent != CHAIN or question.follows or not mentions(question, "one-or-more"):
        return question
    from engine.answers.seat.ways_told import ways_told

    return question.with_(intent=COMPARE) if len(ways_told(question, facts)) > 1 else question
