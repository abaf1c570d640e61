"""A colon behind a lens that is told: what follows with an article is another thing: 'with a 100 mm: a tube or ...'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_THINGS: Final = frozenset(["LENGTH", "FNUM", "COMBO", "MOUNT", "LENS", "BODY", "NUMBER"])


def with_colons_told(tokens: list[Token]) -> list[Token]:
    """Such a colon becomes a JOIN; elsewhere it is no more than a mark."""
    out = list(tokens)
    for at in range(1, len(tokens) - 1):
        before, token, after = tokens[at - 1 : at + 2]
        opens = after.kind == "DET" or after.text.casefold() == "a"
        if token.kind == "MARK" and token.text == ":" and before.kind in _THINGS and opens:
            out[at] = token.as_("JOIN", value=",")
    return out
