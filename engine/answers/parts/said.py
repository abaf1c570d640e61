"""The numbers that a question holds beside its things: by key, in mm or as they stand."""

from __future__ import annotations

import re
from typing import Final

from engine.base.interval import Interval
from engine.base.units import MM_PER_INCH
from grammar.questions import Question, Thing

_NUMBER: Final = re.compile(r"-?\d+(?:\.\d+)?(?:e[-+]\d+)?")  # as it is kept: 1e+09, 1.6e-08
COARSEST_MM: Final = 5.0  # of pitches; more is threads per inch
# keys under which a distance to the subject, or a mark of the scale, may have been read
DISTANCES: Final = ("mark", "distance", "close_focus", "length")
FAR_MM: Final = 250.0  # a length from here up is a distance, not a part of a lens or ring


def numbers(question: Question, *keys: str) -> tuple[float, ...]:
    """Every number said under these keys, in their order; lengths in mm."""
    out: list[float] = []
    for key in keys:
        out += [float(text) for text in _NUMBER.findall(question.said(key) or "")]
    return tuple(dict.fromkeys(out))


def each_at_hand(question: Question) -> tuple[float, ...]:
    """Every number of what is at hand, also two alike: of what there are several of."""
    return tuple(float(text) for text in _NUMBER.findall(question.said("at_hand") or ""))


def number(question: Question, *keys: str) -> float | None:
    """The first of them; a length in mm."""
    found = numbers(question, *keys)
    return found[0] if found else None


def interval(question: Question, *keys: str) -> Interval | None:
    """What was said under these keys as one interval: '11..12 mm' is a range, '11 mm' exact."""
    for key in keys:
        text = question.said(key)
        if text is None:
            continue
        found = [float(one) for one in re.findall(r"\d+(?:\.\d+)?", text)]
        if found:
            return Interval.between(found[0], found[-1]) if ".." in text else Interval.exact(found[0])
    return None


def distance_mm(question: Question) -> float | None:
    """A distance in front of the camera, wherever the reader has put it."""
    if question.distance_mm is not None:
        return question.distance_mm
    near = number(question, *DISTANCES)
    if near is not None:
        return near
    return next((one for one in numbers(question, "travel", "thickness", "extension") if one >= FAR_MM), None)


def lengths_of_pieces(question: Question) -> tuple[tuple[float, float], ...]:
    """Shortest and longest of each piece described by its length, in mm."""
    return tuple(thing.thickness_mm for thing in question.adapters if thing.thickness_mm is not None)


def focals(question: Question) -> tuple[float, ...]:
    """Every focal length of the lenses named, in mm."""
    return tuple(lens.focal_length_mm for lens in question.lenses if lens.focal_length_mm)


def stop(question: Question) -> float | None:
    """The f-number asked for, else that of the lens."""
    if question.f_number is not None:
        return question.f_number
    return next((lens.f_number for lens in question.lenses if lens.f_number is not None), None)


def mentions(question: Question, *keys: str) -> bool:
    """Whether the question as typed, or what still asks of the one before, holds a phrase that a key stands for."""
    return question.mentions(*keys)


def last_said(question: Question, key: str) -> int:
    """Where in the text the last phrase of the key begins; -1 where there is none."""
    return max((one.at for one in question.places(key)), default=-1)


def number_beside(question: Question, key: str) -> float | None:
    """The number within the first phrase of the key that holds one, as it is typed."""
    return next((one.number for one in question.places(key) if one.number is not None), None)


def is_led(told: float, key: str, question: Question) -> bool:
    """Whether a number stands behind a phrase of the key, with one word between at most."""
    behind = re.compile(rf" (?:\w+ )?{told:g}(?![\d.])")
    return any(behind.match(question.text, one.end) for one in question.places(key))


def named(things: tuple[Thing, ...], kind: str) -> tuple[str, ...]:
    """Ids of the things of a kind."""
    return tuple(dict.fromkeys(id_ for thing in things if thing.kind == kind for id_ in thing.ids))


def pitch_mm(question: Question) -> float | None:
    """The pitch of a thread as told: '0.75 mm', '32 tpi', '42 mm x 0.75'; None where none is."""
    thread = question.said("thread") or ""
    inches = thread.partition(" in-")[2]
    text = question.said("pitch") or thread.partition("x")[2] or (f"{inches} tpi" if inches else "")
    found = re.search(r"\d+(?:\.\d+)?", text)
    if found is None:
        return None
    value = float(found[0])
    if not value:
        return None  # no thread has a pitch of nought
    per_inch = "tpi" in text or (value > COARSEST_MM and "turn" not in text)
    return MM_PER_INCH / value if per_inch else value


def tells_limit(question: Question) -> bool:
    """Whether a distance is told at which a described lens ends."""
    limit = distance_mm(question)
    return limit is not None and limit >= FAR_MM and bool(focals(question)) and question.scale_pair is None
