"""A length that other words took, and that is about as long as the ring between the two mounts told.

'cut at 8.0' is no distance, 'it reads 27.9' no mark, 'milled to 27.5, 35mm lens' no focal length, and what 'came 10.4'
is the ring that was sold as 10.1.
"""

from __future__ import annotations

import re
from typing import Final

from engine.answers.found.narrowing import UNCLAIMED
from engine.answers.parts.said import number, numbers
from engine.base.compact import replace
from engine.base.units import MM_PER_METRE
from grammar.questions import RING, Question, Thing

_THICKNESS, _MARK, _THREAD, _FLANGE = "thickness", "mark", "thread", "flange_to_image"
_OFF_MM: Final = 0.8  # a ring is made so near to what is right,
_OFF: Final = 0.04  # or so near as a share of it
_LEAST_MM: Final = 1.0  # what is thinner may be many a thing
_FARTHEST_MM: Final = 120.0  # no distance to a subject is shorter, and no ring longer
_SHORTEST_LENS: Final = 8.0  # mm
_LONGEST_LENS: Final = 2000.0
_AT_HAND: Final = "ring-at-hand"


def with_length_of_pair(question: Question, right_mm: float) -> Question:
    """The question with such a length as that of its ring, and the whole length beside it as the lens's.

    `right_mm`: the seat that is right, lens register less body register.
    """
    rings = [one for one in question.adapters if one.piece == RING and not one.ids]
    if right_mm < _LEAST_MM or len(rings) != len(question.adapters) or len(rings) > 1:
        return question
    ring = rings[0] if rings else None
    if ring is not None and ring.thickness_mm is not None:
        question = _told_anew(question, ring.thickness_mm)
        return _as_it_came(_apart(question, ring, right_mm), right_mm)
    if number(question, _THICKNESS) is not None:
        return _out_of_thread(question, right_mm)
    if ring is None and not question.mentions("ring-word"):
        return question
    return _taken_back(question, right_mm)


def _is_near(told: float | None, right_mm: float) -> bool:
    return told is not None and abs(told - right_mm) <= max(_OFF_MM, _OFF * right_mm)


def _is_lens(told: float) -> bool:
    return told == int(told) and _SHORTEST_LENS <= told <= _LONGEST_LENS


def _taken_back(question: Question, right_mm: float) -> Question:
    """The length taken from the distance, the mark or the focal length that it was read as."""
    away, mark = question.distance_mm, number(question, _MARK)
    if len(numbers(question, _FLANGE)) == 1 and _is_near(number(question, _FLANGE), right_mm):
        return _with_thickness(question.without(_FLANGE), number(question, _FLANGE) or 0.0)  # 'faced to 23.1'
    if away is not None and away <= _FARTHEST_MM and _is_near(away, right_mm):
        return _with_thickness(question.with_(distance_mm=None), away)
    if mark is not None and _is_no_mark(mark / MM_PER_METRE, question.text) and _is_near(mark / MM_PER_METRE, right_mm):
        return _with_thickness(question.without(_MARK), mark / MM_PER_METRE)
    lens = question.lens
    focal = lens.focal_length_mm if lens is not None else None
    if lens is not None and focal is None and len(question.lenses) == 1:
        return _of_two_left(question, lens, right_mm)
    if lens is None or focal is None or _is_lens(focal) or not _is_near(focal, right_mm):
        return question
    others = [one for one in question.lenses[1:] if one.focal_length_mm and not one.ids]
    left = [one for one in numbers(question, *UNCLAIMED) if _is_lens(one)]
    if len(question.lenses) == 2 and others:
        lens = replace(others[0], kind=lens.kind, ids=lens.ids)
        return _with_thickness(question.with_(lenses=(lens,)), focal)
    if len(question.lenses) == 1 and len(left) == 1:
        lens = replace(lens, focal_length_mm=left[0])
        return _with_thickness(question.without(*UNCLAIMED).with_(lenses=(lens,)), focal)
    return question


def _of_two_left(question: Question, lens: Thing, right_mm: float) -> Question:
    """'does 27.76 of ring still let my 28 ...': of two numbers left the one told finer is the ring's."""
    left = numbers(question, *UNCLAIMED)
    fine = [one for one in left if one != int(one) and _is_near(one, right_mm)]
    whole = [one for one in left if _is_lens(one)]
    if len(left) != len(fine) + len(whole) or len(fine) != 1 or len(whole) != 1:
        return question
    moved = question.without(*UNCLAIMED).with_(lenses=(replace(lens, focal_length_mm=whole[0]),))
    return _with_thickness(moved, fine[0])


def _is_no_mark(metres: float, text: str) -> bool:
    """Whether no scale bears such a number: past a few metres they are whole; nor is it told to be metres."""
    told = re.search(rf"(?<![\d.]){metres:g}0* ?(?:m(?!m)|ft|feet|')", text, re.IGNORECASE)
    return metres > _SHORTEST_LENS and metres != int(metres) and told is None


def _apart(question: Question, ring: Thing, right_mm: float) -> Question:
    """'my M42-E is 27.4, 28mm': the ring is what was measured, and the whole length behind it the lens."""
    told, length, lens = numbers(question, _THICKNESS), ring.thickness_mm, question.lens
    if lens is None or length is None or lens.focal_length_mm is not None or len(question.lenses) > 1:
        return question
    both = (told[0], length[0]) if len(told) == 1 and length[0] == length[1] else (0.0, 0.0)
    size, focal = both if both[0] != int(both[0]) else both[::-1]  # whichever is told finer is the ring's
    if size == int(size) or not _is_near(size, right_mm) or not _is_lens(focal):
        return question
    return question.with_(
        lenses=(replace(lens, focal_length_mm=focal),),
        adapters=(replace(ring, thickness_mm=(size, size)),),
        values=question.rest(_THICKNESS),
    )


def _told_anew(question: Question, length: tuple[float, float]) -> Question:
    """'what if the ring were 9.8': a length told before is no longer that of the ring."""
    old = number(question, _THICKNESS)
    anew = question.follows and old not in (None, length[0]) and f"{length[0]:g}" in question.text
    return question.without(_THICKNESS) if anew and f"{old:g}" not in question.text else question


def _as_it_came(question: Question, right_mm: float) -> Question:
    """'bought a 10.1 ring, came 10.4': of two that are nearly alike the ring is the one told of as it is."""
    ring, left = question.adapters[0], numbers(question, *UNCLAIMED)
    sold = ring.thickness_mm[0] if ring.thickness_mm is not None else 0.0
    if len(left) != 1 or left[0] == sold or not (_is_near(left[0], right_mm) and abs(left[0] - sold) <= _OFF_MM):
        return question
    first, second = (question.text.rfind(f"{one:g}") for one in (sold, left[0]))
    at_hand = any(first < one.at < second for one in question.places(_AT_HAND))
    if not at_hand:
        return question
    return question.without(*UNCLAIMED).with_(adapters=(replace(ring, thickness_mm=(left[0], left[0])),))


def _out_of_thread(question: Question, right_mm: float) -> Question:
    """'26.0 measured flange to flange, 28mm': the decimal is the ring's, and the whole length the lens's."""
    lens, told, wide = question.lens, numbers(question, _THICKNESS), number(question, _THREAD)
    if lens is None or lens.focal_length_mm is not None or len(question.lenses) > 1 or len(told) != 1:
        return question
    if wide is None or not _is_near(wide, right_mm) or not _is_lens(told[0]) or question.off_word:
        return question
    lens = replace(lens, focal_length_mm=told[0])
    return _with_thickness(question.without(_THICKNESS, _THREAD).with_(lenses=(lens,)), wide)


def _with_thickness(question: Question, told: float) -> Question:
    return question.with_(values=(*question.values, (_THICKNESS, f"{told:.6g} mm")))
