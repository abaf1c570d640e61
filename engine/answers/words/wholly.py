"""Advice that a question is wholly about, before an answer that was found for what it seemed to ask."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer
from engine.answers.parts.knowledge import Knowledge
from engine.answers.words.advice import advice_lines, is_of_body, named_mounts
from engine.base.compact import replace
from engine.facts.guidance import Advice
from engine.facts.subjects import subjects_of
from grammar.questions import Question

LIKE: Final = 13.0  # how surely the question must be about it
MOST: Final = 0.75  # what part of the question's words must be its own
WHOLLY: Final = 0.9  # and of one phrase of the advice
SURELY: Final = 20.0  # what is so surely about it may tell a number besides, and leave out a word of the phrase
NEARLY: Final = 0.7


def with_what_it_is_about(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The advice first whose phrase a question is made of, where nothing was computed and it was not told."""
    if answer.unread is not None or question.mentions("word-asked"):
        return answer  # whose word is asked wants that, and no advice
    advice = _wholly_about(question, knowledge)
    if advice is None or (answer.lines and answer.lines[0].text.endswith(advice.says)):
        return answer
    rest = [line for line in answer.lines if not line.text.endswith(advice.says) and line.kind != "ask"]
    return replace(answer, status=ANSWERED, lines=(*advice_lines([advice]), *rest))


def _wholly_about(question: Question, knowledge: Knowledge) -> Advice | None:
    """The one advice nearest to the question, where that holds a whole phrase of it and hardly anything else."""
    match = next(iter(subjects_of(knowledge.catalogue).matches(question.text)), None)
    if match is None or match.likeness < LIKE or match.part < MOST:
        return None
    surely = match.likeness >= SURELY and match.held >= NEARLY
    if not surely and (match.held < WHOLLY or question.values):
        return None  # who tells a number asks what becomes of it
    advice, mounts = knowledge.catalogue.advice[match.id], named_mounts(question, knowledge)
    of_lens = not (advice.mounts and mounts) or bool(mounts & set(advice.mounts))
    return advice if of_lens and is_of_body(advice, question) else None
