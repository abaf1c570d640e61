"""Infinity that the user misses with a ring that should reach it: what that tells, before the answer."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions
from engine.answers.seat.spacing import far_limits, usual_focals
from engine.base.compact import replace
from grammar.questions import Question

_EARLY: Final = "past-infinity-advice"
_ASKED: Final = "whether-asked"
_REACHED: Final = "infinity"
TOLD: Final = (
    "By its numbers that ring keeps infinity. That yours does not says that the lens sits too far out: a ring thicker "
    "than nominal, one that is not seated home, or a lens set too long. Caliper the ring from seat to seat at four "
    "points; how far it still comes sharp tells by how much it is off:"
)


def with_infinity_early(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what it means that what is far comes sharp before the end of the focus ring."""
    advice = knowledge.catalogue.advice.get(_EARLY)
    if advice is None or any(line.text.endswith(advice.says) for line in answer.lines):
        return answer
    line = Line("head", f"{advice.topic[:1].upper()}{advice.topic[1:]}: {advice.says}")
    return replace(answer, lines=(line, *answer.lines))


def with_infinity_missed(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what it means that infinity is not reached, where the ring named should reach it."""
    ring = any(thing.kind == "adapter" or (thing.front and thing.rear) for thing in question.adapters)
    chain = answer.chains[0].listed.judged if answer.chains else None
    if not ring or chain is None or chain.verdict != _REACHED or mentions(question, _ASKED):
        return answer
    facts = knowledge.catalogue
    error = facts.assumptions["making-spread-nominal"].value.greatest
    less = facts.assumptions["making-spread-derived"].value.greatest
    lenses = focals(question) or usual_focals(facts)
    told = far_limits(lenses, error, facts, question.feet, 1) + far_limits(lenses, less, facts, question.feet, 1)
    lines = (Line("head", TOLD), *told.lines, *answer.lines)
    return replace(answer, lines=lines, quantities=(*(answer.quantities or ()), *told.quantities))
