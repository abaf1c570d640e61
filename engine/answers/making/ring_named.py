"""A tube or spacer that is only another word for the ring: 'is it just a tube between', 'how long is the spacer'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import mentions
from engine.base.compact import replace
from grammar.kinds import CHAIN, FOCUS_VERDICT
from grammar.questions import Question, Thing
from grammar.things.casting import SPACER

_RING: Final = "adapter"
_WAYS: Final = (CHAIN, FOCUS_VERDICT)


def with_ring_named(question: Question) -> Question:
    """The question with the ring itself in place of one bare tube, where nothing close is wanted."""
    pieces = question.adapters
    alone = len(pieces) == 1 and pieces[0].piece == SPACER and _tells_nothing(pieces[0])
    if not alone or question.intent not in _WAYS or not (question.lenses and question.bodies):
        return question
    if question.follows or mentions(question, "tube-for-close"):
        return question
    return question.with_(adapters=(replace(pieces[0], piece=_RING),))


def _tells_nothing(thing: Thing) -> bool:
    """Whether a piece is told by its kind alone, and as one."""
    told = (thing.ids, thing.thickness_mm, thing.steps, thing.front, thing.rear)
    return not any(told) and thing.count in (None, 1)
