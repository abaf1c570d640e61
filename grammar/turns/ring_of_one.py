"""The ring of one of several lenses, told by its mount: 'the sr ring came at 25.62' after an SR and a K for E."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import BUY_PLAN, CHAIN, COMPARE, DIY_DIMENSION, FOCUS_VERDICT
from grammar.questions import RING, Question
from grammar.things.standins import stands_in
from grammar.words.tokens import Token

_PLACED: Final = frozenset([CHAIN, FOCUS_VERDICT, COMPARE, DIY_DIMENSION, BUY_PLAN])
_SIZED: Final = frozenset(["NUMBER", "LENGTH"])
_AMISS: Final = "ring-amiss-by"  # phrases that are mentioned
_RING_AND_SHIM: Final = "ring-and-shim"
_UNDER: Final = "under-it"
_NUMBER: Final = re.compile(r"\d*\.?\d+")
_SAME: Final = 0.001  # mm
_SHORTEST: Final = 0.5  # mm, of a ring
_ASKS: Final = ("price-q", "why", "cover", "how-close")


def ring_of_one(heard: Heard, before: Question) -> str | None:
    """What it measures, or by how much it is off, said of the ring for that lens; None where none of them is told."""
    several = len({one.ids[:1] for one in before.lenses if one.ids}) > 1 and len(before.bodies) == 1
    if before.intent not in _PLACED or not several or any(map(heard.tells, _ASKS)):
        return None
    mount = next((one for one, two in pairwise(heard.line.tokens) if _is_its_ring(one, two, before)), None)
    told = [one for one in heard.line.tokens if one.kind in _SIZED and not one.text.isalpha() and one.numbers]
    told = [one for one in told if one.unit in ("", "mm")]
    if mount is None or len(told) != 1 or heard.cast.bodies:
        return None
    off = next(iter(heard.places(_AMISS)), None)
    name = mount.text if mount.text.casefold().endswith("mount") else f"{mount.text}-mount"
    if off is not None:
        way = heard.text[: off.end].split()[-1]
        return f"the {name} lens with a ring {off.number:g} mm too {way}, infinity?"
    size = told[0].numbers[0]
    return f"the {name} lens with a {size:g} mm ring, infinity?" if size >= _SHORTEST else None


def ring_owned(heard: Heard, before: Question) -> str | None:
    """'have the EF one already, can I use it' after T2 on EF and then on RF: the ring for the body of before."""
    tokens = heard.line.tokens
    bodies = (*before.elsewhere, *(before.prior.bodies if before.prior is not None else ()))
    here = {id_ for one in (*before.bodies, *before.lenses) for id_ in one.ids[:1]}
    there = {id_ for one in bodies for id_ in one.ids[:1]} - here
    owned = before.intent in _PLACED and (
        heard.tells("own") or heard.tells("held") or heard.tells("get") or heard.tells("adding")
    )
    pair = next(((one, two) for one, two in pairwise(tokens) if there & set(one.ids) and stands_in(two)), None)
    if pair is None or not owned or heard.cast.pieces:
        return None
    two = pair[1]
    end = two.end or two.column - 1 + len(two.text)
    return f"{heard.text[: two.column - 1]}ring{heard.text[end:]}"


def _is_its_ring(one: Token, two: Token, before: Question) -> bool:
    """'sr ring', 'K one' of a lens spoken of."""
    ids = {id_ for lens in before.lenses for id_ in lens.ids[:1]}
    named = one.kind in ("MOUNT", "LETTER") and bool(ids & set(one.ids))
    return named and ((two.kind, two.value) == ("PIECE", RING) or stands_in(two))


def shimmed_ring(heard: Heard, before: Question) -> str | None:
    """Another ring with a shim under it, '27.6 plus a 0.15 shim' after one of 27.76: a ring as long as both."""
    both = _ring_and_shim(heard)
    ringed = any(one.piece == "adapter" and one.thickness_mm is not None for one in before.adapters)
    bare = not (heard.cast.bodies or heard.cast.frames or any(part.focal for part in heard.cast.lenses))
    if before.intent not in _PLACED or both is None or not (ringed and bare):
        return None
    return f"with a {sum(both):g} mm ring, infinity?" if both[0] > _SHORTEST else None


def is_shimmed_so(got: Question) -> bool:
    """Whether its ring is already as long as a ring and a shim that it tells both of."""
    both = _ring_and_shim(got)
    if both is None:
        return False
    return any(one.thickness_mm and abs(one.thickness_mm[0] - sum(both)) < _SAME for one in got.adapters)


def _ring_and_shim(told: Heard | Question) -> tuple[float, float] | None:
    """How long a ring is, and how thick the shim with it; None where more is told than that it lies there."""
    for place in told.places(_RING_AND_SHIM):
        ring, *_, shim = _NUMBER.findall(told.text[place.at : place.end])
        rest = told.text[place.end :].rstrip("?")
        under = any(one.at == place.end + 1 for one in told.places(_UNDER))
        factor = told.text[: place.end].endswith("x")  # '19.9 mm with 0.71x'
        if not ring.startswith(".") and "." in shim and float(shim) < 1 and not factor and (under or not rest):
            return float(ring), float(shim)
    return None
