"""A body with its mount right behind the word for it: 'screw of about 42 mm. body E', 'old camera MFT, which ring'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_MOUNTS: Final = frozenset(["MOUNT", "LETTER"])
_ENDS: Final = frozenset(["STOP", "JOIN"])
_LED: Final = frozenset(["STOP", "JOIN", "UNKNOWN", "MARK"])  # before the word: it begins what is said of it


def with_bodies_named_behind(tokens: list[Token]) -> list[Token]:
    """The tokens with such a mount before the word, as it is mostly said."""
    out = list(tokens)
    for at in range(len(out) - 1):
        body, mount = out[at], out[at + 1]
        led = at == 0 or out[at - 1].kind in _LED
        ends = at + 2 == len(out) or out[at + 2].kind in _ENDS
        if body.kind == "BODY" and not body.ids and mount.kind in _MOUNTS and led and ends:
            out[at], out[at + 1] = mount, body
            if at and out[at - 1].kind == "UNKNOWN":
                out[at - 1] = out[at - 1].as_("FILLER", value="")  # a maker's name, with the designation behind it
    return out
