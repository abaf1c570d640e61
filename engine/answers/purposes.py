"""What a part of a lens or ring is there for, where that is asked beside a mount: 'the pin behind my M42, for what'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from engine.answers.shims.missed import behind_advice
from engine.answers.words.advice import is_of_body, named_mounts
from engine.facts.subjects import subjects_of
from grammar.questions import Question

LIKE: Final = 9.0  # how surely the question must be about the advice
SEEN: Final = "look-"  # how the ids of advice begin that tells a mount by its looks


def with_purpose(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind the advice that tells what the part is for; the same where none is surely about it."""
    if question.mentions("word-asked"):
        return answer  # 'the word for a zoom that needs it' asks for that word
    if question.values or answer.unread is not None:
        return answer
    facts, mounts = knowledge.catalogue, named_mounts(question, knowledge)
    for match in subjects_of(facts).matches(question.text)[:1]:
        advice = facts.advice[match.id]
        of_lens = not (advice.mounts and mounts) or bool(mounts & set(advice.mounts))
        if match.likeness < LIKE or match.id.startswith(SEEN) or not of_lens or not is_of_body(advice, question):
            continue
        return behind_advice(answer, match.id, knowledge)
    return answer
