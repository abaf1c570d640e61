"""A mount told behind a piece that is drawn out or stacked, beside a lens that has none: 'helicoid 17-31 for M42'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.things.casting import MOUNTLESS, SPACER
from grammar.words.groups import DENYING, LEADS_LENS
from grammar.words.tokens import Token

_DRAWN: Final = frozenset(["helicoid", "bellows", SPACER])
_LENGTHS: Final = frozenset(["RANGE", "LENGTH", "NUMBER"])
_HOSTS: Final = frozenset(["MOUNT", "LETTER"])
_FOR: Final = "for"
_WITH: Final = "with"
_DESCRIBES: Final = frozenset(["DET", "FILLER", "LETTER"])


def with_pieces_of_mounts(tokens: list[Token]) -> list[Token]:
    """The tokens with such a mount before its piece, where the body is told behind it."""
    if not _lens_has_its_own(tokens):
        return tokens
    out = list(tokens)
    for at, token in enumerate(tokens):
        if token.kind != "PIECE" or token.value not in _DRAWN:
            continue
        led = at + 1
        while led < len(tokens) and tokens[led].kind in _LENGTHS:
            led += 1
        told = tokens[led : led + 2]
        if len(told) < 2 or told[0].kind != "PREP" or told[0].text.casefold() != _FOR or told[1].kind != "MOUNT":
            continue
        if not _has_host(tokens, led + 2) or (at and tokens[at - 1].kind == "MOUNT"):
            continue
        out[at : led + 2] = [told[1], *tokens[at:led]]
        if at and tokens[at - 1].kind == "JOIN":
            out[at - 1] = tokens[at - 1].as_("PREP", value=_WITH)  # no mount of the lens before it
    return out


def _lens_has_its_own(tokens: list[Token]) -> bool:
    """Whether the lens is of a kind that has no register, or told to have no mount."""
    kinds = any(one.kind == "KIND" and one.value in MOUNTLESS for one in tokens)
    denied = any(one.kind == "MOUNTWORD" and DENYING in before.groups for before, one in pairwise(tokens))
    return kinds or denied


def _has_host(tokens: list[Token], start: int) -> bool:
    """Whether a body is told from here on: 'on EF', 'goes on a Z body'."""
    for at in range(start, len(tokens)):
        if tokens[at].kind != "PREP" or LEADS_LENS not in tokens[at].groups:
            continue
        behind = [one for one in tokens[at + 1 : at + 4] if one.kind not in _DESCRIBES or one.kind == "LETTER"]
        if any(one.kind in _HOSTS for one in behind):
            return True
    return False
