"""Bare numbers that tell how far a piece is drawn out: 'bellows 180', 'the helicoid that goes +10'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import SPACER
from grammar.words.groups import GIVES
from grammar.words.tokens import Token, is_plural

_STRETCHED: Final = frozenset(["bellows"])
_DRAW: Final = (20.0, 400.0)  # mm
_MOST_TRAVEL: Final = 60.0  # mm, of a helicoid
_MOST_UNSAID: Final = 15.0  # and where nothing says that it moves so far
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP", "CUE", "LIMIT", "TRAIT", "MEASURE"])
_LONGEST_TUBE: Final = 100.0  # mm
_NUMBERED: Final = frozenset(["LENGTH", "NUMBER", "RANGE", "COUNT", "TIMES", "MOUNT"])
_ADDED_TO: Final = frozenset(
    ["LENGTH", "FOCAL", "FNUM", "COMBO", "NUMBER", "LIMIT", "PREP", "PIECE", "RANGE", "LENS", "TIMES"]
)


def is_drawn_so_far(before: Token | None, token: Token, after: Token | None) -> bool:
    """'bellows 180', 'bellows 90 out': how far it is drawn, where the number is of nothing that follows."""
    if before is None or before.kind != "PIECE" or before.value not in _STRETCHED:
        return False
    ends = after is None or after.kind in _ENDS
    return ends and token.text.isdecimal() and _DRAW[0] <= token.numbers[0] <= _DRAW[1]


def is_length_of_tube(tokens: list[Token], at: int) -> bool:
    """'ring 1 mm, tube 9 for an M42 50': the bare number right behind one tube of which no length stands before it."""
    tube, ahead = tokens[at - 1] if at else None, tokens[at - 2] if at > 1 else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if tube is None or tube.value != SPACER or tube.kind != "PIECE" or is_plural(tube):
        return False
    told = ahead is not None and ahead.kind in _NUMBERED
    short = tokens[at].text[:1].isdigit() and 0 < tokens[at].numbers[0] <= _LONGEST_TUBE
    return short and not told and (after is None or after.kind in _ENDS)


def is_added_travel(tokens: list[Token], at: int) -> bool:
    """'helicoid, open is +14', 'the one that goes +10': how far one draws out, with nothing before to be added to."""
    if _is_given(tokens, at):
        return True
    plus = tokens[at - 1] if at else None
    if plus is None or plus.text != "+" or tokens[at].gap or tokens[at].numbers[0] > _DRAW[1]:
        return False
    added_to = at > 1 and tokens[at - 2].kind in _ADDED_TO
    return not added_to and any(one.kind == "PIECE" and one.value == "helicoid" for one in tokens)


def _is_given(tokens: list[Token], at: int) -> bool:
    """'the helicoid ring gives 6 more', 'helicoid adds 5': right behind what a helicoid does."""
    number, before = tokens[at], [one for one in tokens[max(0, at - 3) : at] if one.kind != "DET"][-2:]
    if not before or not number.text[:1].isdigit() or number.numbers[0] <= 0:
        return False
    said = GIVES in before[-1].groups
    if said and before[-1].kind == "PREP" and tokens[at - 1].kind == "DET":
        return False  # 'a helicoid with a 50': a lens
    piece = before[0] if said else before[-1]
    after = tokens[at + 1].kind if at + 1 < len(tokens) else "STOP"
    most = _MOST_TRAVEL if said else _MOST_UNSAID
    return piece.kind == "PIECE" and piece.value == "helicoid" and number.numbers[0] <= most and after in _ENDS
