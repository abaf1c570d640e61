"""A stop that a question only likens another to, 'so it exposes like f/4.5?': nobody set it, so it is not kept."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer
from grammar.questions import Question

FOR_EXPOSURE: Final = "for exposure"  # the case of the stop that exposes, where another was likened to it


def without_likened_stop(question: Question, answer: Answer) -> Question:
    """The question as the next turn leans on it: at the lens's own stop, where the answer set that apart."""
    likened = any((row.name, row.case) == ("f_number", FOR_EXPOSURE) for row in answer.quantities or ())
    own = question.lens is not None and question.lens.f_number is not None
    return question.with_(f_number=None) if likened and own else question
