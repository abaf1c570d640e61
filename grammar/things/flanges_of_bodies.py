"""A mount named by its flange, where the lens is another thing: 'from the X flange to my projector lens'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_FLANGE: Final = "flange"
_OF_LENSES: Final = frozenset(["LENS", "KIND"])


def with_flanges_of_bodies(tokens: list[Token]) -> list[Token]:
    """The flange of the one mount told becomes the body, where a lens is told of that is not named by that mount."""
    mounts = [at for at, token in enumerate(tokens) if token.kind == "MOUNT"]
    if len(mounts) != 1 or mounts[0] + 1 >= len(tokens) or any(token.kind == "BODY" for token in tokens):
        return tokens
    at = mounts[0] + 1
    is_flange = tokens[at].kind == "MEASURE" and tokens[at].text.casefold() == _FLANGE
    others = [n for n, one in enumerate(tokens) if one.kind in _OF_LENSES and n != at + 1]
    if not is_flange or not others:
        return tokens
    return [*tokens[:at], Token("BODY", tokens[at].text, tokens[at].column), *tokens[at + 1 :]]
