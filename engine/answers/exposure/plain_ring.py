"""Whether a ring with no glass in it takes any of the light, and how little of it an objective leaves."""

from __future__ import annotations

from typing import Final

from engine.answers.close.finite_objective import objective_lit
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, stop
from engine.answers.parts.wording import f_number
from grammar.kinds import MACRO_DISTANCE, SEATED
from grammar.questions import Question, Thing

_PLAIN: Final = (None, "", "adapter", "ring")
# values under which something else is asked of the light than what the ring does to it
_MORE: Final = (
    "magnification",
    "extension",
    "travel",
    "shutter",
    "iso",
    "light",
    "stops",
    "filter_thread",
    "thickness",
)
_OF_SEAT: Final = SEATED | {"buy-plan", "why", "gear-setting", "coverage"}  # what a bare 'do i lose light' goes on from


def plain_ring_light(question: Question, knowledge: Knowledge) -> Told:
    """That a plain ring loses none, and what would; nothing where glass, a tube or a filter is spoken of."""
    if (lit := objective_lit(question, knowledge)).lines:
        return lit
    if not mentions(question, "light-lost") or any(question.said(key) for key in _MORE) or not _is_plain(question):
        return Told()
    if mentions(question, "glass-or-drawn") and not mentions(question, "no-glass"):
        return Told()
    widest = {one.f_number for one in question.lenses if one.f_number is not None}
    f = stop(question) if len(widest) < 2 else None  # each of several keeps its own
    f = f or (next(iter(widest)) if len(widest) == 1 else None)
    stays = f"; f/{f_number(f)} stays f/{f_number(f)}" if f is not None else ""
    head = f"No: a plain ring has no glass, and the lens stands as far off as on its own camera{stays}."
    return Told((
        Line("head", head),
        Line("fact", "glass in a ring changes that: what enlarges takes light, a reducer gives some", 1),
        Line("fact", "a tube, or a helicoid wound out, takes light close up: two stops at life size", 1),
        Line("fact", "a ring cannot darken the middle: dark corners are the image circle of the lens", 1),
    ))  # fmt: skip


def _is_plain(question: Question) -> bool:
    if any((lens.count or 1) > 1 for lens in question.lenses):
        return False  # 'two 50s coupled with a male ring'
    if (
        question.prior is not None
        and question.prior.intent == MACRO_DISTANCE
        and any(one.thickness_mm for one in question.adapters)
    ):
        return False  # a ring put behind the lens to come closer
    ring = bool(question.adapters) and all(_has_no_glass(one) for one in question.adapters)
    prior = question.prior
    bare = not question.adapters and question.follows and prior is not None and prior.intent in _OF_SEAT
    return ring or (bare and prior is not None and prior.intent != MACRO_DISTANCE and not prior.adapters)


def _has_no_glass(piece: Thing) -> bool:
    return piece.piece in _PLAIN and piece.factor is None and not piece.ids
