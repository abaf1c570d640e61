"""A ring that was read on two opposite sides: '27.38 at one side and 27.46 on the other'."""

from __future__ import annotations

import re
from typing import Final

from grammar.words.tokens import Token, in_words

READING: Final = "reading"
LEAST_RING: Final = 2.0  # mm, of what is measured on two sides, and
TWO_APART: Final = 0.15  # how far its sides may be apart
_MOST_BETWEEN: Final = 6  # tokens
_BEHIND: Final = 3  # tokens in which the second side is named
_HUNDREDTHS: Final = re.compile(r"\d+\.\d\d(?: ?mm)?")
_NUMBERS: Final = frozenset(["NUMBER", "LENGTH", "FOCAL", "KEYED"])
_PLAIN: Final = frozenset(["CUE", "MARK", "FILLER"])  # words without a meaning of their own: 'left', 'here'
_JOINED: Final = frozenset([",", "and"])
_WHERE: Final = frozenset(["on", "at"])


def with_two_sides(tokens: list[Token]) -> list[Token]:
    """Two numbers, to the hundredth and a hair apart, as readings where no more than their sides is told between."""
    fine = [at for at, one in enumerate(tokens) if one.kind in _NUMBERS and _HUNDREDTHS.fullmatch(one.text)]
    if len(fine) != 2:
        return tokens
    first, last = fine
    between, around = tokens[first + 1 : last], tokens[first + 1 : last + _BEHIND]
    one, other = (tokens[place].numbers[0] for place in fine)
    near = min(one, other) >= LEAST_RING and 0 < abs(one - other) <= TWO_APART and len(between) <= _MOST_BETWEEN
    if near and _are_two_things(tokens[:first]):
        return tokens
    if not (near and any(map(_tells_where, around)) and all(map(_may_stand_between, between))):
        return tokens
    words = {place for place, token in enumerate(around, first + 1) if in_words(token)}
    out = [token.as_("KEYED", value=READING, unit="mm") if at in fine else token for at, token in enumerate(tokens)]
    return [token for at, token in enumerate(out) if at not in words]


def _are_two_things(before: list[Token]) -> bool:
    """'one measures 27.95 and the other 28.08': two rings, and no sides of one."""
    led = [one for one in before if one.kind not in _PLAIN and (one.kind, one.value) != ("MEASURE", "size")]
    return bool(led) and led[-1].kind == "NUMBER" and led[-1].numbers == (1.0,) and led[-1].text.isalpha()


def _tells_where(token: Token) -> bool:
    return (token.kind == "PREP" and token.value in _WHERE) or (token.kind, token.value) == ("DET", "another")


def _may_stand_between(token: Token) -> bool:
    if token.kind == "JOIN":
        return token.value in _JOINED
    named = token.kind in _PLAIN and not token.value
    return named or token.kind in ("PREP", "DET") or in_words(token)
