"""A helicoid that stays so far out of its shortest: 'stuck 0.8 open', 'wont close the last 0.3', 'left 2 mm out'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.compact import replace
from grammar.questions import Question, Thing
from grammar.words.mentioned import Mention

HELICOID: Final = "helicoid"
STAYS: Final = "stays so"  # trait of a helicoid that is of one length, and cannot be set
_AWAY: Final = re.compile(r"\d ?(?:cm|m|metres?|meters?|ft|feet|')(?![a-z])")
_OPEN_BY: Final = "stays-open-by"  # phrases with how far
_MOST_MM: Final = 25.0
_SHORTEST_MM: Final = 1.5
_KEYS: Final = ("numbers", "thickness", "length", "extension", "travel")  # under which that may have been read


def with_stuck_helicoid(question: Question) -> Question:
    """The question with the helicoid as long as it stays: a ring of its mounts, and so much more between."""
    helicoids = [one for one in question.adapters if one.piece == HELICOID]
    places = (one for one in question.places(_OPEN_BY) if not _is_far(question.text, one))
    told = [one.number for one in places if one.number is not None and 0 < one.number <= _MOST_MM]
    if len(helicoids) != 1:
        return question
    (piece,) = helicoids
    by = told[0] if told else _as_short(piece)
    if by is None:
        return question
    pieces = tuple(part for one in question.adapters for part in (_parts(piece, by) if one is piece else (one,)))
    if pieces == question.adapters:
        return question
    values = tuple(row for row in question.values if not (row[0] in _KEYS and row[1].removesuffix(" mm") == f"{by:g}"))
    return question.with_(adapters=pieces, values=values)


def _is_far(text: str, place: Mention) -> bool:
    """'on a 90 that stops at 1 m': how near a lens comes, and no length of a helicoid."""
    return _AWAY.search(text[place.at : place.end + 1].casefold()) is not None


def _as_short(piece: Thing) -> float | None:
    """'an M to X helicoid that slips out half a mm': no helicoid between two mounts is as short as that."""
    low, high = piece.thickness_mm or (0.0, 0.0)
    return low if piece.front and piece.rear and 0 < low == high <= _SHORTEST_MM else None


def _parts(piece: Thing, by: float) -> tuple[Thing, ...]:
    low, high = piece.thickness_mm or (0.0, 0.0)
    if piece.front and piece.rear and high in (0.0, by):
        # on its own shortest it is the ring of these mounts
        ring = replace(piece, piece="adapter", thickness_mm=None)
        return replace(piece, ids=(), front=(), rear=(), thickness_mm=(by, by), traits=(STAYS,)), ring
    if low in (0.0, by) and high in (0.0, by):
        return (replace(piece, thickness_mm=(by, by), traits=(STAYS,)),)  # beside the ring that is told
    return (replace(piece, thickness_mm=(low + by, low + by), traits=(STAYS,)),) if by <= high - low else (piece,)
