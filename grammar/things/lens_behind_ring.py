"""A length told anew behind a ring that then does what lenses do: 'with my M42-Z ring, the 55 mm stops at 6 m'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import DRAWN
from grammar.words.groups import AFTER_SUBJECT, OF_FOCUSING
from grammar.words.tokens import Token, is_plural

_SHORTEST: Final = 8.0  # mm, of a lens that is told by its length alone
_TAIL: Final = "TAIL"  # a number that follows its head
_AHEAD: Final = 3  # tokens from what leads to what is done


def with_lens_behind(tokens: list[Token]) -> list[Token]:
    """The length is that of the lens, and a break stands before it: a ring neither focuses nor is soft."""
    if any(one.kind in ("LENS", "KIND", "FOCAL", "COMBO") for one in tokens):
        return tokens  # a lens is told else: the length may be the ring's
    out: list[Token] = []
    for at, token in enumerate(tokens):
        if _is_lens(tokens, at):
            out += [Token("CUE", "", token.column), token.as_("FOCAL")]
        else:
            out.append(token)
    return out


def _is_lens(tokens: list[Token], at: int) -> bool:
    token = tokens[at]
    article = at > 1 and tokens[at - 1].kind == "DET"
    whole = token.is_mm and token.numbers[0] >= _SHORTEST and token.numbers[0] == int(token.numbers[0])
    if not (article and whole):
        return False
    behind = tokens[at - 2] if tokens[at - 2].kind != "JOIN" else tokens[at - 3] if at > _AHEAD - 1 else None
    return behind is not None and behind.kind == "PIECE" and not is_plural(behind) and _does_focus(tokens[at + 1 :])


def _does_focus(rest: list[Token]) -> bool:
    """'... won't focus', '... is only sharp', '... stops at': at once, or behind words that only lead to it."""
    for one in rest[:_AHEAD]:
        if OF_FOCUSING in one.groups:
            return True
        if AFTER_SUBJECT not in one.groups:
            return False
    return False


def is_lens_behind_sized_ring(out: list[Token], tokens: list[Token], at: int) -> bool:
    """'my M42-E ring is 27.5, 28mm: infinity?': the ring has its length, and no lens is told yet."""
    token, before = tokens[at], out[-3:]
    whole = token.is_mm and token.numbers[0] >= _SHORTEST and "." not in token.text
    parted = [one.kind for one in before[1:]] == [_TAIL, "JOIN"] and before[2].text == "," and "." in before[1].text
    lens = any(one.kind in ("FOCAL", "COMBO", "LENS") for one in tokens)
    ring = parted and before[0].kind == "PIECE" and before[0].value not in DRAWN and not is_plural(before[0])
    return whole and ring and not lens and any(one.kind == "LINK" for one in out)
