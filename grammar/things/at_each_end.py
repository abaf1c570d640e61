"""A ring told of both ends of a piece: 'and a 1 mm ring at each end', 'with 1 mm rings on both sides' are two."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import EACH_END, END_SIDE
from grammar.words.tokens import Token

_RINGS: Final = frozenset(["adapter", "extension-tube"])
_PASSED: Final = frozenset(["PREP", "DET", "FILLER", "JOIN", "MARK", "NUMBER", "COUNT", "VERB"])
_FAR: Final = 6  # tokens from the ring to 'each end'


def with_ends_told(tokens: list[Token]) -> list[Token]:
    """The ring with its length twice, joined; the words for the ends go."""
    for at, token in enumerate(tokens):
        size = tokens[at - 1] if at else None
        if token.kind != "PIECE" or token.value not in _RINGS:
            continue
        place = _size_behind(tokens, at) if size is None or not _is_size(size) else at - 1
        ends = _ends(tokens, max(at, place or 0)) if place is not None else None
        if place is None or ends is None:
            continue
        first, last = min(at, place), max(at, place)
        while first and tokens[first - 1].kind in ("NUMBER", "COUNT"):
            first -= 1  # 'two 1 mm rings, one for either end'
        pair = [tokens[place].as_("LENGTH", unit="mm"), token]
        join = Token("JOIN", "and", token.column, "and", listed=token.listed)
        return [*tokens[:first], *pair, join, *pair, *tokens[ends + 1 :]] if last <= ends else tokens
    return tokens


def _is_size(token: Token) -> bool:
    return token.kind == "LENGTH" and token.unit == "mm"


def _size_behind(tokens: list[Token], at: int) -> int | None:
    """'two rings of 1 mm'."""
    of = at + 2 < len(tokens) and tokens[at + 1].value == "of"
    return at + 2 if of and _is_size(tokens[at + 2]) else None


def _ends(tokens: list[Token], at: int) -> int | None:
    """The place of the last word of 'at each end', 'one for either side'; None where another thing is told before."""
    for n in range(at + 1, min(len(tokens) - 1, at + _FAR + 1)):
        if EACH_END in tokens[n].groups and END_SIDE in tokens[n + 1].groups:
            return n + 1
        if tokens[n].kind not in _PASSED:
            return None
    return None
