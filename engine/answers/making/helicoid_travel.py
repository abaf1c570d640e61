"""A helicoid told by one short length between a lens and a body: so far it moves, and shut it adds nothing."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.kinds import SEATED
from grammar.questions import Question, Thing
from grammar.readings.stuck_open import STAYS

_HELICOID: Final = "helicoid"
_LONGEST_MM: Final = 12.0  # that a ring with a helicoid in it moves; what is longer is how long the helicoid is


def with_travel(question: Question, right_mm: float) -> Question:
    """'35 mm M on E with the 6 mm helicoid adapter': settable from 0 to 6 mm, where there is room for a ring.

    `right_mm`: the seat that is right, lens register less body register.
    """
    pieces = question.adapters
    told = [n for n, one in enumerate(pieces) if _is_by_travel(one)]
    asked = question.intent in SEATED
    if len(told) != 1 or not asked or right_mm <= 0 or question.mentions("drawn-to"):
        return question
    held, most = pieces[told[0]], (pieces[told[0]].thickness_mm or (0.0, 0.0))[1]
    named = replace(held, thickness_mm=(0.0, most), words=f"0..{most:g} mm {_HELICOID}")
    return question.with_(adapters=(*pieces[: told[0]], named, *pieces[told[0] + 1 :]))


def _is_by_travel(piece: Thing) -> bool:
    length = piece.thickness_mm
    of_mounts = STAYS in piece.traits or piece.ids or piece.front or piece.rear
    alone = piece.piece == _HELICOID and length is not None and length[0] == length[1] and not of_mounts
    return alone and length is not None and 0 < length[1] <= _LONGEST_MM and ".." not in piece.words
