"""What is asked of a ring that was told before, in words that lead elsewhere: where infinity falls on the scale."""

from __future__ import annotations

import re
from typing import Final

from engine.base.units import MM_PER_METRE
from grammar.kinds import COMPARE, DEFINITION, FOCUS_VERDICT, SEATED, SHIM_CALIBRATION, WHY
from grammar.questions import BODY_REGISTER, OFF, RING, Question, Thing
from grammar.turns.standing_ring import CUP, are_named, is_other_body

_SCALE: Final = "where-on-scale"
_EARLY: Final = "infinity-before-stop"
_WAY: Final = "thicker-or-thinner"
_SEAT: Final = SEATED | {SHIM_CALIBRATION, WHY}
_ELSEWHERE: Final = SEATED | {SHIM_CALIBRATION, WHY, DEFINITION, COMPARE}
_SIZED: Final = (RING, CUP)
_AT: Final = "flange-at-number"
_FOR: Final = "for-the-number"
_LED: Final = "led-number"
_REGISTERS: Final = (10.0, 80.0)  # mm, of bodies


def with_ring_asked_of(got: Question, before: Question) -> Question:
    """'by how much on the scale for the 105', 'thinner or thicker', 'same for an RF body at 20.0' after a ring."""
    got = _with_body_measured(got)
    told = any(one.piece in _SIZED and one.thickness_mm is not None for one in before.adapters)
    told = (
        told or before.said(OFF) is not None or (before.said("thickness") is not None and before.off_word is not None)
    )
    if not got.follows or before.intent not in _SEAT or not told:
        return got
    lens = _meant(got, before)
    if lens is not None:
        got = got.with_(lenses=(lens,), values=got.rest("mark", "numbers"), distance_mm=before.distance_mm)
    if got.intent not in _ELSEWHERE or is_other_body(got, before):
        return got
    scale, way = got.places(_SCALE) and got.said("mark") is None, got.places(_WAY)
    if not (scale or way or got.places(_EARLY)):
        return got
    same = got.adapters if any(one.thickness_mm is not None for one in got.adapters) else before.adapters
    return got.with_(
        intent=SHIM_CALIBRATION if scale or way else FOCUS_VERDICT, topic=None, things=(), number=None,
        lenses=got.lenses if lens is not None or are_named(got.lenses) else before.lenses,
        bodies=got.bodies or before.bodies, adapters=same,
        values=tuple({**dict(_errors(before)), **dict(got.values)}.items()),
    )  # fmt: skip


def _errors(before: Question) -> tuple[tuple[str, str], ...]:
    return tuple(row for row in before.values if row[0] in ("thickness", OFF, BODY_REGISTER))


def _meant(got: Question, before: Question) -> Thing | None:
    """A lens of the talk whose focal length was taken for a mark: 'on the scale for the 105'."""
    told = re.match(r"(\d+(?:\.\d+)?) mm", got.said("mark") or "")
    away = got.distance_mm if got.distance_mm != before.distance_mm else None
    size = float(told[1]) if told is not None and got.said("mark") != before.said("mark") else away
    known, named = (*before.known, *before.lenses), next(iter(got.places(_FOR)), None)
    if size is None and named is not None and got.places(_SCALE) and got.lenses == before.lenses:
        return next((one for one in known if one.focal_length_mm == named.number), None)
    if size is None:
        return None
    lens = next((one for one in known if one.focal_length_mm and one.focal_length_mm * MM_PER_METRE == size), None)
    return lens if any(one.number == size / MM_PER_METRE for one in got.places(_LED)) else None


def _with_body_measured(got: Question) -> Question:
    """'the body at 20.0': told finer than a stop is, and right behind the word, it is the register of that body."""
    finely = [one.number for one in got.places(_AT) if "." in got.text[one.at : one.end]]
    size = finely[0] if finely else None
    if size is None or got.f_number != size or not got.bodies or not _REGISTERS[0] <= size <= _REGISTERS[1]:
        return got
    return got.with_(f_number=None, values=(*got.rest(BODY_REGISTER), (BODY_REGISTER, f"{size:g} mm")))
