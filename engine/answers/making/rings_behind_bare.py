"""Rings behind a lens without a mount of its own whose flange to image was measured: each counts by its length.

'rings totalling 22 mm' are one piece of 22 mm, and a ring told by its length alone is no adapter of a pair.
"""

from __future__ import annotations

from engine.answers.parts.said import number
from engine.base.compact import replace
from grammar.questions import RING, Question, Thing
from grammar.things.casting import MOUNTLESS, SPACER

_TOTAL, _EXTENSION = "total", "extension"
_STRETCHING = frozenset(["bellows", "helicoid"])


def rings_behind_bare(question: Question) -> Question:
    """The question with those rings as spacers of their length, mm."""
    lens, total = question.lens, number(question, _TOTAL)
    if lens is None or lens.lens_kind not in MOUNTLESS or not question.bodies:
        return question
    if number(question, "flange_to_image") is None:
        return question
    question = _with_tube(question)
    drawn = any(one.piece in _STRETCHING for one in question.adapters)  # the rings stand beside that as they are
    pieces = question.adapters if drawn else tuple(_as_spacer(one) for one in question.adapters)
    fixed = [one for one in pieces if one.is_of_one_length]
    open_ = [one for one in pieces if one.piece in (RING, SPACER) and one.thickness_mm is None and not _joins(one)]
    if total is not None and not fixed and len(open_) == 1:
        whole = Thing(words=f"{total:g} mm tube", thickness_mm=(total, total), piece=SPACER, column=open_[0].column)
        pieces = tuple(whole if one is open_[0] else one for one in pieces)
        question = question.with_(values=question.rest(_TOTAL))
    return question if pieces == question.adapters else question.with_(adapters=pieces)


def _with_tube(question: Question) -> Question:
    """'with 70 mm of tubes': one piece of that length, and not 70 mm beyond infinity; a draw is told so itself."""
    told = number(question, _EXTENSION)
    lengths = [one.thickness_mm for one in question.adapters if one.thickness_mm is not None]
    if told is None or any(one != (told, told) for one in lengths):
        return question
    tube = Thing(words=f"{told:g} mm tube", thickness_mm=(told, told), piece=SPACER)
    pieces = question.adapters if lengths else (*question.adapters, tube)
    if any(one.piece in _STRETCHING for one in question.adapters):
        return question
    return question.with_(adapters=pieces, values=question.rest(_EXTENSION))


def _as_spacer(piece: Thing) -> Thing:
    bare = piece.piece == RING and piece.is_of_one_length and not _joins(piece)
    return replace(piece, piece=SPACER) if bare else piece


def _joins(piece: Thing) -> bool:
    return bool(piece.front or piece.rear or piece.ids) or piece.factor is not None
