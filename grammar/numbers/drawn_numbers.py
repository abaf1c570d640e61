"""Bare numbers that tell how far a piece is drawn out: 'bellows 180', 'the helicoid that goes +10'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_STRETCHED: Final = frozenset(["bellows"])
_DRAW: Final = (20.0, 400.0)  # mm
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "LIMIT", "TRAIT", "MEASURE"])
_ADDED_TO: Final = frozenset(
    ["LENGTH", "FOCAL", "FNUM", "COMBO", "NUMBER", "LIMIT", "PREP", "PIECE", "RANGE", "LENS", "TIMES"]
)


def is_drawn_so_far(before: Token | None, token: Token, after: Token | None) -> bool:
    """'bellows 180', 'bellows 90 out': how far it is drawn, where the number is of nothing that follows."""
    if before is None or before.kind != "PIECE" or before.value not in _STRETCHED:
        return False
    ends = after is None or after.kind in _ENDS
    return ends and token.text.isdecimal() and _DRAW[0] <= token.numbers[0] <= _DRAW[1]


def is_added_travel(tokens: list[Token], at: int) -> bool:
    """'helicoid, open is +14', 'the one that goes +10': how far one draws out, with nothing before to be added to."""
    plus = tokens[at - 1] if at else None
    if plus is None or plus.text != "+" or tokens[at].gap or tokens[at].numbers[0] > _DRAW[1]:
        return False
    added_to = at > 1 and tokens[at - 2].kind in _ADDED_TO
    return not added_to and any(one.kind == "PIECE" and one.value == "helicoid" for one in tokens)
