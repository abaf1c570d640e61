"""By how much other seats than that of a ring are off: a cup told by its depth, a sensor too far back or forward."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.nearby import MOST_ERROR_MM
from engine.answers.parts.said import mentions, number
from engine.answers.seat.described import CUP
from engine.base.compact import replace
from grammar.questions import Question, Thing

SENSOR_OFF: Final = ("sensor-behind", "sensor-before")  # what is mentioned of a sensor that is too far back, or forward


def sensor_off(question: Question) -> float | None:
    """'the sensor sits 0.1 too far back': so much farther from it is the lens, and nearer where it is forward."""
    behind, before = (mentions(question, one) for one in SENSOR_OFF)
    size = number(question, "thickness", "length", "numbers")
    if behind == before or size is None or not 0 < size <= MOST_ERROR_MM:
        return None
    return size if behind else -size


def off_in_depth(question: Question) -> float | None:
    """'0.1 too deep' of a cup: so much deeper the lens sits too close, and shallower too far out."""
    deep, shallow = mentions(question, "too-deep"), mentions(question, "too-shallow")
    pieces = (*question.adapters, *(question.prior.adapters if question.prior is not None else ()))
    size = number(question, "thickness", "length", "depth", "numbers")
    if deep == shallow or size is None or not any(one.piece == CUP for one in pieces):
        return None
    return (-size if deep else size) if 0 < size <= MOST_ERROR_MM else None


def is_cup(piece: Thing) -> bool:
    """Whether a piece is told by how deep it is."""
    return piece.piece == CUP


def with_depth_off(question: Question) -> Question:
    """'my C to E cup is 0.1 too deep': so little is by how much it is off, and no cup is as shallow as that."""
    deep, shallow = mentions(question, "too-deep"), mentions(question, "too-shallow")
    sized = [one for one in question.adapters if one.thickness_mm is not None]
    cup = any(one.piece == CUP for one in question.adapters)
    if deep == shallow or len(sized) != 1 or not (cup and mentions(question, "too")):
        return question
    size = (sized[0].thickness_mm or (0.0,))[0]
    if not 0 < size <= MOST_ERROR_MM or number(question, "thickness") is not None:
        return question
    pieces = [replace(one, thickness_mm=None, piece=CUP) if one is sized[0] else one for one in question.adapters]
    ended = [one for one in pieces if one.front and one.rear] or pieces[:1]  # 'the cup c-mft' is one piece
    return question.with_(adapters=tuple(ended), values=(*question.values, ("thickness", f"{size:g} mm")))
