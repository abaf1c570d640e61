"""The question back: the one fact without which nothing can be told."""

from __future__ import annotations

from engine.answers.parts.answer import NO, Answer, Line
from engine.answers.parts.resolve import Missing
from grammar.questions import Question

DETAILS = (
    "How many lugs, how wide is the throat, are there contacts, a lever or a pin, and what is the register, flange to"
    " image?"
)


def ask_for(question: Question, missing: tuple[Missing, ...]) -> Answer:
    """Ask for the one fact that is missing, first the lens, then the body."""
    return Answer(
        question.text,
        question.intent,
        NO,
        tuple(Line("ask", row.ask, wants=row.wants) for row in missing[:1]),
        question=question,
    )
