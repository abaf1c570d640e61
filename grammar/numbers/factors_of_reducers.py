"""By how much glass in a ring reduces, told without a sign: '0.71 EF to E reducer', 'EF to MFT 0.71 reducer'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_REDUCER: Final = "focal-reducer"
_LEAST, _MOST = 0.4, 0.95  # that reducers reduce by
_LINKS: Final = frozenset(["PREP", "LINK", "MARK", "JOIN"])
_MOUNTS: Final = frozenset(["MOUNT", "LETTER"])
_TO: Final = frozenset(["to", "-", "/", "->"])


def with_factors_of_reducers(tokens: list[Token]) -> list[Token]:
    """The tokens with such a factor as TIMES, beside the reducer."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        if token.kind != "PIECE" or token.value != _REDUCER:
            continue
        if at and _is_factor(tokens[at - 1]):
            linked = at > 3 and tokens[at - 2].kind in _MOUNTS and _is_link(tokens[at - 3])
            factor = tokens[at - 1].as_("TIMES")
            out[at - 1 : at + 1] = [token, factor] if linked else [factor, token]
            continue
        back = at - 1
        while back > 0 and (tokens[back].kind in _MOUNTS or _is_link(tokens[back])):
            back -= 1
        if 0 <= back < at - 1 and _is_factor(tokens[back]):
            # as if it were told behind the piece: between its mounts and the piece it would part them
            out[back : at + 1] = [*tokens[back + 1 : at + 1], tokens[back].as_("TIMES")]
    return out


def _is_factor(token: Token) -> bool:
    bare = token.kind in ("NUMBER", "TIMES") and token.text[:1] in "0."
    return bare and len(token.numbers) == 1 and _LEAST <= token.numbers[0] <= _MOST


def _is_link(token: Token) -> bool:
    return token.kind in _LINKS and (token.value or token.text).casefold() in _TO
