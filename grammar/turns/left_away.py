"""What a follow-up leaves away of the turn before, or puts in its place: 'skip the OM', 'no filter', 'ND4 instead'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import CHAIN, COMPARE, DRAW, MACRO_DISTANCE, SHIM_CALIBRATION, WHY
from grammar.questions import MODE, RING, Limits, Question, Thing
from grammar.things.casting import OPTICAL, SPACER
from grammar.turns.on_what import is_mode, reads_a_part
from grammar.turns.taking_back import EXTENSION, OFF_AGAIN
from grammar.turns.whom import fits

_INSTEAD: Final = "instead"  # the cue of what stands in a thing's place
_BARE: Final = "no-filter"  # and of a lens with nothing before it
_FACTOR: Final = "factor"  # the key under which filters are told
_HELD_BACK: Final = frozenset([_FACTOR, "stops", "variable"])
_FILTER: Final = "filter"
_PLATE: Final = "glass"  # and under which a plate of glass is
_PAIR: Final = 2
_LISTED: Final = frozenset([CHAIN, COMPARE, DRAW, WHY])  # kinds that a number picks a way for
_WITHOUT: Final = "without"
_BY_LENGTH: Final = re.compile(r"^\W*(?:an? |the |my )?\d+(?:\.\d+)? ?mm (?:ring|spacer|extension)", re.IGNORECASE)
_WITHOUT_IT: Final = re.compile(r"(?:(?:and|so|now|ok) )?without (?:it|that)\W*", re.IGNORECASE)
_GLASS_SAID: Final = re.compile(r"\b(?:filter|glass|plate|window)\b", re.IGNORECASE)
_CROP: Final = "crop"
_PIXELS: Final = "pixels"


def with_filters_swapped(heard: Heard, said: Question, before: Question) -> Question:
    """The filters of before with the second of two in the place of the first."""
    old, new = _marks(before), _marks(said)
    if not heard.tells(_INSTEAD) or len(new) != _PAIR or new[0] not in old:
        return said
    left = [new[1] if one == new[0] else one for one in old]
    rest = said.rest(_FACTOR)
    return said.with_(values=(*rest, (_FACTOR, ", ".join(left))))


def _marks(question: Question) -> list[str]:
    return [one for one in (question.said(_FACTOR) or "").split(", ") if one]


def without_filters(heard: Heard, said: Question, before: Question) -> tuple[Question, Question]:
    """What is said, and the question before it, without the filters where there are to be none."""
    told = before.said(_FACTOR) is not None or before.said(_PLATE) is not None
    left = told and (_FILTER in said.limits.without or _is_the_plate(heard, before))  # 'without the filters'
    if not heard.tells(_BARE) and not left:
        return said, before
    kept = before.rest(*_HELD_BACK, _PLATE)
    pieces = tuple(one for one in before.adapters if one.piece != _FILTER)
    now = said.with_(
        adapters=tuple(one for one in said.adapters if one.piece != _FILTER),
        limits=replace(said.limits, without=tuple(one for one in said.limits.without if one != _FILTER)),
    )
    return now, before.with_(values=kept, adapters=pieces)


def _is_the_plate(heard: Heard, before: Question) -> bool:
    """'without it' after a ring and then a filter behind the lens: that was told last."""
    last = before.text[max((one.column for one in before.adapters), default=0) :]
    return _GLASS_SAID.search(last) is not None and _WITHOUT_IT.fullmatch(heard.text.strip()) is not None


def without_pieces(heard: Heard, said: Question, before: Question) -> tuple[Question, Question]:
    """'remove the tube, hyperfocal at f/8?': what is said without the pieces it takes off, and before without them."""
    before = _uncropped(heard, said, before)
    glazed = said.limits.without_glass and not any(one.piece in OPTICAL for one in said.adapters)
    if glazed and any(one.piece in OPTICAL for one in before.adapters):  # 'glass away' after a reducer
        before = before.with_(adapters=tuple(one for one in before.adapters if one.piece not in OPTICAL))
    kinds = {one.piece for one in said.adapters}
    bare = all(
        one in before.adapters or (one.thickness_mm is None and one.factor is None and not one.front)
        for one in said.adapters
    )
    drawn = SPACER in kinds and before.said(EXTENSION) is not None
    if not heard.tells(OFF_AGAIN) or not bare or not (drawn or any(one.piece in kinds for one in before.adapters)):
        return said, before
    kept = tuple(one for one in before.adapters if one.piece not in kinds)
    values = tuple(row for row in before.values if not (drawn and row[0] == EXTENSION))
    return said.with_(adapters=()), before.with_(adapters=kept, values=values)


def _uncropped(heard: Heard, said: Question, before: Question) -> Question:
    """The question before without the crop that is left away, and without the pixels of another sensor."""
    whole = heard.tells("uncropped") and said.said(_CROP) is None
    left = {_CROP, MODE} if whole else set()
    left |= {_PIXELS} if _is_another_sensor(heard, before) else set()
    left |= {_CROP} if is_mode(heard) and ":" not in (before.said(_CROP) or "") else set()
    if not left:
        return before
    mode = before.said(MODE) if whole else None  # the frame that was told as a mode is read out no more
    things = tuple(one for one in before.things if mode is None or one.id != mode)
    return before.without(*left).with_(things=things)


def _is_another_sensor(heard: Heard, before: Question) -> bool:
    """'and on APS-C' after the pixels of an MFT body: those are not of that one; a mode is of the same sensor."""
    frames = any(part.formats for part in heard.cast.frames)
    bodies = any(part.has_mount or part.formats for part in heard.cast.bodies)
    return (frames or bodies) and bool(before.bodies or before.frames) and not reads_a_part(heard)


def lenses_left(heard: Heard, said: Question, before: Question) -> tuple[Question, tuple[Thing, ...]]:
    """'skip the OM' after three lenses: the others; none where no one of several lenses is left out."""
    pool = before.lenses if len(before.lenses) > 1 else before.known
    parted = [part for part in heard.cast.lenses if part.noun.role == _WITHOUT]
    gone = [lens for lens in pool if any(fits(part, lens) for part in parted)]
    if parted and gone and len(said.lenses) == len(heard.cast.lenses) == len(parted):
        said = said.with_(lenses=())  # 'drop the 28, what changes', 'without the K one'
    out = set(said.limits.without)
    left = tuple(lens for lens in pool if lens not in gone and not out & set(lens.ids))
    if said.lenses or not left or len(left) == len(pool):
        return said, ()
    ids = {id_ for lens in pool if lens not in left for id_ in lens.ids}
    limits = replace(said.limits, without=tuple(one for one in said.limits.without if one not in ids))
    return said.with_(limits=limits), left


def leaves_the_ring(heard: Heard, before: Question) -> bool:
    """'and if I leave the 5 out' after a lens on a body drawn closer: what it then still does."""
    seated = bool(before.bodies) and any(one.ids for one in before.lenses)
    return before.intent == MACRO_DISTANCE and seated and heard.readings.limits.get("without") == (RING,)


def keeps_rings(heard: Heard, before: Question) -> bool:
    """'without the filter' leaves the rings where they are, as the shim for one does that is left away."""
    filters = heard.readings.limits.get(_WITHOUT) == (_FILTER,)
    filters = filters or _is_the_plate(heard, before)
    return is_shim_left(before) or (filters and not any(one.piece == _FILTER for one in before.adapters))


def is_shim_left(before: Question) -> bool:
    """'where is infinity without it' after the shim for a ring: the shim is left away, and the ring stays."""
    rings = bool(before.adapters) and all(one.piece == RING and one.thickness_mm for one in before.adapters)
    return before.intent == SHIM_CALIBRATION and before.mentions("shim") and rings


def bodies_left(said: Question, before: Question) -> tuple[Question, tuple[Thing, ...]]:
    """'without the Z' after two bodies: the other; 'the view on the second' after two set apart: that one."""
    counted = said.number if before.intent == COMPARE and said.intent not in _LISTED else None
    if counted is not None and not said.bodies and 1 <= counted <= len(before.bodies) > 1:
        return said.with_(number=None), (before.bodies[counted - 1],)
    out = set(said.limits.without)
    left = tuple(body for body in before.bodies if not out & set(body.ids))
    if said.bodies or not left or len(left) == len(before.bodies):
        return said, ()
    gone = {id_ for body in before.bodies if body not in left for id_ in body.ids}
    limits = replace(said.limits, without=tuple(one for one in said.limits.without if one not in gone))
    return said.with_(limits=limits), left


def limits_left(limits: Limits, before: Question, without: bool) -> Limits:
    """'without' after a ring that was named: that ring is not to be used, nor another in its place."""
    named = tuple(id_ for piece in before.adapters for id_ in piece.ids[:1]) if without else ()
    bare = bool(named) and len(named) == len(before.adapters) and limits.pieces is None
    bare = bare and not any(_BY_LENGTH.search(piece.words) for piece in before.adapters)  # a spacer leads to no body
    return replace(limits, without=tuple(dict.fromkeys((*limits.without, *named))), pieces=0 if bare else limits.pieces)
