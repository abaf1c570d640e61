"""What a seat that is off does to a lens with a floating group: it is set for another distance than is focused."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from grammar.kinds import WHY
from grammar.questions import RING, Question

_TERM: Final = "floating-elements"


def with_floating(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with that told: first where a reason is asked, else behind it where the seat is told to be off."""
    off = any(row.name == "register_error_mm" for row in answer.quantities or ())
    row = knowledge.catalogue.terms.get(_TERM)
    why = question.intent == WHY
    ringed = off or any(one.piece == RING for one in question.adapters)
    if row is None or not (off or (why and ringed)) or any(row.means in line.text for line in answer.lines):
        return answer
    told = Line("head" if why else "text", row.means)
    return replace(answer, lines=(told, *answer.lines) if why else (*answer.lines, told))
