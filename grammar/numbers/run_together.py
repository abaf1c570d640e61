"""Lengths of several pieces written without anything between: 'with 10 mm 16 mm and 21 mm tubes'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.tokens import Token

_OF_LENS: Final = frozenset(["NAMED", "LENS", "FOCAL", "COMBO", "FNUM"])  # what shows that the lens is told elsewhere


def with_joins_between(tokens: list[Token]) -> list[Token]:
    """A join between each two of them, where a lens is told beside; else the first may be that of the lens."""
    out = list(tokens)
    for piece in range(len(out) - 1, -1, -1):
        several = out[piece].text.casefold().endswith("s")
        if (out[piece].kind, out[piece].value) != ("PIECE", SPACER) or not several:
            continue
        first = piece
        while first and (_is_length(out[first - 1]) or out[first - 1].kind in ("JOIN", "MOUNT")):
            first -= 1
        if not any(one.kind in _OF_LENS for one in out[:first]):
            continue
        for at in range(piece - 1, first, -1):
            if _is_length(out[at]) and _is_length(out[at - 1]):
                out.insert(at, Token("JOIN", ",", out[at].column, ","))
    return out


def _is_length(token: Token) -> bool:
    return token.is_mm
