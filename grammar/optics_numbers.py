"""Bare numbers that are the factors of glass between lens and body: 'a focal reducer 0.64 or 0.71'."""

from __future__ import annotations

from typing import Final

from grammar.tokens import Token
from grammar.written import TELECONVERTER

OPTICS: Final = frozenset(["focal-reducer", "teleconverter"])
_EXTENDERS: Final = frozenset([1.25, 1.33, 1.4, 1.5, 1.6, 1.7, 2.0])  # factors that extenders are made with
_CLOSE: Final = frozenset(["macro", "how-big", "working-distance", "effective-f", "bellows-factor", "dof"])
_OF_OTHERS: Final = frozenset(["LENS", "KIND", "BODY", "FRAME", "FORMAT", "PIECE", "MOUNT", "MEASURE"])


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


def as_extender(tokens: list[Token], at: int, told: frozenset[str]) -> Token:
    """'flip the 2x in', 'with the 1.4x': a factor that is known by its article is that of a piece of glass."""
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    known = before is not None and before.kind == "DET" and before.value == "the"
    if not known or tokens[at].numbers[0] not in _EXTENDERS or told & _CLOSE:
        return tokens[at]
    if after is not None and (after.kind in _OF_OTHERS or after.text.casefold().startswith("crop")):
        return tokens[at]
    return tokens[at].as_("TIMES", unit=TELECONVERTER)
