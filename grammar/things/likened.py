"""What a lens on a body is likened to: 'a 50 on MFT like a 100' has one lens, and the 100 is none of that mount."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from grammar.words.groups import LIKENING, PUT_WHERE
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

_MOUNTS: Final = frozenset(["MOUNT", "LETTER"])
_BE: Final = "be"
_EQUAL: Final = frozenset(["=", "=="])
_PASSED: Final = frozenset(["FILLER", "CUE", "VERB", "DET", "MARK"])  # between the mount and what it is likened to
_SHORTEST, _LONGEST = 8.0, 1200.0  # mm


def without_likened(tokens: list[Token]) -> list[Token]:
    """The tokens without the length that a lens on a mount is likened to; it stays in the text."""
    for at in range(2, len(tokens)):
        led, size = tokens[at - 1], tokens[at - 2]
        on = led.kind == "PREP" and PUT_WHERE in led.groups
        if not (tokens[at].kind == "MOUNT" and on and _may_be_focal(size)):
            continue
        place = at + 1
        while place < len(tokens) and tokens[place].kind in _PASSED:
            place += 1
        likened = any(LIKENING in one.groups for one in tokens[at + 1 : place])
        if likened and place < len(tokens) and _may_be_focal(tokens[place]) and _ends(tokens, place + 1):
            last = place + 1 + (place + 1 < len(tokens) and tokens[place + 1].kind == "LENS")
            return [*tokens[: at + 1], *(one for one in tokens[at + 1 : place] if one.kind != "DET"), *tokens[last:]]
    return tokens


def said_of_itself(tokens: Sequence[Token]) -> int | None:
    """Where 'R is R', 'M39 = M39' begins: a name that is told to be what it is, as if that told the mount."""
    for at in range(len(tokens) - 2):
        one, be, other = tokens[at : at + 3]
        named = one.kind in _MOUNTS and other.kind in _MOUNTS and one.text.casefold() == other.text.casefold()
        if named and (be.value == _BE or be.text in _EQUAL):
            return at
    return None


def without_itself(tokens: list[Token]) -> list[Token]:
    """The tokens without 'R is R', where the things it is said of are named beside."""
    at = said_of_itself(tokens)
    others = at is not None and any(one.kind == "MOUNT" for one in (*tokens[:at], *tokens[at + 3 :]))
    return [*tokens[:at], *tokens[at + 3 :]] if at is not None and others else tokens


def _may_be_focal(token: Token) -> bool:
    sized = token.kind in SIZES and len(token.numbers) == 1 and token.unit in ("", "mm") and not token.text.isalpha()
    return sized and _SHORTEST <= token.numbers[0] <= _LONGEST


def _ends(tokens: list[Token], at: int) -> bool:
    """Whether no stop, mount or body of its own stands behind: then it is a lens by itself."""
    return at >= len(tokens) or tokens[at].kind in ("STOP", "LENS", "CUE", "FILLER")
