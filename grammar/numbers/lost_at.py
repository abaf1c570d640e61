"""The focal length at which infinity is lost: 'no infinity at 35', 'the zoom loses infinity at 28'; it is no mark."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import ENDLESS, LACKING
from grammar.words.tokens import Token

_FOCALS: Final = (12.0, 1000.0)  # mm
_BETWEEN: Final = 4  # tokens from what denies it to infinity
_OF_SCALE: Final = frozenset(["MEASURE", "FNUM"])  # behind a number that is no focal length


def with_lost_at(tokens: list[Token]) -> list[Token]:
    """The tokens with the bare whole number behind 'no infinity at' as a focal length."""
    out = list(tokens)
    for at in range(1, len(out) - 1):
        number = out[at + 1]
        after = out[at + 2] if at + 2 < len(out) else None
        if out[at].kind != "PREP" or out[at].value != "at" or (after is not None and after.kind in _OF_SCALE):
            continue
        if _is_focal(number) and _is_lost(out, at - 1):
            out[at], out[at + 1] = out[at].as_("CUE", value=""), number.as_("FOCAL", unit="mm", ids=(), implies=())
    return out


def _is_focal(token: Token) -> bool:
    bare = token.kind == "NUMBER" or token.is_mm
    whole = bare and token.text[:1].isdigit() and token.numbers[0] == int(token.numbers[0])
    return whole and _FOCALS[0] <= token.numbers[0] <= _FOCALS[1]


def _is_lost(tokens: list[Token], at: int) -> bool:
    """Whether infinity stands there, and what denies it before it."""
    if ENDLESS not in tokens[at].groups:
        return False
    return any(LACKING in token.groups for token in tokens[max(0, at - _BETWEEN) : at])
