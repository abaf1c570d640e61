"""Step rings for fronts whose sizes are told: they stand before the lens, and in no chain behind it."""

from __future__ import annotations

from engine.answers.close.tube_sets import STEP
from grammar.questions import Question, Thing


def without_rings_in_front(question: Question) -> Question:
    """The question without step rings told by their name alone, where front threads are told."""
    if question.said("filter_thread") is None:
        return question
    return question.with_(adapters=tuple(one for one in question.adapters if not _is_in_front(one)))


def _is_in_front(piece: Thing) -> bool:
    told = piece.steps or piece.ids or piece.front or piece.rear or piece.thickness_mm or piece.factor
    return piece.piece == STEP and not told
