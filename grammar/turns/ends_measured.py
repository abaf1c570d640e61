"""'the helicoid is 16.4 closed', 'shut it measures 16.8': an end of what is drawn out, measured after it was told."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.things.casting import DRAWN

_SHUT: Final = "drawn-shut"  # cues
_OPEN: Final = "drawn-out"
_LENGTHS: Final = frozenset(["NUMBER", "FOCAL", "LENGTH", "KEYED", "TAIL"])
_NUMBER: Final = re.compile(r"\d+(?:\.\d+)?")
_NEAR: Final = 0.25  # so far, of itself, may an end be from what it was told to be


def ends_measured(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """The pieces of before with that end as it was measured; None where it is no end of one of them."""
    shut, open_ = heard.tells(_SHUT), heard.tells(_OPEN)
    at = next((n for n, one in enumerate(before.adapters) if _is_drawn(one)), None)
    if at is None or shut == open_ or heard.cast.bodies or len(heard.cast.pieces) > 1:
        return None
    piece = before.adapters[at]
    low, high = piece.thickness_mm or (0.0, 0.0)
    told = low if shut else high
    near = [length for length in _lengths(heard) if abs(length - told) <= _NEAR * told]
    # 'and fully out at 31' of one of 17 to 31 mm: set to that end, which stays
    if not near or near[0] == told or heard.readings.f_number is not None:
        return None
    ends = (near[0], high) if shut else (low, near[0])
    if ends[0] >= ends[1]:
        return None
    changed = replace(piece, thickness_mm=ends, kind="", ids=(), words=f"{ends[0]:g}..{ends[1]:g} mm {piece.piece}")
    return (*before.adapters[:at], changed, *before.adapters[at + 1 :])


def _is_drawn(piece: Thing) -> bool:
    return piece.piece in DRAWN and piece.thickness_mm is not None and piece.thickness_mm[0] < piece.thickness_mm[1]


def _lengths(heard: Heard) -> list[float]:
    tokens = [one for one in heard.shape.tokens if one.kind in _LENGTHS and one.unit in ("", "mm")]
    lengths = [one.numbers[0] for one in tokens if one.numbers and not one.text.isalpha()]
    return lengths + [float(one) for one in _NUMBER.findall(heard.readings.values.get("thickness", ""))]
