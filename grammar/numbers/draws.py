"""The two ends of what is drawn out, as they are typed: '45 to 170'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

LONGEST: Final = 400.0  # mm, of a piece
_ENDS: Final = 3  # tokens: two lengths, and the word between


def is_bare(token: Token) -> bool:
    """A number that may be a length of a piece, without its unit."""
    return token.kind == "NUMBER" and not token.text[:1].isalpha() and 0.05 <= token.numbers[0] <= LONGEST


def is_length(token: Token) -> bool:
    return is_bare(token) or token.is_mm


def draw_at(out: list[Token], at: int) -> tuple[int, int] | None:
    """Where the two ends of a draw stand, '45 to 170'; None where there are none."""
    if at + 2 >= len(out) or not is_length(out[at]) or not (out[at + 1].kind == "PREP" and out[at + 1].value == "to"):
        return None
    last = out[at + 2]
    if not is_length(last):
        return None
    return (at, at + 2) if out[at].numbers[0] < last.numbers[0] <= LONGEST else None


def tell_draw_before(out: list[Token], piece: int) -> int:
    """'a 25 to 55 m42 helicoid': the ends before it told as one RANGE; gives how many tokens fewer there are."""
    end = piece
    while end and out[end - 1].kind in ("MOUNT", "LETTER"):
        end -= 1
    ends = draw_at(out, end - _ENDS) if end >= _ENDS else None
    if ends is None:
        return 0
    low, high = (out[one].numbers[0] for one in ends)
    out[ends[0] : ends[1] + 1] = [out[ends[0]].as_("RANGE", numbers=(low, high), unit="mm")]
    return _ENDS - 1
