"""A body named before its lens, 'on RF a 50 1.4': the article begins the lens, whose mount that is not."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_PLACING: Final = frozenset(["on", "for"])
_NUMBERS: Final = frozenset(["COMBO", "FOCAL", "LENGTH", "NUMBER"])
_LEAST: Final = 8.0  # mm, of a lens


def with_host_first(tokens: list[Token]) -> list[Token]:
    """A comma before the article that follows the mount of a body."""
    out = list(tokens)
    for at in range(len(tokens) - 3):
        prep, mount, article, size = tokens[at : at + 4]
        placed = prep.kind == "PREP" and prep.value in _PLACING and mount.kind == "MOUNT"
        led = article.kind == "DET" and article.text.casefold() in ("a", "an")
        if placed and led and size.kind in _NUMBERS and size.numbers[:1] and size.numbers[0] >= _LEAST:
            comma = Token("JOIN", ",", mount.end or mount.column + len(mount.text), ",", listed=mount.listed)
            return [*out[: at + 2], comma, *out[at + 2 :]]
    return out
