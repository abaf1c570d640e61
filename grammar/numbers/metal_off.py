"""Metal taken off a mount, 'milled 2 mm off the K mount', 'skimmed 1.5 off the FD mount of my 50': no lens of 2 mm."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import BACK_FROM, WAS_TAKEN, WORKED_DOWN
from grammar.words.tokens import Token

_THICKNESS: Final = "thickness"  # the key of the error that it leaves
_MOST_OFF_MM: Final = 6.0  # that anybody takes off a mount
_OF_MOUNT: Final = frozenset(["MOUNT", "MOUNTWORD", "LETTER"])
_OF: Final = "of"


def with_metal_off(tokens: list[Token]) -> list[Token]:
    """The tokens with such an amount as KEYED, and no part of the description of a lens."""
    out = list(tokens)
    for at in range(1, len(tokens) - 2):
        size, off = tokens[at], tokens[at + 1]
        bare = (size.kind == "NUMBER" or size.is_mm) and len(size.numbers) == 1
        if not bare or not 0 < size.numbers[0] <= _MOST_OFF_MM or BACK_FROM not in off.groups:
            continue
        if not {WORKED_DOWN, WAS_TAKEN} & set(tokens[at - 1].groups) or tokens[at + 2].kind not in _OF_MOUNT:
            continue
        out[at] = size.as_("KEYED", value=_THICKNESS, unit="mm")
        out[at + 1] = off.as_("CUE")
        behind = at + 3
        if behind < len(tokens) and tokens[behind].value == _OF:  # 'the FD mount of my 50': a lens of that mount
            out[behind] = tokens[behind].as_("FILLER", value="")
    return out
