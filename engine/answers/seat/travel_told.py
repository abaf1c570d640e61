"""A ring between two mounts of which it is told how far it moves: a helicoid, from the seat for infinity outwards."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, RingToMake
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import small_mm
from engine.answers.seat.described import ANY_PIECE
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question, Thing

HELICOID: Final = "helicoid"
RING: Final = "adapter"
_NEARLY_RIGHT: Final = 2.0  # times; what is told of a ring and is more than half as long as it must be is its length
_SAME_MM: Final = 0.01
_MOST_MM: Final = 60.0  # that one moves


def with_travel_told(question: Question, ring: RingToMake, facts: Catalogue) -> Question:
    """'an M to Z ring with 6 mm of travel': its ends are the thickness of the plain ring, and that with the travel.

    Behind another ring, as 'LTM to M 1.06 and an M to E helicoid', the plain ring is that of its own two mounts.
    """
    travel, right = number(question, "travel"), ring.thickness_mm
    movable = [one for one in question.adapters if _moves(one)]
    drawn = [one for one in movable if one.piece == HELICOID] or movable
    if travel is None or not 0 < travel <= _MOST_MM or right is None or right.nominal <= 0 or len(drawn) != 1:
        return question
    movable = drawn
    front, rear = (facts.mounts[ids[0]].register_mm for ids in (drawn[0].front, drawn[0].rear))
    if len(question.adapters) > 1 and is_known(front) and is_known(rear) and front.nominal > rear.nominal:
        shut = front.nominal - rear.nominal
    else:
        shut = right.nominal
    ends = (round(shut, 3), round(shut + travel, 3))
    held = replace(movable[0], piece=HELICOID, thickness_mm=ends)
    return question.with_(adapters=tuple(held if one is movable[0] else one for one in question.adapters))


def with_draw_told(question: Question, ring: RingToMake) -> Question:
    """'the M to E helicoid pulled out 1 mm': so far beyond the length that it has shut, which is right for infinity."""
    right = ring.thickness_mm
    if not mentions(question, "pulled-out-by") or right is None or right.nominal <= 0:
        return question
    if question.said("nominal") is not None:
        return question  # 'turned out 27.9 instead of 28': so long it came
    out = []
    for one in question.adapters:
        low, high = one.thickness_mm or (0.0, 0.0)
        drawn = 0 < low == high < right.nominal / _NEARLY_RIGHT and _moves(replace(one, thickness_mm=None))
        drawn = drawn and (one.piece == HELICOID or len(question.adapters) == 1)  # of two rings one 'turned out 0.85'
        length = round(right.nominal + low, 3)
        out.append(replace(one, piece=RING, thickness_mm=(length, length)) if drawn else one)
    return question.with_(adapters=tuple(out))


def shut_assumed(question: Question) -> tuple[Line, ...]:
    """That such a ring, whose length nobody told, is taken to be right for infinity when it is shut."""
    travel = number(question, "travel")
    drawn = [one.thickness_mm for one in question.adapters if one.piece == HELICOID and one.thickness_mm]
    if travel is None or not any(abs(high - low - travel) < _SAME_MM for low, high in drawn):
        return ()
    return (Line("note", f"Assumed: shut it is {small_mm(drawn[0][0])} long, as a plain ring is. Measure yours."),)


def _moves(thing: Thing) -> bool:
    joins = bool(thing.front and thing.rear) and thing.front[:1] != thing.rear[:1]
    kind = thing.piece in ANY_PIECE or thing.piece == HELICOID
    return joins and kind and thing.thickness_mm is None and not thing.ids
