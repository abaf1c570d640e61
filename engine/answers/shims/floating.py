"""What a seat that is off does to a lens with a floating group: it is set for another distance than is focused."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from grammar.questions import Question

_ADVICE: Final = "floating-group-off"


def with_floating(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with that told behind it, where it tells by how much the seat is off."""
    off = any(row.name == "register_error_mm" for row in answer.quantities or ())
    row = knowledge.catalogue.advice.get(_ADVICE)
    if not off or row is None or any(row.says in line.text for line in answer.lines):
        return answer
    return replace(answer, lines=(*answer.lines, Line("text", row.says)))
