"""From where to where a lens is to be brought nearer: 'from 0.9 m to 0.5 m with a 50, how much extension'."""

from __future__ import annotations

from typing import Final

from engine.base.units import FAR_UNITS
from grammar.things.casting import DRAWN
from grammar.words.tokens import Token

_LEAST_MM: Final = 100.0  # no lens that is brought nearer focuses nearer yet
_SPACING: Final = frozenset(["adapter", *DRAWN])
_EXTENSION: Final = "extension"
_PASSED: Final = frozenset(["CUE", "DET"])


def with_nearer_told(tokens: list[Token]) -> list[Token]:
    """The farther of two distances, told with what stands between, is the nearest of the lens by itself."""
    spaced = any(one.kind == "PIECE" and one.value in _SPACING for one in tokens)
    spaced = spaced or any(one.kind == "MEASURE" and one.value == _EXTENSION for one in tokens)
    if not spaced:
        return tokens
    out = list(tokens)
    for at, token in enumerate(out):
        start = _mm(token, "m") if at and out[at - 1].value == "from" else None
        to = next((n for n in range(at + 1, len(out)) if out[n].kind not in _PASSED), None)
        if start is None or to is None or out[to].value != "to" or to + 1 >= len(out):
            continue
        end = _mm(out[to + 1], token.unit)
        if end is not None and _LEAST_MM <= end < start:
            out[at - 1], out[to] = out[at - 1].as_("CUE"), out[to].as_("CUE")
            out[at] = token.as_("KEYED", value="close-focus", numbers=(start,), unit=token.unit)
            out[to + 1] = out[to + 1].as_("LENGTH", numbers=(end,), unit=token.unit)
            break
    return out


def _mm(token: Token, unit: str) -> float | None:
    """A distance in mm; a bare number is in the unit of the one before it."""
    if token.kind == "LENGTH" and token.unit in FAR_UNITS:
        return token.numbers[0]
    bare = token.kind == "NUMBER" and not token.text.isalpha() and unit in FAR_UNITS
    return token.numbers[0] * FAR_UNITS[unit] if bare else None
