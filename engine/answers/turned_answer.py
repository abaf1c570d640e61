"""A lens turned round, where a ring, the far end, a drawing or a card is asked: it is told as close-up, and no more."""

from __future__ import annotations

from typing import Final

from engine.answers.closeup import macro
from engine.answers.parts.answer import NO, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question

NO_INFINITY: Final = (
    "Turned round, a lens works close up only and reaches no infinity: it hangs by its filter thread on a reverse "
    "ring of that size, and its rear looks at the subject."
)
NOTHING_MADE: Final = {
    "draw": "Not drawn: where the planes of a lens turned round lie is not known.",
    "card": "No card: what a lens turned round is sharp at must be found by tape.",
}


def turned(question: Question, knowledge: Knowledge) -> Answer:
    """What it does close up, after that this is all."""
    intent = question.intent
    answer = macro(question.with_(intent=MACRO_DISTANCE), knowledge)
    lead = [Line("head", NO_INFINITY)]
    lacking = NOTHING_MADE.get(intent)
    if lacking is None:
        return replace(answer, intent=intent, question=question, lines=(*lead, *answer.lines))
    lines = (*lead, Line("note", lacking), *answer.lines)
    return replace(answer, intent=intent, question=question, status=NO, lines=lines, chains=None)
