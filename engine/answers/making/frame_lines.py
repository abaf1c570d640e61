"""Two numbers of a ring that are no lengths: the focal lengths whose frame lines it brings up in a finder."""

from __future__ import annotations

from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing


def with_frame_lines(question: Question, facts: Catalogue) -> Question:
    """'the 28-90 LTM-M ring': the ring that is sold under those numbers, and no helicoid of 28 to 90 mm."""
    pieces = tuple(_as_sold(piece, facts) for piece in question.adapters)
    return question if pieces == question.adapters else question.with_(adapters=pieces)


def _as_sold(piece: Thing, facts: Catalogue) -> Thing:
    told = piece.thickness_mm or piece.steps
    if told is None or not (piece.front and piece.rear):
        return piece
    lines = tuple(f"{one:g}" for one in told)
    for ring in facts.adapters.values():
        if ring.frame_lines == lines and (ring.front, ring.rear) == (piece.front[0], piece.rear[0]):
            return replace(piece, ids=(ring.id,), thickness_mm=None, steps=None, piece="adapter")
    return piece
