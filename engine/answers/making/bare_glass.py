"""A bare glass that is asked about as if it were a lens with a mount: where it is held, in place of the answer."""

from __future__ import annotations

from engine.answers.making.simple_glass import held_at
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from grammar.questions import Question

_KEPT = ("danger", "caution")  # lines that are told whatever is asked


def with_glass_held(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """How far before the sensor the glass stands; the answer as it is where a lens with a mount is spoken of."""
    told = held_at(question, knowledge)
    if not told.lines or any(thing.ids for thing in question.lenses):
        return answer
    kept = tuple(line for line in answer.lines if line.kind in _KEPT)
    return replace(answer, lines=(*told.lines, *kept), quantities=told.quantities, chains=())
