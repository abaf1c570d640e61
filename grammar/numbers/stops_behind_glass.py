"""A bare decimal before or behind the word for a lens that glass stands behind: '1.4x converter on a 2.8 tele'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.optics_numbers import OPTICS
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_SLOWEST: Final = 8.0  # what lenses open to
_LENSES: Final = frozenset(["LENS", "KIND"])
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP"])
_CONVERTER: Final = "convert"
_TELE: Final = "tele"
_BE: Final = "be"
_WITH: Final = frozenset(["with", "behind", "+", "/"])
_EXTENDS: Final = (1.2, 3.0)  # what a converter multiplies by


def with_stops_behind_glass(tokens: list[Token]) -> list[Token]:
    """The number as FNUM: no lens is so short, and no glass stands beside a lens by such a number alone."""
    glass = any(_is_glass(tokens, at) for at in range(len(tokens)))
    return [
        one.as_("FNUM") if one.kind == "NUMBER" and _is_opening(tokens, at, glass) else one
        for at, one in enumerate(tokens)
    ]


def _is_glass(tokens: list[Token], at: int) -> bool:
    token, before = tokens[at], tokens[at - 1] if at else None
    if token.kind == "TIMES":  # '300 w/ 1.4x'
        return before is not None and before.value in _WITH and _EXTENDS[0] <= token.numbers[0] <= _EXTENDS[1]
    return token.kind == "PIECE" and (token.value in OPTICS or token.text.casefold().startswith(_CONVERTER))


def _is_opening(tokens: list[Token], at: int, glass: bool) -> bool:
    token = tokens[at]
    if "." not in token.text or token.numbers[0] not in STOPS or token.numbers[0] > _SLOWEST:
        return False
    before, after = tokens[at - 1] if at else None, tokens[at + 1] if at + 1 < len(tokens) else None
    if after is not None and (after.kind, after.value) == ("KIND", _TELE):
        return True  # 'my 2.8 tele': the longest of lenses
    if not glass:
        return False
    if after is not None and after.kind in _LENSES:
        return True
    if before is not None and before.value == _BE and at > 1:
        before = tokens[at - 2]  # 'if the lens is 4.5'
    return before is not None and before.kind == "LENS" and (after is None or after.kind in _ENDS)
