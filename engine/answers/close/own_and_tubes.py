"""A lens that draws so large by itself, behind tubes: both together are the size that depth and light go by."""

from __future__ import annotations

from typing import Final

from engine.answers.close.nearest_set import asked_of_tubes
from engine.answers.close.tube_sets import tubes_told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, numbers
from engine.answers.picture.filling import magnification_filling
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question
from grammar.things.casting import DRAWN

OWN: Final = "own-size"  # what is mentioned of a size that a lens has by itself
_SIZE: Final = "magnification"
_ALIKE: Final = 0.15  # share by which a size told is off the one that the tubes give
_LENGTHS: Final = frozenset(["extension", "travel", "length", "thickness"])


def with_size_grown(question: Question, knowledge: Knowledge) -> Question:
    """The question at both together, in place of the size told and the tubes; as it is where one tells of the other."""
    question = _with_size_filled(question, knowledge)
    told, lenses = numbers(question, _SIZE), focals(question)
    tubes = sum(tubes_told(question, knowledge))
    if len(told) != 1 or len(lenses) != 1 or not tubes or not _is_its_own(question):
        return question
    before = question.prior
    said = question.mentions(OWN) or (before is not None and before.mentions(OWN))
    if not said and abs(tubes / lenses[0] / told[0] - 1) <= _ALIKE:
        return question  # that is what the tubes give
    own, focal = Interval.exact(told[0]), Interval.exact(lenses[0])
    grown = closeup.magnification_with_tube(own, focal, Interval.exact(tubes))
    if not is_known(grown):
        return question
    values = tuple(row for row in question.values if row[0] != _SIZE and row[0] not in _LENGTHS)
    rest = tuple(one for one in question.adapters if one.piece not in DRAWN)
    return replace(question, adapters=rest).with_(values=(*values, (_SIZE, f"{grown.nominal:.5g}")))


def _with_size_filled(question: Question, knowledge: Knowledge) -> Question:
    """The question at the size that fills the frame, where tubes or bellows of no told length are drawn out for it."""
    drawn = [one for one in question.adapters if one.piece in DRAWN]
    if not drawn or any(one.thickness_mm or one.ids for one in drawn) or numbers(question, _SIZE):
        return question
    filled = magnification_filling(question, knowledge.catalogue)
    if filled is None:
        return question
    rest = tuple(one for one in question.adapters if one not in drawn)
    values = (*question.rest(*_LENGTHS), (_SIZE, f"{filled:.5g}"))
    return question.with_(adapters=rest, values=values)


def _is_its_own(question: Question) -> bool:
    """Whether the size is that of the lens alone: it is said so, or was told before its tubes were talked of."""
    before = question.prior
    kept = before is not None and before.said(_SIZE) == question.said(_SIZE) and before.lenses == question.lenses
    return question.mentions(OWN) or (question.follows and kept and not asked_of_tubes(question))
