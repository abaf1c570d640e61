"""Which kind of filter to buy, behind the stops that are to be held back."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from grammar.questions import Question

KINDS: Final = "variable-or-fixed-nd"  # the advice
_HELD_BACK: Final = "nd_stops"


def with_kinds_of_filter(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer and what is to be known of fixed and variable filters, where stops are to be held back."""
    advice = knowledge.catalogue.advice.get(KINDS)
    held = any(row.name == _HELD_BACK for row in answer.quantities or ())
    if advice is None or not held or any(line.text.endswith(advice.says) for line in answer.lines):
        return answer
    line = Line("text", f"{advice.topic[:1].upper()}{advice.topic[1:]}: {advice.says}")
    return replace(answer, lines=(*answer.lines, line))
