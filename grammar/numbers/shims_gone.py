"""A shim that is no longer there: 'with the 0.2 shim left out', 'someone removed the 0.3 washer', '0.2 missing'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.words.groups import AWAY, PUT_AWAY, SHEETS, TAKEN_OFF
from grammar.words.tokens import Token

_THICKNESS: Final = "thickness"  # the key of the error that its place leaves
_THICKEST_MM: Final = 2.0  # a thicker piece is a ring
_BEHIND: Final = 3  # words from the shim to what became of it
_AHEAD: Final = 3  # and from that to the shim's thickness


def with_shims_gone(tokens: list[Token]) -> list[Token]:
    """The thickness of such a shim as KEYED: by so much the seat is off."""
    out = list(tokens)
    for at in range(1, len(tokens)):
        size = tokens[at - 1]
        bare = size.kind == "NUMBER" or size.is_mm
        if SHEETS not in tokens[at].groups or not bare or not 0 < size.numbers[0] <= _THICKEST_MM:
            continue
        around = (*tokens[max(0, at - 1 - _AHEAD) : at - 1], *tokens[at + 1 : at + 1 + _BEHIND])
        left = any(TAKEN_OFF in one.groups and AWAY in next_.groups for one, next_ in pairwise(around))
        if left or any(PUT_AWAY in one.groups for one in around):
            out[at - 1] = size.as_("KEYED", value=_THICKNESS, unit="mm")
    return out
