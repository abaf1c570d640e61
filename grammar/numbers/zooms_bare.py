"""Zooms told by their ends alone: 'a 70-200', 'my 35-105 f3.5', where nothing else is so long; what is only zoomed."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import DRAWN
from grammar.words.groups import ZOOMED, ZOOMED_INTO, ZOOMS
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_ENDS: Final = (8.0, 1200.0)  # mm
_RATIO: Final = (1.25, 15.0)  # of the long end to the short one
_LONG: Final = 28.0  # mm, that the long end has at least
_OWN: Final = frozenset(["KIND", "LENS", "PIECE", "MOUNT", "LETTER", "MEASURE", "MOUNTWORD", "BODY", "FRAME"])
_FOCALS: Final = frozenset(["COMBO", "FOCAL", "NAMED"])
_GOING_ON: Final = "after-"


def with_zooms_named(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """A range with an article before it becomes a zoom; of a talk that goes on it may be a piece that was named."""
    drawn = any(one.kind == "PIECE" and one.value in DRAWN for one in tokens)
    if drawn or any(one.kind in _FOCALS for one in tokens):
        return tokens
    ranges = [at for at, one in enumerate(tokens) if one.kind == "RANGE"]
    if len(ranges) != 1 or not _is_zoom(tokens, ranges[0], told):
        return tokens
    at, rest = ranges[0], tokens[ranges[0] + 1 :]
    if rest and rest[0].kind == "NUMBER" and rest[0].numbers[0] in STOPS and "." in rest[0].text:
        rest = [rest[0].as_("FNUM"), *rest[1:]]  # 'a 70-200 2.8'
    return [*tokens[: at + 1], Token("KIND", "zoom", tokens[at].column, "zoom"), *rest]


def without_zooming(tokens: list[Token]) -> list[Token]:
    """'can i just zoom in the picture', 'how zoomed in is that': what is done with a picture, and no kind of lens."""
    return [one.as_("CUE") if _is_done(tokens, at) else one for at, one in enumerate(tokens)]


def _is_done(tokens: list[Token], at: int) -> bool:
    token = tokens[at]
    if token.kind != "KIND" or token.value != "zoom":
        return False
    before = tokens[at - 1] if at else None
    into = any(ZOOMED_INTO in one.groups for one in tokens[at + 1 : at + 2])
    mount = any(one.kind in _OWN for one in tokens[at + 2 : at + 3])  # 'a zoom in B4'
    led = before is not None and ZOOMS in before.listed.of(before.text.split()[-1])
    return ZOOMED in token.groups or led or (into and not mount)


def _is_zoom(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    token = tokens[at]
    before = tokens[at - 1] if at else None
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    if token.unit not in ("", "mm") or (after is not None and after.kind in _OWN):
        return False
    low, high = min(token.numbers), max(token.numbers)
    fits = _ENDS[0] <= low and _LONG <= high <= _ENDS[1] and _RATIO[0] <= high / low <= _RATIO[1]
    whole = low == int(low) and high == int(high)
    led = before is not None and (before.kind == "DET" or before.text.casefold() == "a")
    stopped = after is not None and (after.kind == "FNUM" or (after.kind == "NUMBER" and "." in after.text))
    fresh = not any(one.startswith(_GOING_ON) and one != _GOING_ON for one in told)
    return fits and whole and (led or (fresh and (stopped or before is None)))
