"""A number that is part of a lens's own name: 'heron 61 50mm 2.8', 'heron-9 85mm f2'."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from grammar.words.tokens import Token

_DASH: Final = "-"
_MOST_DIGITS: Final = 3
_OF_LENS: Final = frozenset(["NUMBER", "FNUM", "MOUNT", "LENS", "LETTER", "PREP"])  # what may follow its focal length


def with_names_numbered(tokens: Sequence[Token]) -> list[Token]:
    """Without the number right behind an unknown word, where a focal length with its unit follows: it is no second."""
    out = list(tokens)
    for at in range(len(out) - 2, 0, -1):
        dashed = out[at - 1].text == _DASH and out[at - 1].kind == "MARK"
        start = at - 2 if dashed else at - 1
        named = start >= 0 and out[start].kind == "UNKNOWN"
        if named and _is_number(out[at]) and _is_focal(out, at + 1):
            del out[start + 1 : at + 1]
    return out


def _is_number(token: Token) -> bool:
    return token.kind == "NUMBER" and not token.unit and token.text.isdigit() and len(token.text) <= _MOST_DIGITS


def _is_focal(tokens: list[Token], at: int) -> bool:
    """'50mm 2.8', '85mm f2', '50mm LTM': a length of a lens, and not one of a row of tubes."""
    if tokens[at].kind != "LENGTH" or tokens[at].unit != "mm" or "-" in tokens[at].text:
        return False
    return at + 1 < len(tokens) and tokens[at + 1].kind in _OF_LENS
