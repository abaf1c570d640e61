"""How large a lens draws by itself, told as a bare decimal: '100 macro gives 0.5 by itself', 'a macro that does .5'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import DRAWS, MACRO_MADE, YIELDS
from grammar.words.tokens import Token

_LARGEST: Final = 1.0  # more is no decimal part of life size
_OF_THINGS: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "MEASURE", "FNUM"])
_NATIVE: Final = "close-focus"  # value of 'by itself', 'alone'
_BACK: Final = 4  # tokens


def with_own_sizes(tokens: list[Token]) -> list[Token]:
    """The decimal becomes a RATIO behind what a lens gives, or behind what a macro lens does."""
    return [token.as_("RATIO") if _is_own_size(tokens, at) else token for at, token in enumerate(tokens)]


def _is_own_size(tokens: list[Token], at: int) -> bool:
    token, before = tokens[at], tokens[at - 1] if at else None
    decimal = token.kind == "NUMBER" and not token.unit and "." in token.text and 0 < token.numbers[0] <= _LARGEST
    if not decimal or before is None:
        return False
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    taken = after is not None and after.kind in _OF_THINGS and after.value != _NATIVE
    macro = any(MACRO_MADE in one.groups for one in tokens[max(0, at - _BACK) : at])
    return not taken and (YIELDS in before.groups or (macro and DRAWS in before.groups))
