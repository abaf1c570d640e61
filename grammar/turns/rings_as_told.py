"""How long a ring is that is told by a bare number: sunk by '-0.3', flat with '0 thick', several that are stacked."""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Final

from engine.base.compact import replace
from engine.base.units import MM_PER_METRE
from grammar.kinds import BY_SEAT, FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import OFF, OFF_KEY, RING, Question, Thing
from grammar.readings.bench_work import work_of
from grammar.things.casting import DRAWN, SPACER
from grammar.turns.standing_ring import CUP, are_named, is_same_body, length_of
from grammar.turns.way_asked import with_way_held
from grammar.words.grouping import Groups
from grammar.words.groups import ARTICLE
from grammar.words.wordlist import WordList

_SEATED: Final = BY_SEAT | {SHIM_CALIBRATION}
_DEPTH: Final = "depth"
_SUNK: Final = re.compile(r"-\d*\.?\d+(?: mm)?")
_OFF_BY: Final = "amiss-somehow"
_BELOW: Final = re.compile(r"(?<![^\s(:=])-\d*\.?\d+(?![\w%])")  # a number below 0, written by itself
_FLAT: Final = re.compile(r"0(?:\.0+)?(?: mm)?")
_AHEAD: Final = re.compile(r"(\d+\.\d+)(?: ?mm)? ")
_FINE: Final = re.compile(r"(?<![\w.])(\d*\.\d+)(?: ?mm)?(?![\w.]*\d)")  # a length, told finer than to a millimetre
_ROW: Final = re.compile(r"\d*\.?\d+(?: mm)?(?:, \d*\.?\d+(?: mm)?)+")
_RINGS: Final = "several-rings"
_NOW_SO: Final = "now-so"
_SIGNED: Final = re.compile(r"(?<![\w./])-?\d*\.\d+(?![\w.]*\d)")
_REWORKED: Final = 1.0  # mm; by so much a seat that was worked on differs from what it was
_FIRST: Final = re.compile(r"(\d+(?:\.\d+)?) mm")
_OF_SCALE: Final = "of-what-is-far"
_CHOICE: Final = ("ring_choice", "readings")  # keys under which several lengths are told of one ring, or to choose from
_OR: Final = "one-or-other"
_ALIKE: Final = 0.8  # of two rings that are longer than this share of one another only one stands there
_PAIR: Final = "pair-of-rings"
_OVER: Final = "pair-over"
_UNDER: Final = "pair-under"
_MOST_ERROR: Final = 2.0  # mm; a pair of rings that measures more is so long
_PART: Final = "of-one-of-them"


def with_rings_as_told(got: Question, before: Question | None, words: WordList) -> Question:
    """The question with the length of its ring, where a bare number tells it; of two plain ones in a row the sum."""
    if got.intent not in _SEATED or len(got.lenses) > 1 or len(got.bodies) > 1:
        return got
    again = _reworked(got, before, words)
    if again is not None:
        return again
    pair = _as_pair(got, before, words.mentions)
    return pair if pair is not None else _stacked(_in_row(_sunk(_headed(_unmarked(got), words.groups))))


def _reworked(got: Question, before: Question | None, words: WordList) -> Question | None:
    """'filed it to -0.4', 'went too deep, 1.78' after a seat inside the body: how deep it lies now."""
    held = [one for one in before.adapters if one.is_of_one_length] if before is not None and got.follows else []
    if before is None or len(held) != 1 or held[0] not in before.adapters or not got.places(_NOW_SO):
        return None
    cup, was = held[0].piece == CUP, length_of(held[0])
    told = [float(one) for one in _SIGNED.findall(got.text)]
    sunk = (cup or was <= 0) and len(told) == 1 and told[0] != got.f_number
    size = abs(told[0]) if cup and told else told[0] if told else 0.0
    new = (cup and size > 0) or size < 0
    if not (sunk and new) or abs(size - was) > _REWORKED or not is_same_body(got, before):
        return None
    if not work_of(got, words).is_none:
        return None
    piece = replace(held[0], words=f"{size:g} mm {'cup' if cup else 'ring'}", thickness_mm=(size, size))
    rest = got.rest("numbers", _DEPTH, "thickness", "length", "thread", OFF)
    return got.with_(adapters=(piece,), lenses=got.lenses if are_named(got.lenses) else before.lenses, values=rest)


def _unmarked(got: Question) -> Question:
    """'the tube on it 12.1. infinity?': before anything is said of infinity it is how long that piece is, no mark."""
    told = _FIRST.match(got.said("mark") or "")
    open_ = [one for one in got.adapters if one.piece in (RING, CUP, SPACER) and one.thickness_mm is None]
    if told is None or len(open_) != 1 or open_[0].factor is not None:
        return got
    size = float(told[1]) / MM_PER_METRE
    ahead, found, _ = got.text.casefold().partition(f"{size:g}")
    if not found or size == int(size) or any(one.at < len(ahead) for one in got.places(_OF_SCALE)):
        return got
    sized = replace(open_[0], ids=(), thickness_mm=(size, size))
    return got.with_(adapters=tuple(sized if one is open_[0] else one for one in got.adapters), values=got.rest("mark"))


def _headed(got: Question, groups: Groups) -> Question:
    """'a 9.9 m-e': the length before the two mounts of a ring; '1.65 deep cup': how deep a cup is."""
    pieces = tuple(_with_length(one, got, groups) for one in got.adapters)
    named, bare = [one for one in pieces if one.front and one.rear and one.piece == RING], got.said("numbers") or ""
    left = [one for one in named if one.thickness_mm is None]
    if pieces != got.adapters and len(left) == 1 and _FINE.fullmatch(bare):
        size = float(bare)
        pieces = tuple(replace(one, thickness_mm=(size, size)) if one is left[0] else one for one in pieces)
        got = got.without("numbers")
    cup = any(one.piece == CUP and one.thickness_mm is not None for one in pieces)
    if cup:
        pieces = tuple(one for one in pieces if one.piece != RING or one.thickness_mm is not None or one.front)
    return got if pieces == got.adapters else got.with_(adapters=pieces, values=got.rest(*((_DEPTH,) if cup else ())))


def _with_length(piece: Thing, got: Question, groups: Groups) -> Thing:
    words = groups.behind(ARTICLE, piece.words.casefold())
    ahead = _AHEAD.match(words) if piece.front and piece.rear else None
    deep = _FINE.match(got.said(_DEPTH) or "") if piece.piece == CUP else None
    told = ahead or deep
    if told is None or piece.thickness_mm is not None or piece.factor is not None or piece.piece not in (RING, CUP):
        return piece
    return replace(piece, thickness_mm=(float(told[1]), float(told[1])))


def _sunk(got: Question) -> Question:
    """'C to E, ring -0.3': so far inside the body's flange; 'a flat disc, 0 thick': level with it."""
    rings = [one for one in got.adapters if one.piece == RING]
    if len(rings) != 1 or rings[0].thickness_mm is not None or rings[0].factor is not None:
        return got
    numbers, thick = got.said("numbers") or "", got.said("thickness") or ""
    flat = _FLAT.fullmatch(thick) is not None and not got.places(_OFF_BY)
    below = _BELOW.findall(got.text)
    bare = numbers == "" or _SUNK.fullmatch(numbers) is not None
    if not (flat or (bare and len(below) == 1 and "." in below[0])):
        return got
    told = 0.0 if flat else float(below[0])
    ring = replace(rings[0], ids=(), thickness_mm=(told, told), words=f"{told:g} mm ring")
    pieces = tuple(ring if one is rings[0] else one for one in got.adapters)
    if not flat:
        return got.with_(adapters=pieces, values=got.rest("numbers"))
    heard = tuple(one for one in got.mentioned if not one.key.startswith(OFF_KEY))
    return got.with_(adapters=pieces, values=got.rest("thickness", OFF), mentioned=heard)


def _in_row(got: Question) -> Question:
    """'two rings, 1.02 and 9.75': a ring of each length, where the lengths stand beside the word for them."""
    told, open_ = got.said("numbers") or "", [one for one in got.adapters if one.piece == RING]
    if len(open_) != 1 or not _ROW.fullmatch(told) or not got.places(_RINGS):
        return got
    lengths = [float(one.split(" ")[0]) for one in told.split(", ")]
    plain = open_[0].thickness_mm is None and not (open_[0].front or open_[0].ids)
    fine = any("." in one for one in told.split(", ")) and all(one > 0 for one in lengths)
    if not plain or not fine or got.lens is None or got.lens.focal_length_mm is None:
        return got
    rings = tuple(replace(open_[0], thickness_mm=(one, one), words=f"{one:g} mm ring") for one in lengths)
    rest = tuple(one for one in got.adapters if one is not open_[0])
    return got.with_(adapters=(*rest, *rings), values=got.rest("numbers"))


def _stacked(got: Question) -> Question:
    """'rings 1.06 and 9.82' between a lens and a body: the shorter ones stand as tubes on the longest."""
    plain = [one for one in got.adapters if _is_plain(one)]
    others = [one for one in got.adapters if one.piece == RING and one.thickness_mm is not None and one not in plain]
    pair = any(one.ids for one in got.lenses) and any(one.ids for one in got.bodies)
    asked = bool(got.places(_OR)) or any(got.said(key) is not None for key in _CHOICE)
    if len(plain) < 2 or others or not pair or asked:
        return got
    plain.sort(key=length_of)
    if length_of(plain[-2]) > _ALIKE * length_of(plain[-1]):
        return got
    tubes = {id(one): replace(one, piece=SPACER, words=f"{length_of(one):g} mm tube") for one in plain[:-1]}
    return got.with_(adapters=tuple(tubes.get(id(one), one) for one in got.adapters))


def _is_plain(piece: Thing) -> bool:
    ends = piece.front or piece.rear or piece.ids or piece.factor is not None
    return piece.piece == RING and piece.is_of_one_length and not ends and length_of(piece) > 0


def _as_pair(got: Question, before: Question | None, phrases: Mapping[str, tuple[str, ...]]) -> Question | None:
    """'the pair of rings is 0.08 over', 'the rings add up to 10.9': by how much both are off, or how long they are."""
    told = {float(one) for one in _FINE.findall(got.text)} - {one.f_number for one in got.lenses} - {got.f_number}
    before = before if before is not None and got.follows else None
    lenses = got.lenses if before is None or are_named(got.lenses) else before.lenses
    bodies = got.bodies if before is None or are_named(got.bodies) else before.bodies
    drawn = any(one.piece in DRAWN and not one.is_of_one_length for one in got.adapters)  # the rings stand beside that
    if (
        drawn
        or not got.places(_PAIR)
        or got.places(_PART)
        or len(told) != 1
        or not (are_named(lenses) and are_named(bodies))
    ):
        return None
    size = told.pop()
    over, under = bool(got.places(_OVER)), bool(got.places(_UNDER))
    rest = got.rest("numbers", "total", "thickness", "length", OFF, "nominal", "field", "thread")
    asked = FOCUS_VERDICT if got.intent not in _SEATED else got.intent
    got = got.with_(intent=asked, lenses=lenses, bodies=bodies, number=None)
    if size > _MOST_ERROR:
        ring = Thing(words=f"{size:g} mm ring", piece=RING, thickness_mm=(size, size))
        return got.with_(adapters=(ring,), values=rest)
    if over == under or not size:
        return None
    way = "too far out" if over else "too close"
    values = (*rest, ("thickness", f"{size:g} mm"), (OFF, way))
    return with_way_held(got.with_(adapters=(Thing(words="rings", piece=RING),), values=values), way, phrases)
