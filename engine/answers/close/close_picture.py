"""A chain's picture close up, and by what the rows of close-up answers are told."""

from __future__ import annotations

from engine.answers.close.close_rows import Shown
from engine.answers.close.close_table import close_table
from engine.answers.parts.answer import Answer, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import stop
from engine.answers.picture.blur import blur_told
from engine.answers.picture.frames import frames_named
from engine.base.compact import replace
from grammar.questions import Question


def shown_by(question: Question, knowledge: Knowledge) -> Shown:
    """How the rows are told; the field needs an area that the question names, by format or body."""
    forms = frames_named(question, knowledge.catalogue)
    return Shown(
        knowledge.catalogue,
        stop(question),
        forms[0] if forms else None,
        question.feet,
        blur_told(question, forms, knowledge),
    )


def with_picture(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The chain's answer with its picture close up, right behind the verdict."""
    told = close_table(answer, shown_by(question, knowledge)) if answer.chains else Told()
    lines = (*answer.lines[:1], *told.lines, *answer.lines[1:])
    return replace(answer, lines=lines, quantities=(*(answer.quantities or ()), *told.quantities))
