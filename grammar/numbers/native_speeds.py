"""The speed that a sensor is made for, told without ISO: 'f2.8, 1/48, native 800', where an exposure is told."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import SPEED_CALLED
from grammar.words.tokens import Token

_EXPOSED: Final = frozenset(["FPS", "SHUTTER", "LIGHT", "ND", "EV"])  # beside these it is no nearest focus
_LEAST: Final = 50.0  # that sensors are made for


def with_native_speeds(tokens: list[Token]) -> list[Token]:
    """The bare number behind the word as ISO."""
    if not any(one.kind in _EXPOSED for one in tokens) or any(one.kind == "ISO" for one in tokens):
        return tokens
    out = list(tokens)
    for at in range(1, len(tokens)):
        number, word = tokens[at], tokens[at - 1]
        speed = number.kind == "NUMBER" and number.numbers[0] >= _LEAST and number.numbers[0] % 10 in (0, 5)
        if speed and word.kind == "MEASURE" and SPEED_CALLED in word.groups:
            out[at - 1], out[at] = word.as_("FILLER", value=""), number.as_("ISO")
    return out
