"""What a lens was made for, by the days it is of: 'a 12 mm, 16 mm neg era', '75 mm off a 16 mm kit'."""

from __future__ import annotations

from typing import Final

from grammar.things.film_enlarged import LONGEST_LENS
from grammar.words.groups import ERA, OUTFIT, YEARS
from grammar.words.tokens import Token

_FORMAT: Final = "format"
_FILM: Final = frozenset(["MOTIF", "FRAME", "BODY", "KIND"])  # 'the 16 mm neg era', 'Super 8 camera days'
_OUT_OF: Final = frozenset(["from", "of", "in"])
_ENDING_LENS: Final = frozenset(["LENS", "KIND", "LENGTH", "COMBO", "FNUM", "MOUNT"])
_BETWEEN: Final = frozenset(["JOIN", "DET", "MARK"])


def with_eras_told(tokens: list[Token]) -> list[Token]:
    """The format of such days becomes one that a lens is made for; the word for the days falls away."""
    out = _without_years(tokens)
    at = 0
    while at < len(out):
        end = _days_behind(out, at)
        if end is not None:
            del out[at + 1 : end + 1]
            out[at] = out[at].as_("FORMAT")
            _lead(out, at)
        at += 1
    return out


def _without_years(tokens: list[Token]) -> list[Token]:
    """'20 yrs of news work', 'after 30 years': so many years are told of nobody's lens."""
    years = [at for at, one in enumerate(tokens) if at and YEARS in one.groups and tokens[at - 1].kind == "NUMBER"]
    idle = {*years, *(at - 1 for at in years)}
    return [one.as_("FILLER", ids=(), implies=()) if at in idle else one for at, one in enumerate(tokens)]


def _days_behind(tokens: list[Token], at: int) -> int | None:
    """Where the word for the days stands that a format is told of; None where none does."""
    token = tokens[at]
    if not token.ids or (token.kind != "FORMAT" and _FORMAT not in token.implies):
        return None
    end = at + 1
    if end < len(tokens) and tokens[end].kind in _FILM:
        end += 1
    if end >= len(tokens):
        return None
    out_of = _led(tokens, at) or (token.kind == "NUMBER" and token.numbers[0] > LONGEST_LENS)  # 'a 645 kit'
    days = ERA in tokens[end].groups or (out_of and OUTFIT in tokens[end].groups)
    return end if days else None


def _led(tokens: list[Token], at: int) -> bool:
    before = [one for one in tokens[max(0, at - 2) : at] if one.kind != "DET"]
    return bool(before) and before[-1].kind == "PREP" and before[-1].value in _OUT_OF


def _lead(tokens: list[Token], at: int) -> None:
    """What tells of the lens before it, or leads to it, says that the lens was made for it."""
    if _led(tokens, at):
        place = next(n for n in range(at - 1, -1, -1) if tokens[n].kind == "PREP")
        tokens[place] = tokens[place].as_("PREP", value="made-for")
        return
    first = at
    while first and tokens[first - 1].kind in _BETWEEN:
        first -= 1
    behind = tokens[at + 1] if at + 1 < len(tokens) else None
    joined = behind is None or behind.kind not in _ENDING_LENS
    if first and tokens[first - 1].kind in _ENDING_LENS and joined:
        tokens[first:at] = [Token("PREP", "", tokens[at].column, "made-for")]
        return
    rest = at + 1
    while rest < len(tokens) and tokens[rest].kind in _BETWEEN:
        rest += 1
    if rest < len(tokens) and tokens[rest].kind in _ENDING_LENS:
        del tokens[at + 1 : rest]  # '16 mm era, a 12 mm wide' is a 16 mm era 12 mm wide
