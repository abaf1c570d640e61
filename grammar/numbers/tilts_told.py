"""By how much one side of a ring is thicker than the other: '0.1 thicker at one side', 'higher at the top by 0.08'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import END_SIDE, MORE_SO, SIDE_NAMED
from grammar.words.tokens import Token

TILT: Final = "tilt"  # key of the value
_NUMBERS: Final = frozenset(["NUMBER", "LENGTH"])
_MOST_MM: Final = 0.5  # more is how thick the ring is
_FAR: Final = 7  # tokens from 'thicker' to the side, and to the number behind it
_BY: Final = "by"


def with_tilts_told(tokens: list[Token]) -> list[Token]:
    """The number beside such a word becomes KEYED, where a side is told behind it; the words for the sides go."""
    tokens = _without_one_side(tokens)
    for at, token in enumerate(tokens):
        if MORE_SO not in token.groups:
            continue
        side = next((n for n in range(at + 1, min(len(tokens), at + _FAR)) if SIDE_NAMED in tokens[n].groups), None)
        size = _size(tokens, at)
        stop = side is not None and any(one.kind == "STOP" for one in tokens[at:side])
        if side is None or size is None or stop:
            continue
        told = tokens[size].as_("KEYED", value=TILT, unit="mm", ids=(), implies=())
        out = [told if n == size else one for n, one in enumerate(tokens)]
        out[at] = token.as_("CUE", value="")
        return _without_sides(out, at)
    return tokens


def _size(tokens: list[Token], at: int) -> int | None:
    """'0.1 thicker', 'thicker by 0.1'."""
    places = [at - 1, *range(at + 1, min(len(tokens), at + _FAR))]
    led = (n for n in places if 0 <= n < len(tokens) and (n < at or tokens[n - 1].text.casefold() == _BY))
    return next((n for n in led if _is_tilt(tokens[n])), None)


def _is_tilt(token: Token) -> bool:
    small = token.kind in _NUMBERS and token.unit in ("", "mm") and not token.text.isalpha()
    return small and 0 < token.numbers[0] <= _MOST_MM


def _without_one_side(tokens: list[Token]) -> list[Token]:
    """'at one side', 'on one edge': no number, and so no stop or length."""
    out = list(tokens)
    for n, token in enumerate(tokens[:-1]):
        sided = any(one in tokens[n + 1].groups for one in (END_SIDE, SIDE_NAMED))
        if token.kind == "NUMBER" and token.text.isalpha() and sided:
            out[n] = token.as_("FILLER")
    return out


def _without_sides(tokens: list[Token], at: int) -> list[Token]:
    """'on the left' is no body."""
    out = list(tokens)
    for n in range(at + 1, min(len(tokens), at + _FAR)):
        if SIDE_NAMED in tokens[n].groups and tokens[n].kind != "KEYED":
            out[n] = tokens[n].as_("FILLER")
    return out
