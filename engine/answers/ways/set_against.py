"""What is set against the piece of the question before: 'or a close-up lens, which'."""

from __future__ import annotations

from typing import Final

from engine.answers.close.closer_apart import ROOM
from engine.answers.parts.said import mentions
from engine.base.compact import replace
from grammar.questions import Question, Thing

_GLASS: Final = "corrective-glass"


def with_what_was_before(question: Question) -> Question:
    """The question with the piece of the one before, where another is set against it: 'or a close-up lens, which'."""
    prior = question.prior
    if question.follows and question.limits.with_glass and not question.adapters:
        # 'what about the one with glass, better?': better than the plain one
        rings = (Thing(piece="adapter", words="ring without glass"), Thing(piece=_GLASS, words="ring with glass"))
        return question.with_(adapters=rings, limits=replace(question.limits, with_glass=False, without_glass=False))
    if not question.follows or prior is None or len(question.adapters) != 1 or len(prior.adapters) != 1:
        return question
    if not mentions(question, "set-against", "than-that") or prior.adapters[0].piece == question.adapters[0].piece:
        return question
    kept = tuple(row for row in prior.values if row[0] == ROOM and question.said(ROOM) is None)
    return question.with_(adapters=(*prior.adapters, *question.adapters), values=(*question.values, *kept))
