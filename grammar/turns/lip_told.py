"""A lip found on a ring that was told to be flush: 'it has a 1 mm lip', 'not flush, 1 mm proud' -> so thick it is."""

from __future__ import annotations

import re
from typing import Final

from grammar.hearing import Heard
from grammar.questions import RING, Question, Thing

_LIP: Final = "spigot"  # key of how thick a lip was read to be
OF_RING: Final = ("thread", "thickness", "numbers", "layer", _LIP)  # keys under which the length of a ring may be read
_FLUSH: Final = "flush"
_MM: Final = re.compile(r"(\d*\.?\d+) mm\b.*")
_TOLD: Final = (_LIP, "thickness", "rear_reach", "length", "numbers")  # keys under which its length may be read
_THICKEST: Final = 6.0  # mm, of a lip


def lip_told(heard: Heard, before: Question) -> Thing | None:
    """The ring of before with the lip that it turns out to have; None where it was not flush, or no lip is told."""
    rings = [one for one in before.adapters if one.piece == RING]
    flush = _is_flush(before, rings[0]) if len(rings) == 1 else False
    values = heard.readings.values
    denied = _FLUSH in heard.text.casefold() and any(one.value == "not" for one in heard.line.tokens)
    keys = _TOLD if denied else (_LIP,)
    told = next((found for key in keys if (found := _MM.fullmatch(values.get(key, ""))) is not None), None)
    if not flush or told is None or heard.cast.lenses or heard.cast.bodies or not 0 < float(told[1]) <= _THICKEST:
        return None
    length = float(told[1])
    return Thing(words=f"{length:g} mm ring", thickness_mm=(length, length), piece=RING)


def _is_flush(before: Question, ring: Thing) -> bool:
    words = f"{ring.words} {' '.join(ring.ids)} {before.text} {before.asked}".casefold()
    return _FLUSH in words or ring.thickness_mm == (0.0, 0.0)
