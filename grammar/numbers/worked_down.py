"""A ring that metal was taken off: '27.5, sanded it to 27.38', 'from 27.6 to 27.5', '27.7 with 0.2 milled away'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import WORKED_DOWN
from grammar.words.tokens import Token

_MOST_OFF_MM: Final = 3.0  # that anybody takes off a ring
_LEAST_RING_MM: Final = 1.0
_REACH: Final = 9  # tokens from what it was to what it is
_LED: Final = 5  # tokens from the word for the work to what it was
_NEAR: Final = 3  # tokens from an amount to the word for the work
_TO: Final = "to"
_DOWN: Final = frozenset(["down", "it", "both", "that"])
_LESS: Final = frozenset(["minus", "less"])


def with_worked_down(tokens: list[Token]) -> list[Token]:
    """What the ring was becomes what it is now, told by its length or by how much was taken off; the rest is passed."""
    out = list(tokens)
    for at, token in enumerate(out):
        if not _is_size(token) or token.numbers[0] < _LEAST_RING_MM:
            continue
        now = _now(out, at)
        if now is not None:
            size, passed = now
            out[at] = token.as_("LENGTH", text=f"{size:g} mm", numbers=(size,), unit="mm")
            out[passed] = out[passed].as_("FILLER", value="")
    return out


def _now(tokens: list[Token], at: int) -> tuple[float, int] | None:
    """How thick it is now, mm, and where that is told; None where nothing was taken off."""
    was = tokens[at].numbers[0]
    for place in range(at + 1, min(len(tokens), at + _REACH)):
        if not _is_size(tokens[place]):
            continue
        told = tokens[place].numbers[0]
        led = [one for one in tokens[at + 1 : place] if one.text.casefold() not in _DOWN]
        worked = any(WORKED_DOWN in one.groups for one in tokens[max(0, at - _LED) : place])
        if led and led[-1].value == _TO and worked and 0 < was - told <= min(_MOST_OFF_MM, was / 2):
            return told, place
        behind = any(WORKED_DOWN in one.groups for one in tokens[place + 1 : place + _NEAR])
        joined = bool(led) and led[-1].value == "with" and behind and tokens[place + 1].kind != "PIECE"
        if (joined or (len(led) == 1 and led[0].text.casefold() in _LESS)) and 0 < told <= min(_MOST_OFF_MM, was / 2):
            return round(was - told, 4), place
        return None
    return None


def _is_size(token: Token) -> bool:
    fine = "." in token.text or token.is_mm
    return token.kind in ("LENGTH", "NUMBER") and token.unit in ("", "mm") and fine and len(token.numbers) == 1
