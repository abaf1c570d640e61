"""What a body leaves free behind its flange, beside a rear's reach: '9 mm clear', 'shutter lies 13 behind it'."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from grammar.numbers.rears_told import REACH
from grammar.words.groups import IN_THE_WAY, POKES, REAR, ROOM_LEFT, STANDS_OUT
from grammar.words.tokens import Token

FREE_DEPTH: Final = "clear-depth"
_LEAST_MM, _MOST_MM = 1.0, 60.0  # that a body leaves, and that a rear reaches
_ENDS: Final = frozenset(["JOIN", "STOP"])
_BEFORE, _BEHIND = 4, 6  # words between the length and what tells of what it is
_OF_LENS: Final = frozenset(["LENS", "MOUNT", "KIND", "LETTER", "FNUM"])
_GONE: Final = "GONE"  # kind of a word that is passed over
_HOSTS: Final = frozenset(["MOUNT", "LETTER"])
_PASSED: Final = frozenset(["VERB", "FILLER", "PREP", "DET", "CUE", "MEASURE"])


def with_free_depths(tokens: list[Token]) -> list[Token]:
    """The tokens with the free depth as KEYED, and with how far a rear pokes past the flange of a named mount.

    Only where a rear is told of: '38 mm clear' alone is an opening.
    """
    if not any(_tells_of_rear(token) for token in tokens):
        return tokens
    out = list(tokens)
    for at, token in enumerate(tokens):
        bare = token.may_be_mm and not token.text.isalpha() and len(token.numbers) == 1
        if not bare or not _LEAST_MM <= token.numbers[0] <= _MOST_MM or out[at].kind == "KEYED":
            continue
        before, behind = _clause(tokens, at)
        if _is_free(before, behind):
            out[at] = token.as_("KEYED", value=FREE_DEPTH, unit="mm")
            _with_host(out, at, len(behind), "BODY", "body")
        elif before and POKES in before[-1].groups and _is_behind_seat(behind):
            out[at] = token.as_("KEYED", value=REACH, unit="mm")
            _with_host(out, at, len(behind), "LENS", "lens")
    return [token for token in out if token.kind != _GONE]


def _tells_of_rear(token: Token) -> bool:
    return bool({REAR, POKES} & set(token.groups)) or (token.kind == "MEASURE" and token.value == REACH)


def _clause(tokens: Sequence[Token], at: int) -> tuple[list[Token], list[Token]]:
    """What stands before and behind a place, up to where its clause ends."""
    before: list[Token] = []
    for token in reversed(tokens[max(0, at - _BEFORE) : at]):
        if token.kind in _ENDS or token.numbers:
            break
        before.insert(0, token)
    behind: list[Token] = []
    for token in tokens[at + 1 : at + 1 + _BEHIND]:
        if token.kind in _ENDS or token.numbers:
            break
        behind.append(token)
    return before, behind


def _is_free(before: list[Token], behind: list[Token]) -> bool:
    """'9 mm clear', 'clear for 11 mm', '8 mm of room in the throat', 'the shutter is 13 behind the flange'."""
    if behind and behind[0].kind in _OF_LENS:
        return False
    rear = any(_tells_of_rear(token) for token in before)
    led = any(ROOM_LEFT in token.groups for token in before)
    blocked = any(IN_THE_WAY in token.groups for token in before) and bool(behind)
    after = behind[:3]
    if not rear and (led or blocked):
        return all(token.kind in (*_PASSED, *_HOSTS, "BODY", "FORMAT", "UNKNOWN") for token in before)
    return any(ROOM_LEFT in token.groups for token in after) and not rear


def _is_behind_seat(behind: list[Token]) -> bool:
    """'past the flange', 'behind the adapter': behind what it seats on, and no lens."""
    seats = any(token.kind in ("MEASURE", "PIECE", "MOUNTWORD") for token in behind)
    return bool(behind) and STANDS_OUT in behind[0].groups and seats


def _with_host(out: list[Token], at: int, many: int, kind: str, word: str) -> None:
    """The words behind the length that tell from where it was measured; a mount among them is the one it is of."""
    for n in range(at + 1, at + 1 + many):
        token = out[n]
        led = out[n - 1]
        if token.kind == "MEASURE" and led.kind in _HOSTS:
            out[n] = token.as_(kind, text=word, value="", implies=())
        elif token.kind in ("MEASURE", "PREP", "DET", "FILLER"):
            out[n] = token.as_(_GONE)
