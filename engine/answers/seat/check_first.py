"""How a way is tried out, first where that is asked: 'how do i check that'."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.seat.outcome_lines import FIRST_CHECK
from engine.base.compact import replace
from grammar.questions import Question


def with_check_first(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind the check of its first way; as it is where a question asked in full, or none has one."""
    told = next((line.text for line in answer.lines if line.text.startswith(FIRST_CHECK)), None)
    if told is None or not question.follows:
        return answer
    return replace(answer, lines=(Line("head", f"Check: {told.removeprefix(FIRST_CHECK)}."), *answer.lines))
