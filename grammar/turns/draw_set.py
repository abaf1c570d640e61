"""How far a helicoid of no told range is drawn out now: 'pulled out 1 mm', 'all the way', 'closed again'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.kinds import BY_SEAT, DEPTH_OF_FIELD, FOCUS_VERDICT, MACRO_DISTANCE, SHIM_CALIBRATION
from grammar.questions import Question, Thing
from grammar.turns.spans import span_of
from grammar.turns.standing_ring import ASKS_CLOSE, ASKS_VERDICT

_HELICOID: Final = "helicoid"
_TRAVEL: Final = "travel"  # key of how far it is drawn out
_PULLED: Final = "draw-pulled"
_FULLY: Final = ("drawn-fully", "draw-all-out")
_SHUT: Final = ("shut-fully", "draw-shut")
_HALF: Final = "draw-half"
_RUN_OUT, _LENS_LEFT = "helicoid-run-out", "lens-left-at-infinity"
_FROM: Final = BY_SEAT | {SHIM_CALIBRATION, DEPTH_OF_FIELD}
_LONGEST: Final = 60.0  # mm
_LENGTHS: Final = ("extension", _TRAVEL, "numbers", "length", "thickness", "mark", "thread")
_IN_MM: Final = re.compile(r"(?<![\w./])(\d*\.?\d+) ?mm\b")
_FINE: Final = re.compile(r"\d*\.\d+")
_NUMBER: Final = re.compile(r"(?<![\w./])(\d*\.?\d+)(?: ?mm)?(?![\w.]*\d)")


def with_draw_set(got: Question, before: Question) -> Question:
    """The question with its helicoid drawn out so far, in place of how far it was before.

    How far it goes in all is kept in `drawn`, where that was told.
    """
    whole = _drawn_whole(got, before)
    if whole is not None:
        return whole
    most = before.drawn or _told_most(before)
    held = next((one for one in before.adapters if one.piece == _HELICOID and span_of(one) is None), None)
    goes_on = got.follows or _is_of_before(got, before)
    if held is None or not goes_on or before.intent not in _FROM or len(before.lenses) != 1:
        return got.with_(drawn=most if got.follows else None)
    pulled = [_last(got.text, one.at, one.end) for one in got.places(_PULLED)]
    told = next((one for one in pulled if one is not None and 0 < one <= _LONGEST), None)
    fully, shut = any(got.places(key) for key in _FULLY), any(got.places(key) for key in _SHUT)
    if fully and not shut:
        in_mm = _IN_MM.search(got.text)  # 'pulled out all the way, 4 mm'
        told = told or (float(in_mm[1]) if in_mm is not None else most)
    elif got.places(_HALF) and most:
        told = most / 2
    elif shut:
        told = None
    elif told is None:
        return got.with_(drawn=most)
    if shut and _FINE.search(got.text) is not None:
        return got.with_(drawn=most)  # 'it measures 9.86 closed'
    lens = _lens(got, before, told)
    asks = bool(got.places(ASKS_VERDICT)) and not got.places(ASKS_CLOSE)
    intent = FOCUS_VERDICT if asks or (shut and not got.places(ASKS_CLOSE)) else MACRO_DISTANCE
    values = got.rest(*_LENGTHS)
    values = (*values, (_TRAVEL, f"{told:g} mm")) if told is not None else values
    return got.with_(
        intent=intent, topic=None, follows=True, lenses=(lens,), bodies=before.bodies, adapters=before.adapters,
        values=values, number=None, drawn=told if fully and told else most,
    )  # fmt: skip


def _drawn_whole(got: Question, before: Question) -> Question | None:
    """'helicoid out but the lens on infinity' after one of 6 mm: no other piece, and so far out as it goes."""
    if not (got.places(_RUN_OUT) and got.places(_LENS_LEFT)) or before.intent not in BY_SEAT or not got.follows:
        return None
    (low, high), others = _helicoid_mm(before), any(one.focal_length_mm or one.ids for one in got.lenses)
    others = others and [one.ids for one in got.lenses] != [one.ids for one in before.lenses]
    if len(before.lenses) != 1 or others or not 0 < low == high or _FINE.search(got.text) is not None:
        return None
    return got.with_(
        intent=MACRO_DISTANCE, topic=None, lenses=before.lenses, bodies=before.bodies, adapters=before.adapters,
        limits=before.limits, values=before.values, distance_mm=before.distance_mm, number=None, drawn=before.drawn,
    )  # fmt: skip


def _helicoid_mm(question: Question) -> tuple[float, float]:
    """How long the one helicoid is, mm; nought where that is not told."""
    told = [one.thickness_mm for one in question.adapters if one.piece == _HELICOID]
    return (told[0] or (0.0, 0.0)) if len(told) == 1 else (0.0, 0.0)


def _told_most(before: Question) -> float | None:
    """'a helicoid with 4 mm travel': how far it goes in all, where nothing tells that it is drawn out so far."""
    told = _NUMBER.match(before.said(_TRAVEL) or "")
    return float(told[1]) if told is not None and not before.places(_PULLED) else None


def _is_of_before(got: Question, before: Question) -> bool:
    """'M to E helicoid pulled out 1 mm, how close with the 50': the helicoid and the body that were spoken of."""
    piece = any(one.piece == _HELICOID for one in got.adapters)
    body = [one.ids for one in got.bodies] in ([], [one.ids for one in before.bodies])
    focals = {one.focal_length_mm for one in (*before.known, *before.lenses)}
    lens = got.lens is None or got.lens.focal_length_mm in focals
    return piece and body and lens and len(got.lenses) < 2


def _last(text: str, at: int, end: int) -> float | None:
    told = [float(one[1]) for one in _NUMBER.finditer(text, at) if one.start() < end]
    return told[-1] if told else None


def _lens(got: Question, before: Question, told: float | None) -> Thing:
    """The lens of before, of another focal length where one is told that is no length of the helicoid."""
    now, old = got.lens, before.lenses[0]
    focal = now.focal_length_mm if now is not None else None
    if now is None or focal is None or focal == told or focal < 8:
        return old
    known = next((one for one in (*before.known, old) if one.focal_length_mm == focal and one.ids), None)
    same = known or replace(old, focal_length_mm=focal, f_number=now.f_number)
    return same if now.f_number is None else replace(same, f_number=now.f_number)
