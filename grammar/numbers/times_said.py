"""A fraction that is a time where times of exposure are told: 'shutter 1/500, i want 1/8', 'from 1/60 to 1/4'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import WANTED_SO
from grammar.words.tokens import Token

_LIT: Final = frozenset(["SHUTTER", "ND", "ISO"])
_TALK: Final = "after-exposure-nd"
_DENOMINATORS: Final = frozenset([2, 4, 8, 15])  # of shutters that may be written like a part of an inch
_LED: Final = frozenset(["to", "at", "from", "becomes", "is", "be", "metered", "meter", "reads", "says", "shutter"])
_FRAMES: Final = frozenset(["FRAME", "LENS", "BODY", "KIND", "PIECE", "MOUNTWORD"])


def with_times_said(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """The FRACTION as SHUTTER, in seconds, where another time is told or an exposure was."""
    if _TALK not in told and not any(one.kind in _LIT for one in tokens):
        return tokens
    return [_as_time(one) if _is_time(tokens, at) else one for at, one in enumerate(tokens)]


def _is_time(tokens: list[Token], at: int) -> bool:
    token, before = tokens[at], tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    one, _, below = token.text.partition("/")
    if token.kind != "FRACTION" or one != "1" or not below.isdecimal() or int(below) not in _DENOMINATORS:
        return False
    led = before is not None and (WANTED_SO in before.groups or before.value in _LED or before.text.casefold() in _LED)
    return led and (after is None or after.kind not in _FRAMES)


def _as_time(token: Token) -> Token:
    below = float(token.text.partition("/")[2])
    return token.as_("SHUTTER", numbers=(1 / below,), unit="s", value=f"{token.text} s", ids=(), implies=())
