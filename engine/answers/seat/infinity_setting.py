"""To what length a helicoid that is spoken of has to be set for infinity, said first where infinity is asked for."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from grammar.questions import Question, Thing
from grammar.turns.spans import span_of

ASKED: Final = "for-infinity"
_HELICOID: Final = "helicoid"
_NAME: Final = "helicoid_setting_mm"


def with_setting_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind that length, where one helicoid of told ends stands between the lens and the body."""
    whole = next((span for one in question.stood if one.piece == _HELICOID and (span := span_of(one))), None)
    drawn = [
        (one, span)
        for one in question.adapters
        if one.piece == _HELICOID and (span := span_of(one) or whole) is not None
    ]
    error = answer.chains[0].listed.judged.measured_trace.value("register_error_mm") if answer.chains else None
    rows = [row for row in answer.quantities or () if row.name == _NAME and is_known(row.value)]
    told = next((row.value.nominal for row in rows if is_known(row.value)), None)
    if (
        not question.places(ASKED)
        or not question.follows
        or len(drawn) != 1
        or not isinstance(error, Span)
        or not is_known(error.shortest)
    ):
        return answer
    piece, (least, most) = drawn[0]
    at = round(_shortest(piece) - error.shortest.nominal, 3) if told is None else round(told, 3)
    if least <= at <= most:
        text = (
            f"Infinity with the helicoid at {small_mm(at)}: {small_mm(at - least)} out of {trimmed(most - least, 2)}."
        )
    elif at > most:
        text = (
            f"Infinity is at {small_mm(at)}, more than the helicoid has: fully out it is {small_mm(at - most)} short."
        )
    else:
        text = f"No infinity: shut, the helicoid is still {small_mm(least - at)} too long for it."
    new = () if told is not None else (Quantity(_NAME, Interval.exact(at), "infinity"),)
    return replace(answer, lines=(Line("head", text), *answer.lines), quantities=(*new, *(answer.quantities or ())))


def _shortest(piece: Thing) -> float:
    return (piece.thickness_mm or (0.0, 0.0))[0]
