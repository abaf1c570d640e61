"""What the distance scale of a lens says, and what the tape says to the same: '5 m on the scale, the tape says 4.2'."""

from __future__ import annotations

import re
from collections.abc import Iterable
from typing import Final

from engine.base.units import MM_PER_FOOT
from grammar.kinds import DEPTH_OF_FIELD, SHIM_CALIBRATION
from grammar.questions import Question
from grammar.readings.settled_readings import READINGS
from grammar.words.mentioned import Mention

_NUMBER: Final = re.compile(
    r"(?<![\w./])(?P<value>\d+(?:\.\d+)?)(?P<half> and a half)?\s?"
    r"(?P<unit>mm|cm|m|metres?|meters?|ft|feet|foot)?(?![\w/])",
    re.IGNORECASE,
)
_PARTS: Final = re.compile(r"[,;.]")  # what parts a number from the words behind it
_MARK: Final = "mark-of-number"
_UNITS: Final = {"mm": 1.0, "cm": 10.0, "m": 1000.0, "f": MM_PER_FOOT}
_LEAST_MM: Final = 150.0  # no scale begins nearer
_APART: Final = 4.0  # what the one may be of the other
_SHORTEST_BARE_MM: Final = 12.0  # of focal lengths told without a unit
_BARE_MOST: Final = 100.0  # a bare number of metres
_SCALE: Final = "by-the-scale"  # keys of what is mentioned
_TAPE: Final = "by-the-tape"
_PARTING: Final = "but-or-and"
_TRULY: Final = "really-so"


def with_scale_pair(question: Question) -> Question:
    """The question with what the scale says and what is so, in mm, where both are told."""
    scaled = question.places(_SCALE) or question.places(_TRULY)
    told = scaled and question.places(_TAPE) and not _each_has_a_mark(question)
    pair = _pair(question) if told else None
    if pair == question.scale_pair:
        return question
    if question.intent == DEPTH_OF_FIELD and question.f_number is None:
        question = question.with_(intent=SHIM_CALIBRATION, topic=None)  # how far the marks are off tells of the seat
    # in canonical words the two would be a mark and a distance, and no pair
    named = any(lens.focal_length_mm for lens in question.lenses)
    return question.with_(scale_pair=pair, instead=() if named and pair else question.instead)


def _pair(question: Question) -> tuple[float, float] | None:
    text = question.text
    found = [one for one in _NUMBER.finditer(text) if not _is_focal(one, question)]
    told = []
    for at, one in enumerate(found):
        before = found[at - 1].end() if at else 0
        after = found[at + 1].start() if at + 1 < len(found) else len(text)
        told.append((one, *_told_by(question, before, one.start(), one.end(), after)))
    said: dict[str, re.Match[str]] = {}
    for one, leads, _ in told:
        # 'at the 2 m mark actually shows 2.4 m': what the scale says is told, so that this is what is so
        key = next((key for key in leads if key not in said and (key == _TAPE or key == leads[0])), None)
        if key is not None:
            said[key] = one
    for one, leads, follows in told:
        if not leads and follows:
            said.setdefault(follows[0], one)
    if len(said) == 1:
        _tell_other(said, found, question)
    if len(said) < 2:
        return None
    if _is_of_ring(question, [one for one in said.values() if not one["unit"]]):
        return None
    common = next((unit for one in said.values() if (unit := _unit(one["unit"]))), "m")
    mark, sharp = _in_mm(said[_SCALE], common), _in_mm(said[_TAPE], common)
    apart = max(mark, sharp) / min(mark, sharp) if min(mark, sharp) > _LEAST_MM else 0.0
    return (mark, sharp) if 1.0 < apart <= _APART else None


def _tell_other(said: dict[str, re.Match[str]], found: list[re.Match[str]], question: Question) -> None:
    """'28 mm on 4 m is really at 5 m': of two distances the one that is so; what stands before it is the mark."""
    told, plain = said.get(_TAPE), [one for one in found if one["unit"] and _in_mm(one, "m") > _LEAST_MM]
    truly = told is not None and any(one.at < told.start() for one in question.places(_TRULY))
    if told is not None and truly and len(plain) == 2 and plain[1] is told:
        said[_SCALE] = plain[0]


def _each_has_a_mark(question: Question) -> bool:
    """'infinity is sharp at 12 m on a 35 and at 25 m on a 50': a mark for each of several lenses, and no tape."""
    marks = len((question.said("mark") or "").split(", "))
    return 1 < marks == sum(lens.focal_length_mm is not None for lens in question.lenses)


def _is_of_ring(question: Question, told: Iterable[re.Match[str]]) -> bool:
    """Whether bare numbers are how thick a ring is said and measured to be: 'the ring says 27.5, i measure 27.42'."""
    sizes = {size for piece in question.adapters if piece.thickness_mm for size in piece.thickness_mm}
    read = question.said(READINGS) or ""  # each of several readings of it
    sizes |= {float(one) for one in re.findall(r"\d+(?:\.\d+)?", read)}
    return any(float(one["value"]) in sizes for one in told)


def _in_mm(found: re.Match[str], common: str) -> float:
    """A number in its unit; a bare one in that of the other, unless it is too large for it."""
    value = float(found["value"]) + (0.5 if found["half"] else 0.0)
    return value * _UNITS[_unit(found["unit"]) or (common if value <= _BARE_MOST else "mm")]


def _unit(text: str | None) -> str | None:
    word = (text or "").casefold()
    return None if not word else word if word in _UNITS else word[0]


def _is_focal(found: re.Match[str], question: Question) -> bool:
    """Whether a number is the focal length of a lens that is named; short bare ones may have been taken for such."""
    value, unit = float(found["value"]), _unit(found["unit"])
    named = any(lens.focal_length_mm == value for lens in question.lenses)
    return named and (unit == "mm" or (unit is None and value >= _SHORTEST_BARE_MM))


def _told_by(question: Question, before: int, start: int, end: int, after: int) -> tuple[list[str], list[str]]:
    """By which of the two a number is told: the words that lead to it, the last first, else those that follow.

    The number stands from `start` to `end`; the one before it ends at `before`, the next begins at `after`.
    """
    told = sorted((one.at, one.key) for key in (_SCALE, _TAPE) for one in question.places(key))
    if _mark_at(end, question):
        return [_SCALE], []  # 'sharp at the 5 m mark'
    first = _mark_at(before, question) if before else None
    told = [row for row in told if first is None or row[0] >= first.end]  # the mark is that of the number before
    stops = [end + one.start() for one in _PARTS.finditer(question.text[end:after])]
    stops += [one.at for one in question.places(_PARTING) if end <= one.at < after]
    leads = [key for at, key in told if before <= at < start]
    follows = [key for at, key in told if end <= at < min(stops, default=after)]
    return leads[::-1], follows


def _mark_at(end: int, question: Question) -> Mention | None:
    """The word right behind a number that tells it to be a mark."""
    return next((one for one in question.places(_MARK) if one.at in (end, end + 1)), None)
