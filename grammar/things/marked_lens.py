"""Which number behind a ring is the lens on it, and no thickness: the one whose infinity has a place on a scale."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_OF_MARKS: Final = frozenset(["infinity-at", "past-infinity", "remark"])  # cues of places on a scale
_LEAST: Final = 12.0  # mm


def is_marked_lens(token: Token, told: frozenset[str]) -> bool:
    """'C to L ring: 50 mm reaches infinity at 7 m'. `told`: what the cues of the line tell."""
    if token.kind in ("FOCAL", "COMBO"):
        return True
    whole = token.is_mm and token.numbers[0] == int(token.numbers[0])
    return whole and token.numbers[0] >= _LEAST and bool(told & _OF_MARKS)
