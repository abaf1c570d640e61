"""Which way a lens sits off, first of all where that is asked: too far out or too close."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Answer, Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import READS_MM, small_mm
from engine.answers.seat.rings_weighed import RINGS_OFF, rings_weighed
from engine.base.compact import replace
from engine.base.interval import is_known
from grammar.questions import Question
from grammar.turns.way_asked import ASKED_CLOSE, ASKED_OUT, WAY_ASKED

_LED: Final = re.compile(r"(No, )?[\d.]+ mm too |No, it is as it should be")  # how it begins where it is told already
_SHORT: Final = "far-missed"  # the key of far things that are seen not to come sharp
_TURNS: Final = 4  # back to which that may have been told
SEEN_SHORT: Final = (
    "Too far out, since far things do not come sharp: the ring is thicker than it should be, or not seated home, or "
    "the lens itself is set too long. By the numbers nothing is off; how far it still comes sharp tells by how much."
)
_OF_CHAIN: Final = ("stack_mm", "ring_thickness_mm")


def with_way_off(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind which way it is off, where a number of it tells that."""
    weighed = rings_weighed(question, knowledge) if question.mentions(RINGS_OFF) else Told()
    if weighed.lines:
        rows = (*weighed.quantities, *(answer.quantities or ()))
        return replace(answer, lines=(*weighed.lines, *answer.lines), quantities=rows)
    off = _off(answer) if question.mentions(WAY_ASKED) else None
    if off is None or (question.asks_which_way and _LED.match(answer.lines[0].text)):
        return answer
    short = abs(off) < READS_MM and _was_seen_short(question)
    head = Line("head", SEEN_SHORT if short else _answered(_told(off), off, question))
    return replace(answer, lines=(head, *(line for line in answer.lines if line != head)))


def _was_seen_short(question: Question) -> bool:
    """Whether far things were told not to come sharp, here or in the turns that this one goes on from."""
    turn: Question | None = question
    for _ in range(_TURNS):
        if turn is None:
            return False
        if turn.places(_SHORT):
            return True
        turn = turn.prior if turn.follows else None
    return False


def _off(answer: Answer) -> float | None:
    """By how much it sits off, in mm, above 0 too far out: as the answer tells it, else by its ring."""
    rows = {row.name: row.value for row in reversed(answer.quantities or ()) if is_known(row.value)}
    error = rows.get("register_error_mm")
    if error is not None and is_known(error):
        return error.nominal
    stack, right = (rows.get(name) for name in _OF_CHAIN)
    if stack is None or right is None or not (is_known(stack) and is_known(right)):
        return None
    return stack.nominal - right.nominal


def _answered(text: str, off: float, question: Question) -> str:
    """With yes or no before it, where one way alone is asked for."""
    out, close = question.mentions(ASKED_OUT), question.mentions(ASKED_CLOSE)
    if out == close or abs(off) < READS_MM:
        return text
    return f"{'Yes' if out == (off > 0) else 'No'}: {text[:1].lower()}{text[1:]}"


def _told(off: float) -> str:
    if abs(off) < READS_MM:
        return "Neither way: it is just right."
    much = small_mm(abs(off))
    if off > 0:
        return f"Too far out, by {much}: what stands between is too long."
    return f"Too close, by {much}: what stands between is too short."
