"""What something fits is what it goes on: 'will it fit a Z as well', 'fits my K too' tell of a body without 'on'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import FITS
from grammar.words.tokens import Token

_PASSED: Final = frozenset(["DET", "FILLER"])
_OTHERS: Final = frozenset(["MOUNT", "PIECE", "LENS", "KIND", "COMBO", "FOCAL", "LENGTH", "BODY"])
_GOES_ON: Final = frozenset(["LENS", "KIND", "PIECE", "MOUNT", "LINK", "COMBO", "FOCAL", "LENGTH", "MOUNTWORD"])
_ALL: Final = "all"  # 'fits all K' is what a seller says of the ring
_JOINS: Final = frozenset(["and", "or", ","])


def with_fits_on(tokens: list[Token]) -> list[Token]:
    """'on' before the one mount behind 'fit', where no lens or ring is told before it and nothing heads it behind."""
    for at, token in enumerate(tokens):
        if FITS not in token.groups or token.kind not in ("CUE", "VERB"):
            continue
        place = at + 1
        while place < len(tokens) and tokens[place].kind in _PASSED and tokens[place].value != _ALL:
            place += 1
        mount = tokens[place] if place < len(tokens) else None
        after = tokens[place + 1] if place + 1 < len(tokens) else None
        headed = after is not None and (after.kind in _GOES_ON or after.value in _JOINS)
        if mount is None or mount.kind != "MOUNT" or headed or any(one.kind in _OTHERS for one in tokens[:at]):
            return tokens
        placed = Token("PREP", "on", token.end or token.column + len(token.text), value="on", listed=token.listed)
        return [*tokens[: at + 1], placed, *tokens[at + 1 :]]
    return tokens
