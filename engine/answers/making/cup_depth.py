"""How deep a cup is: where the lens must sit inside the body's flange, what a ring measures is its depth."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import mentions, number, numbers
from engine.answers.seat.described import CUP
from engine.base.compact import replace
from grammar.kinds import DEPTH_OF_FIELD
from grammar.questions import Question, Thing

NOMINAL: Final = "nominal"  # key of the length that a ring should have
_NEAR_MM: Final = 0.25  # a depth told by itself is so near to the right one,
_NEAR: Final = 0.1  # or so near as a share of it
_OPEN: Final = ("depth", "numbers")  # keys of a number that 'deep' claimed, or no word
_THICKNESS: Final = "thickness"
_SIGNED: Final = ("thickness", "numbers", "length")  # keys of a number below nought


def with_error_by_sign(question: Question, right_mm: float) -> Question:
    """'my ring is -0.1 mm' where no seat lies inside the body: it is so much shorter than it should be."""
    rings = [one for one in question.adapters if one.thickness_mm is not None and one.thickness_mm[0] < 0]
    if right_mm <= 0 or len(rings) != 1 or len(question.adapters) != 1:
        return question
    told = round(right_mm + (rings[0].thickness_mm or (0.0,))[0], 4)
    ring = replace(rings[0], thickness_mm=(told, told), words=f"{told:g} mm ring")
    return question.with_(adapters=(ring,)) if told > 0 else question


def as_depth(question: Question, right_mm: float) -> Question:
    """The question with its one ring as a cup, so deep as it was said to measure, where that is near what is right.

    `right_mm`: the seat that is right, lens register less body register; below nought in a cup.
    """
    if right_mm >= 0 or len(question.adapters) > 1 or question.places("above-the-flange"):
        return question  # what stands above the flange is no depth
    question = _told_alone(_seated_by_sign(question, right_mm), right_mm)
    ring = next((one for one in question.adapters if one.thickness_mm is not None), None)
    told = ring.thickness_mm[0] if ring and ring.thickness_mm else number(question, _THICKNESS)
    should = number(question, NOMINAL)
    if told is None or told <= 0 or (question.off_word and should is None):
        return question
    if should is None and not _is_cup(ring, question):
        return question  # 'a 0.6 mm plate' lies flat
    if not _is_near(told if should is None else should, right_mm):
        return question
    if ring is not None:
        return question.with_(adapters=(replace(ring, piece=CUP),))
    rest = question.rest(_THICKNESS)
    named = next(iter(question.adapters), Thing(words=f"{told:g} mm cup"))
    return question.with_(adapters=(replace(named, piece=CUP, thickness_mm=(told, told)),), values=rest)


def _is_cup(ring: Thing | None, question: Question) -> bool:
    """Whether it is a cup, or its depth is told: 'depth there?' after a flat ring asks of what is sharp."""
    before = question.prior if question.follows else None
    of_before = ring is not None and before is not None and ring in before.adapters
    told = any(sign.isdigit() for sign in question.text) and question.intent != DEPTH_OF_FIELD
    said = mentions(question, "depth-told") and (told or not of_before)
    return (ring is not None and ring.piece == CUP) or said


def _seated_by_sign(question: Question, right_mm: float) -> Question:
    """'the C to E ring sits at -0.4': below nought and near what is right, it is where the lens sits, in mm."""
    ring = question.adapters[0] if question.adapters else None
    told = numbers(question, *_SIGNED)
    seats = [one for one in told if one < 0 and _is_near(-one, right_mm) and abs(one - right_mm) < -one]
    if ring is None or ring.ids or ring.thickness_mm is not None or len(seats) != 1:
        return question
    sunk = replace(ring, piece=CUP, thickness_mm=(-seats[0], -seats[0]))
    return question.without(*_SIGNED).with_(adapters=(sunk,))


def _told_alone(question: Question, right_mm: float) -> Question:
    """'my C to MFT cup is 1.80 deep': the one number that no other word claimed is the depth of the one cup named."""
    key = next((one for one in _OPEN if question.said(one) is not None), _OPEN[0])
    told = question.said(key) or ""
    ring = question.adapters[0] if question.adapters else None
    if ring is None or ring.ids or ring.thickness_mm is not None or number(question, _THICKNESS) is not None:
        return question
    alone = number(question, key)
    if alone is None or "," in told or not _is_near(alone, right_mm):
        return question
    rest = question.rest(key)
    return question.with_(adapters=(replace(ring, thickness_mm=(alone, alone)),), values=rest)


def _is_near(told_mm: float, right_mm: float) -> bool:
    return abs(told_mm + right_mm) <= max(_NEAR_MM, -_NEAR * right_mm)
