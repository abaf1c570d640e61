"""Between which lengths a helicoid or bellows can be set."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.questions import Thing
from grammar.things.casting import DRAWN

RANGED: Final = frozenset(["helicoid", "bellows"])  # what is told by its shortest and longest length
_SPAN: Final = re.compile(r"(\d+(?:\.\d+)?) ?(?:mm)? ?(?:\.\.|-|–|to) ?(\d+(?:\.\d+)?)")


def span_of(piece: Thing) -> tuple[float, float] | None:
    """Between which lengths a helicoid or bellows can be set, mm, also where it is set to one now."""
    if piece.thickness_mm is not None and len(set(piece.thickness_mm)) > 1:
        return piece.thickness_mm
    if piece.piece not in DRAWN or piece.steps is not None:
        return None  # 'a 1 mm 39-42 ring', 'a 39-42 bush': those are its threads
    told = _SPAN.search(piece.words)
    return (float(told[1]), float(told[2])) if told and float(told[1]) < float(told[2]) else None


def drawn_whole(named: Thing, kept: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """The pieces with the one that is only named again as far as it goes in all; none where it is not told how far."""
    at = next((n for n, one in enumerate(kept) if one.piece == named.piece), None)
    span = span_of(kept[at]) if at is not None else None
    if at is None or span is None or span[0] == span[1]:
        return ()
    return (*kept[:at], replace(kept[at], thickness_mm=span), *kept[at + 1 :])


def swapped_for(told: Thing, kept: tuple[Thing, ...], at: int) -> tuple[Thing, ...]:
    """'would my 25-55 do instead' after a helicoid of 36 to 90 mm and a ring: it takes its place, the ring stays.

    `at`: where the one of its kind stands. None where it is told by no two lengths, as a setting is.
    """
    if told.thickness_mm is None or len(set(told.thickness_mm)) == 1 or len(kept) == 1:
        return ()
    return (*kept[:at], replace(told, front=told.front or kept[at].front), *kept[at + 1 :])


def set_in_place(said: tuple[Thing, ...], kept: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'all the way out at 55' after a helicoid of 25 to 55 mm, a tube and a ring: it is set so, and the others stay."""
    told = said[0] if len(said) == 1 else None
    ranged = [(n, span) for n, one in enumerate(kept) if one.piece in RANGED and (span := span_of(one)) is not None]
    if told is None or told.thickness_mm is None or len(ranged) != 1 or kept[ranged[0][0]].piece != told.piece:
        return ()
    at, (least, most) = ranged[0]
    if (other := swapped_for(told, kept, at)) or not least <= told.thickness_mm[0] <= most:
        return other
    put = replace(kept[at], thickness_mm=told.thickness_mm, words=f"{least:g}..{most:g} mm {told.piece}")
    return (*kept[:at], put, *kept[at + 1 :])
