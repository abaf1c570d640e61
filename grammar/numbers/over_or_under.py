"""'the OM-MFT ring is 0.2 over', 'ring two tenths under': by so much it is off, and not so thick."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import OVER_OR_UNDER
from grammar.words.tokens import Token, is_plural

_RINGS: Final = frozenset(["adapter", "recessed"])
_MOST_OFF: Final = 0.6  # mm; no ring between two mounts is so thin
_FOR: Final = "for"
_BETWEEN: Final = 3  # tokens at most from the ring to the number
_PASSED: Final = frozenset(["VERB", "FILLER", "CUE", "JOIN"])
_ENDS: Final = frozenset(["STOP", "JOIN", "CUE", "MARK"])


def with_over_told(tokens: list[Token]) -> list[Token]:
    """The small length between a ring and such a word, where nothing more follows, as what it is off by."""
    for at in range(2, len(tokens)):
        if OVER_OR_UNDER in tokens[at].groups and _is_small(tokens[at - 1]) and _ends(tokens, at + 1):
            ring = _ring_before(tokens, at - 1)
            if ring:
                told = tokens[at - 1].as_("KEYED", value="thickness", unit="mm")
                return [*tokens[: at - 1], told, tokens[at].as_("CUE", value=""), *tokens[at + 1 :]]
    return tokens


def _is_small(token: Token) -> bool:
    return token.may_be_mm and len(token.numbers) == 1 and 0 < token.numbers[0] <= _MOST_OFF


def _ends(tokens: list[Token], place: int) -> bool:
    """Whether no thing follows that it could be over or under: 'ring 0.3 under for 50/1.8 M42' tells what it is for."""
    return place >= len(tokens) or tokens[place].kind in _ENDS or tokens[place].text.casefold() == _FOR


def _ring_before(tokens: list[Token], at: int) -> bool:
    for token in reversed(tokens[max(0, at - _BETWEEN) : at]):
        if token.kind == "PIECE":
            return token.value in _RINGS and not is_plural(token)
        if token.kind not in _PASSED:
            return False
    return False
