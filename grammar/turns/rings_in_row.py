"""As many lengths as rings stand there, told in their order: 'mine measure 18.28 and 7.87', 'i get 1.05 and 9.9'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.questions import Question, Thing
from grammar.turns.answer_told import MEASURED_WITHIN_MM
from grammar.turns.standing_ring import length_of

_FINE: Final = re.compile(r"(?<![\w./-])(\d*\.\d+|\d+(?= ?mm\b))(?: ?mm)?(?![\w/])", re.IGNORECASE)
_NUMBER: Final = re.compile(r"(?<![\w./])\d+(?:\.\d+)?")
_OFF: Final = ("amiss-by-any", "thin-or-thick", "by-so-much-thinner", "by-so-much-thicker")


def in_row(got: Question, stood: tuple[Thing, ...], rings: list[int]) -> tuple[Thing, ...]:
    """All of them with their new lengths; none where the text tells more or fewer, or by how much they are off."""
    told = [float(one) for one in _FINE.findall(got.text)]
    if len(told) != len(rings) or len(_NUMBER.findall(got.text)) != len(told) or any(map(got.places, _OFF)):
        return ()
    known = [length_of(stood[n]) if stood[n].is_of_one_length else None for n in rings]
    for row in (told, told[::-1]):
        if all(one is None or abs(one - new) <= MEASURED_WITHIN_MM for one, new in zip(known, row, strict=True)):
            sized = dict(zip(rings, row, strict=True))
            return tuple(_sized(one, sized[n]) if n in sized else one for n, one in enumerate(stood))
    return ()


def _sized(piece: Thing, size: float) -> Thing:
    return replace(piece, kind="", ids=(), thickness_mm=(size, size))
