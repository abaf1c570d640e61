"""A second ring on top of the one that stands there: so much further out, and no other ring in its place."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.kinds import BUY_PLAN, FOCUS_VERDICT, MACRO_DISTANCE, SEATED, SHIM_CALIBRATION
from grammar.questions import RING, Question, Thing
from grammar.things.casting import SPACER
from grammar.turns.standing_ring import ASKS_CLOSE, ASKS_VERDICT, CUP, is_other_body, length_of

_ON_TOP: Final = "ring-on-top"
_SAME: Final = "same-again"  # one more of the ring that stands there
_PRICED: Final = "buys-one"
_TOP: Final = "beside-it"  # that it stands there as well
_ALIKE: Final = 0.15  # of what is longer or shorter by less than this share of it, only one ring stands there
_STANDING: Final = SEATED | {SHIM_CALIBRATION, MACRO_DISTANCE, BUY_PLAN}
_ANEW: Final = "sheet-anew"
_SIZES: Final = ("numbers", "length", "thickness", "thread", "layer")
_CLOSE_MM: Final = 2.0  # what sets a lens further out than this is for close-ups
_LONGEST: Final = 60.0  # mm
_MM: Final = re.compile(r"(?<![\w./-])(\d*\.?\d+) ?mm\b")
_FINE: Final = re.compile(r"(?<![\w./-])(\d*\.\d+)(?![\w.])")


def with_ring_on_top(got: Question, before: Question) -> Question:
    """'and put a 2nd 5 mm ring on top' after a lens on its ring: both stand there, and no second way is meant."""
    if not got.follows or before.intent not in _STANDING or not before.lenses or not before.bodies:
        return got
    stood = before.adapters
    if not stood or not got.places(_ON_TOP) or is_other_body(got, before):
        return got.with_(intent=FOCUS_VERDICT, number=None) if _is_measured(got, before) else got
    length = _told(got) or (_one_length(stood[-1]) if got.places(_SAME) else None)
    if length is None or not 0 < length <= _LONGEST:
        return got
    if got.adapters[: len(stood)] == stood and len(got.adapters) > len(stood):
        return got.with_(number=None)
    joins = next((one for one in got.adapters if one.piece == RING and one.front and one.rear), None)
    if joins is not None and joins.front != joins.rear:  # 'a 2nd F-Z ring here is 30.44': between the two mounts
        ring = replace(joins, words=f"{length:g} mm ring", thickness_mm=(length, length))
        return got.with_(intent=FOCUS_VERDICT, adapters=(ring,), number=None, values=got.rest(*_SIZES))
    old = _one_length(stood[-1]) if len(stood) == 1 and stood[0].piece == RING else None
    if old and abs(length - old) <= _ALIKE * old and not got.places(_SAME) and not got.places(_TOP):
        ring = replace(stood[0], ids=(), words=f"{length:g} mm ring", thickness_mm=(length, length))
        return got.with_(intent=FOCUS_VERDICT, adapters=(ring,), number=None, values=got.rest(*_SIZES))
    tube = Thing(words=f"{length:g} mm tube", piece=SPACER, thickness_mm=(length, length))
    close = bool(got.places(ASKS_CLOSE)) or (length > _CLOSE_MM and not got.places(ASKS_VERDICT))
    return got.with_(
        intent=MACRO_DISTANCE if close else FOCUS_VERDICT, topic=None, lenses=_lenses(got, before, length),
        bodies=before.bodies, adapters=(*stood, tube), number=None,
        values=got.rest(*_SIZES),
    )  # fmt: skip


def with_ring_kept(got: Question, before: Question) -> Question:
    """'and with a 10 mm tube between', 'tube out' after a ring that was measured: that ring still seats the lens."""
    tubes = bool(got.adapters) and all(one.piece == SPACER for one in got.adapters)
    rings = tuple(one for one in before.adapters if one.piece in (RING, CUP) and one.is_of_one_length)
    placed = any(one.ids for one in before.lenses) and any(one.ids for one in before.bodies)
    asked = got.intent in _STANDING and before.intent in _STANDING - {BUY_PLAN}
    if not (got.follows and rings and placed and asked) or got.places(_ANEW) or is_other_body(got, before):
        return got
    if not got.adapters and got.limits.without == (SPACER,):  # 'take the tube out': the ring stays
        intent = FOCUS_VERDICT if got.places(ASKS_VERDICT) and not got.places(ASKS_CLOSE) else got.intent
        return got.with_(adapters=rings, limits=replace(got.limits, without=()), intent=intent)
    if not tubes:
        return got
    if [one.ids for one in got.lenses] != [one.ids for one in before.lenses] or got.limits.without:
        return got
    return got.with_(adapters=(*(one for one in rings if one not in got.adapters), *got.adapters))


def _told(got: Question) -> float | None:
    """The one length told: with its unit, else the one that is told finer than a stop."""
    text = got.text.casefold()
    sizes = [float(one) for one in _MM.findall(text)]
    focals = {one.focal_length_mm for one in got.lenses}
    sizes = [one for one in sizes if one not in focals or len(sizes) == 1]
    fine = [float(one) for one in _FINE.findall(text)] if not sizes else []
    told = sizes or [one for one in fine if one not in {lens.f_number for lens in got.lenses}]
    return told[0] if len(told) == 1 else None


def _one_length(piece: Thing) -> float | None:
    return length_of(piece) if piece.is_of_one_length else None


def _lenses(got: Question, before: Question, length: float) -> tuple[Thing, ...]:
    misread = not got.lenses or any(one.focal_length_mm == length for one in got.lenses)
    return before.lenses if misread else got.lenses


def _is_measured(got: Question, before: Question) -> bool:
    """'another ring came, 32.04' after a lens on its ring: how that one seats it, and nothing that is to be bought."""
    ring = next((one for one in got.adapters if one.piece == RING and one.thickness_mm is not None), None)
    bought = got.intent != BUY_PLAN or before.intent == BUY_PLAN or got.places(_PRICED)
    return ring is not None and not bought and f"{length_of(ring):g}" in got.text
