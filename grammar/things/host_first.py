"""A body named before its lens, 'on RF a 50 1.4': the article begins the lens, whose mount that is not."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import TAKES
from grammar.words.tokens import Token

_PLACING: Final = frozenset(["on", "for"])
_NUMBERS: Final = frozenset(["COMBO", "FOCAL", "LENGTH", "NUMBER"])
_LEAST: Final = 8.0  # mm, of a lens


def with_host_first(tokens: list[Token]) -> list[Token]:
    """A comma before the article that follows the mount of a body."""
    tokens = _with_what_it_takes(tokens)
    out = list(tokens)
    for at in range(len(tokens) - 3):
        prep, mount, article, size = tokens[at : at + 4]
        placed = prep.kind == "PREP" and prep.value in _PLACING and mount.kind == "MOUNT"
        led = article.kind == "DET" and article.text.casefold() in ("a", "an")
        if placed and led and size.kind in _NUMBERS and size.numbers[:1] and size.numbers[0] >= _LEAST:
            comma = Token("JOIN", ",", mount.end or mount.column + len(mount.text), ",", listed=mount.listed)
            return [*out[: at + 2], comma, *out[at + 2 :]]
    return out


def _with_what_it_takes(tokens: list[Token]) -> list[Token]:
    """'SR 200, my camera takes Z lenses': beside a lens that is told, the mount of what a camera takes is its own."""
    for at in range(1, len(tokens) - 3):
        body, takes, mount, lens = tokens[at : at + 4]
        said = body.kind == "BODY" and not body.ids and takes.kind == "CUE" and TAKES in takes.groups
        others = any(one.kind == "MOUNT" for one in tokens[:at])
        if said and others and mount.kind == "MOUNT" and lens.kind == "LENS":
            return [*tokens[:at], mount, body, *_with_what_it_takes(tokens[at + 4 :])]
    return tokens
