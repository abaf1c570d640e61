"""What is to stand before a corrector, turn by turn: 'the ring is 11', 'a 2 mm filter too', 'i put 10, so?'."""

from __future__ import annotations

import re
from typing import Final, TypeAlias

from engine.base.compact import replace
from engine.base.spaced import Spaced
from grammar.kinds import COVERAGE, CROP_EQUIVALENT, DIY_DIMENSION, EXPOSURE_ND, HAZARD, IDENTIFY_MOUNT, LOOK_ALIKE, WHY
from grammar.questions import Question, Thing
from grammar.things.casting import OPTICAL
from grammar.words.grouping import Groups
from grammar.words.groups import PIECE_JOINED, TELLS_NO_PIECE

_WANTED: Final = "corrector-wants"  # key of the phrases that hold the distance
_ANEW: Final = "corrector-wants-anew"  # and of those that hold another in its place
_ASKED: Final = ("spacer-asked", "total-asked")
_PUT, _GONE, _RING = "spacer-chosen", "piece-gone", "t-ring"
_GLASS: Final = "glass"
_FILTER: Final = "filter-or-gel"
_LEAST_MM: Final = 5.0  # that any corrector stands before a sensor: 'a reducer 0.71' tells its factor
_SHORTEST: Final = 0.1
_THICKEST_GLASS: Final = 6.0  # mm, of a filter
_LEAST_SCOPE: Final = 60.0  # mm, of what stands before a corrector, and is no piece behind it
_LEAST_INCHES: Final = 4.0  # 'i put 25 in': more than any eyepiece is across
_LIKE: Final = 0.15  # by its share: what differs by less is the same piece, measured
_MOST: Final = 6  # pieces
_ASIDE: Final = frozenset([LOOK_ALIKE, COVERAGE, CROP_EQUIVALENT, IDENTIFY_MOUNT, EXPOSURE_ND])
_REASONS: Final = frozenset([WHY, HAZARD])
# a length as typed: no width of a thread, no stop, no factor, no size in inches
_LENGTH: Final = re.compile(
    r"(?<![\w./])(\d{1,3}(?:\.\d+)?)( ?in\b)?(?: ?mm\b)?(?!\w|\.\d|/| ?x\b| ?inch| ?\"| ?reducer| ?extender)",
    re.IGNORECASE,
)
_LEAST_ANEW: Final = 30.0  # mm, of one told by so little: 'needs 12 more' is a piece
_Told: TypeAlias = tuple[float, str]


def with_spaced(got: Question, before: Question | None, groups: Groups) -> Question:
    """The question with the stack before a corrector as it is told so far; as it was where none is."""
    wanted = max((one.number for one in got.places(_WANTED) if one.number is not None), default=None)
    held = before.spaced if before is not None and got.follows else None
    if wanted is not None and wanted >= _LEAST_MM:
        glass, rest = _glass_of(got, _lengths(got, wanted, groups))
        there = rest or (held.there if held is not None else _of_pieces(got, before))
        glass = glass or (held.glass if held is not None else 0.0)
        ring = bool(got.places(_RING)) or (held is not None and held.t_ring)
        spaced = Spaced(wanted, there[:_MOST], glass, t_ring=ring, first=len(there[:_MOST]))
        return got.with_(spaced=spaced, lenses=_without_wanted(got, wanted))
    if held is None or before is None:
        return got
    anew = [one.number for one in got.places(_ANEW) if (one.number or 0.0) >= _LEAST_ANEW]
    if anew and anew[0]:  # 'reducer instead, wants 62'
        held = replace(held, wanted=anew[0])
        got = got.with_(lenses=_without_wanted(got, held.wanted))
    now = _anew(got, before, held, groups)
    aside = got.intent in _ASIDE and (now.there, now.glass) != (held.there, held.glass)
    if aside:  # 'a 2 mm filter goes in too' asks of no picture and no thread
        asked = before.intent if before.intent not in _ASIDE else DIY_DIMENSION
        got = got.with_(intent=asked, lenses=before.lenses, bodies=before.bodies, things=before.things)
    return got.with_(spaced=now)


def _anew(got: Question, before: Question, held: Spaced, groups: Groups) -> Spaced:
    """The stack of before with what is told of it now."""
    if got.intent in _REASONS:
        return replace(held, asked=False)
    other_lens = got.lenses != before.lenses and any((one.focal_length_mm or 0) >= _LEAST_SCOPE for one in got.lenses)
    glass, rest = _glass_of(got, () if other_lens else _lengths(got, held.wanted, groups))
    there, chosen = held.there, bool(rest) and bool(got.places(_PUT))
    there = there[:-1] if held.chosen and chosen else there
    gone = bool(got.places(_GONE))
    for one in rest:
        there = tuple(row for row in there if row[0] != one[0]) if gone else _with(there, one, rest, groups)
    if gone and not rest:
        there = tuple(row for row in there if not _same(row[1], got.text, groups))
    asked = bool(rest or glass) or there != held.there or got.mentions(*_ASKED) or got.bodies != before.bodies
    asked = asked or (got.intent == before.intent and got.lenses == before.lenses)
    return replace(
        held, there=there[:_MOST], glass=glass or held.glass, chosen=chosen, asked=asked,
        t_ring=held.t_ring or bool(got.places(_RING)),
    )  # fmt: skip


def _lengths(got: Question, wanted: float, groups: Groups) -> tuple[_Told, ...]:
    """The lengths that the text tells, each with the clause it stands in."""
    factors = {one.factor for one in got.adapters if one.piece in OPTICAL}
    told = [
        (float(found[1]), clause)
        for clause in re.split(rf"[,;+]|\b{groups.one_of(PIECE_JOINED)}\b", got.text)
        for found in _LENGTH.finditer(clause)
        if not found[2] or float(found[1]) > _LEAST_INCHES
    ]
    return tuple(one for one in told if one[0] >= _SHORTEST and one[0] != wanted and one[0] not in factors)


def _glass_of(got: Question, lengths: tuple[_Told, ...]) -> tuple[float, tuple[_Told, ...]]:
    """How thick the filter is that is told, and the lengths without that."""
    thin = [one for one in lengths if one[0] <= _THICKEST_GLASS]
    if not thin or not (got.said(_GLASS) is not None or got.mentions(_FILTER)):
        return 0.0, lengths
    return thin[0][0], tuple(one for one in lengths if one is not thin[0])


def _of_pieces(got: Question, before: Question | None) -> tuple[_Told, ...]:
    """The rings that were measured before a corrector was told of."""
    pieces = got.adapters or (before.adapters if before is not None and got.follows else ())
    return tuple((one.thickness_mm[0], one.words) for one in pieces if one.thickness_mm and one.is_of_one_length)


def _with(there: tuple[_Told, ...], one: _Told, now: tuple[_Told, ...], groups: Groups) -> tuple[_Told, ...]:
    """One piece more, or, where one of that name or nearly as long stood there, that as it is measured."""
    stood = [at for at, old in enumerate(there) if old not in now]
    near = [at for at in stood if _same(there[at][1], one[1], groups)]
    alike = (
        at for at in stood if not (_names(there[at][1], groups) and _names(one[1], groups))
    )  # 'oag 16.5' is no 'camera 17.5'
    near = near or [at for at in alike if abs(there[at][0] - one[0]) <= _LIKE * there[at][0]]
    return (*there[: near[0]], one, *there[near[0] + 1 :]) if near else (*there, one)


def _same(clause: str, text: str, groups: Groups) -> bool:
    """Whether the text names what the clause tells of: 'lose the wheel' after 'wheel 20'."""
    return bool(_names(clause, groups) & _names(text, groups))


def _names(clause: str, groups: Groups) -> frozenset[str]:
    """The words of a clause that tell its piece apart."""
    words = re.findall(r"[a-z]{3,}", clause.casefold())
    return frozenset(word for word in words if TELLS_NO_PIECE not in groups.of(word))


def _without_wanted(got: Question, wanted: float) -> tuple[Thing, ...]:
    """The lenses as told: '55 mm from the M48' is no focal length."""
    return tuple(replace(one, focal_length_mm=None) if one.focal_length_mm == wanted else one for one in got.lenses)
