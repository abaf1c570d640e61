"""A body named by a part of its mount: 'from the X flange to my projector lens', 'a D lens in a C hole'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import HOLES
from grammar.words.tokens import Token

_FLANGE: Final = "flange"
_INTO: Final = frozenset(["in", "into", "on", "to"])
_OF_LENSES: Final = frozenset(["LENS", "KIND"])


def with_flanges_of_bodies(tokens: list[Token]) -> list[Token]:
    """The flange of the one mount told becomes the body, where a lens is told of that is not named by that mount."""
    tokens = _with_holes(tokens)
    mounts = [at for at, token in enumerate(tokens) if token.kind == "MOUNT"]
    if len(mounts) != 1 or mounts[0] + 1 >= len(tokens) or any(token.kind == "BODY" for token in tokens):
        return tokens
    at = mounts[0] + 1
    is_flange = tokens[at].kind == "MEASURE" and tokens[at].text.casefold() == _FLANGE
    others = [n for n, one in enumerate(tokens) if one.kind in _OF_LENSES and n != at + 1]
    whose = any(one.kind == "PREP" and one.value == "of" for one in tokens[at + 1 : at + 2])
    if not is_flange or not others or whose:  # 'from the M39 flange of my lens'
        return tokens
    return [
        *tokens[:at],
        Token("BODY", tokens[at].text, tokens[at].column, listed=tokens[at].listed),
        *tokens[at + 1 :],
    ]


def _with_holes(tokens: list[Token]) -> list[Token]:
    """'D lens in the C hole': the hole of a mount that a lens of another goes in is a body's."""
    out = list(tokens)
    for at in range(2, len(tokens)):
        hole, mount = tokens[at], tokens[at - 1]
        led = [one.value for one in tokens[max(0, at - 3) : at - 1] if one.kind == "PREP"]
        lens = any(one.kind in _OF_LENSES for one in tokens[: at - 1])
        if HOLES in hole.groups and mount.kind == "MOUNT" and lens and led and led[-1] in _INTO:
            out[at] = Token("BODY", hole.text, hole.column, listed=hole.listed)
    return out
