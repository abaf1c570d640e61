"""Bare numbers that are the factors of glass between lens and body: 'a focal reducer 0.64 or 0.71'."""

from __future__ import annotations

from typing import Final

from grammar.tokens import Token
from grammar.written import STOPS

_ON: Final = frozenset(["on", "behind", "with"])
_LENSLIKE: Final = frozenset(["LENS", "KIND", "MOUNT", "COMBO", "LENGTH", "FOCAL", "NUMBER", "FNUM"])
_REDUCES: Final = (0.5, 0.9)  # what reducers multiply by
_EXTENDS: Final = (1.3, 2.5)  # and extenders
_OF_SIZE: Final = frozenset(["macro", "how-close", "how-big", "working-distance", "dof", "bellows-factor"])
OPTICS: Final = frozenset(["focal-reducer", "teleconverter"])


def of_optics(tokens: list[Token], at: int) -> bool:
    """'a focal reducer 0.64 or 0.71': the factors told behind the piece that has them."""
    before = [token for token in tokens[max(0, at - 3) : at] if token.kind != "JOIN" and token.kind != "CUE"]
    if before and before[-1].kind == "TIMES":
        before = before[:-1]
    return bool(before) and before[-1].kind == "PIECE" and before[-1].value in OPTICS and "." in tokens[at].text


def lists_factors(tokens: list[Token], at: int) -> bool:
    """'.64 vs .71 reducer', 'from .71 to .64 reducer': one of a list of factors before the piece that has them."""
    after = tokens[at + 1 : at + 4]
    kinds = [token.kind for token in after]
    return kinds[:1] in (["JOIN"], ["PREP"]) and kinds[1:2] in (["NUMBER"], ["TIMES"]) and after[-1].value in OPTICS


def is_put_on_lens(tokens: list[Token], at: int) -> bool:
    """'0.71 on a 50/1.8', 'a .64 behind my 35': the factor of a reducer, told alone before the lens that it goes on."""
    number = tokens[at].numbers[0]
    before, after = tokens[at - 1] if at else None, [one for one in tokens[at + 1 : at + 4] if one.kind != "DET"]
    begins = before is None or before.kind in ("STOP", "DET", "CUE", "JOIN")
    placed = len(after) > 1 and after[0].kind == "PREP" and after[0].value in _ON and after[1].kind in _LENSLIKE
    return begins and placed and _REDUCES[0] <= number <= _REDUCES[1] and number not in STOPS


def with_glass_behind(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'85/1.4 x0.71', '300/4 x1.4': a factor right behind the stop of a lens is that of glass with it."""
    out: list[Token] = []
    for token in tokens:
        behind = token.kind == "TIMES" and bool(out) and out[-1].kind in ("COMBO", "FNUM")
        if behind and _is_of_glass(token.numbers[0], told):
            out.append(Token("PREP", "", token.column, value="with"))
        out.append(token)
    return out


def _is_of_glass(factor: float, told: frozenset[str]) -> bool:
    reduces = _REDUCES[0] < factor <= _REDUCES[1] and factor not in STOPS
    return reduces or (_EXTENDS[0] <= factor <= _EXTENDS[1] and not told & _OF_SIZE)
