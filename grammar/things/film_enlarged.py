"""Whether a number is the film a lens is of, or its focal length: '35mm' of an enlarger lens, '645 on 44x33'."""

from __future__ import annotations

from typing import Final

from grammar.things.casting import OPTICAL
from grammar.words.groups import ASKS, CAMERA_BUILD
from grammar.words.tokens import Token

FULL_FRAME: Final = "35mm-full-frame"
# what may be said last of a lens
ENDING_LENS: Final = frozenset(["LENS", "KIND", "LENGTH", "COMBO", "FNUM", "MOUNT"])
_SAME: Final = 0.04  # '25 mm' and '1 inch' are one focal length
_OF_OTHERS: Final = frozenset(["PIECE", "MEASURE", "MOUNTWORD", "LENS", "KIND"])
_SHORTEST: Final = 8.0  # mm, of a focal length told without its unit
LONGEST_LENS: Final = 600.0  # mm, of a bare number
_FILM_MM: Final = 35.0
_CINE: Final = "cine"
_TELL_LENGTHS: Final = frozenset(["COMBO", "RANGE", "NUMBER", "FOCAL"])
_ENLARGER: Final = "enlarger"
_FOR: Final = frozenset(["made-for", "for", "from"])
_NEAR: Final = 4  # tokens
_OF_PIECES: Final = ("PIECE", "MEASURE")
_VIEWED: Final = frozenset(["equiv", "match"])
_LIT_FRAMES: Final = frozenset(["FORMAT", "AREA", "FRAME", "BODY", "MOUNT", "LETTER"])


def is_film_enlarged(tokens: list[Token], at: int) -> bool:
    """'a 35mm enlarger lens, 50 2.8', 'for 35mm': beside a focal length the width of the film that it was made for."""
    token, after, before = tokens[at], tokens[at + 1 : at + 2], tokens[max(0, at - 1) : at]
    if token.kind != "LENGTH" or token.unit != "mm" or token.numbers != (_FILM_MM,):
        return False
    of_film = any(one.value == _ENLARGER for one in after) or any(one.value in _FOR for one in before)
    return of_film and any(one.value == _ENLARGER for one in tokens) and _has_other_focal(tokens, at)


def with_film_likened(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'80mm on 44x33 gives the view of what 35mm lens': the film that a lens on a frame is set against by itself."""
    if not told & _VIEWED:
        return tokens
    tokens = [one.as_("CUE", ids=()) if _is_likened(tokens, at) else one for at, one in enumerate(tokens)]
    return [one.as_(one.kind, ids=(), implies=()) if _is_seen(tokens, at) else one for at, one in enumerate(tokens)]


def _is_seen(tokens: list[Token], at: int) -> bool:
    """'8mm cine prime on a 1/2.3 inch sensor, full frame equivalent': its one focal length, and not its film."""
    token, after, others = tokens[at], tokens[at + 1 : at + 3], (*tokens[:at], *tokens[at + 1 :])
    lens = len(after) > 1 and after[0].value == _CINE and after[1].kind == "LENS"
    alone = not any(one.is_mm or one.kind in _TELL_LENGTHS for one in others)
    return token.is_mm and lens and alone and any(one.kind in _LIT_FRAMES for one in others)


def _is_likened(tokens: list[Token], at: int) -> bool:
    token, before, after = tokens[at], tokens[max(0, at - 1) : at], tokens[at + 1 : at + 2]
    if token.kind != "LENGTH" or token.unit != "mm" or token.numbers != (_FILM_MM,) or not (before and after):
        return False
    asked = before[0].kind == "CUE" and ASKS in before[0].groups and after[0].kind == "LENS"
    others = [one.kind for n, one in enumerate(tokens) if n != at and one.kind in ("LENGTH", *_LIT_FRAMES)]
    return asked and "LENGTH" in others and len(others) > 1  # '12mm on 1 inch': the frame is a length as well


def _has_other_focal(tokens: list[Token], at: int) -> bool:
    """Whether a focal length is told besides, with its stop or close behind, that is no piece's length."""
    near = range(at + 1, min(at + _NEAR, len(tokens)))
    lengths = (n for n in near if tokens[n].is_mm)
    alone = any(n + 1 >= len(tokens) or tokens[n + 1].kind not in _OF_PIECES for n in lengths)
    return alone or any(one.kind == "COMBO" for one in tokens)


def is_film_on(tokens: list[Token], at: int) -> bool:
    """'645 on 44x33': a film named by a number no lens is so long, put on another frame."""
    rest = tokens[at + 1 : at + 3]
    film = tokens[at].kind == "NUMBER" and bool(tokens[at].ids) and "format" in tokens[at].implies
    lit = [one.kind for one in rest] in (["PREP", "AREA"], ["PREP", "FORMAT"]) and rest[0].value == "on"
    return film and lit and tokens[at].numbers[0] > LONGEST_LENS


def past_build(tokens: list[Token], at: int) -> Token | None:
    """What stands there, past the words for how a camera is built: 'camera' of 'an 8mm spring wind turret camera'."""
    while at < len(tokens) - 1 and CAMERA_BUILD in tokens[at].groups:
        at += 1
    return tokens[at] if at < len(tokens) else None


def is_put_on(token: Token, before: Token | None, after: Token | None) -> bool:
    """'60 on 645 in full frame terms', '80 on 645, equivalent': no lens is so long."""
    placed = before is not None and before.kind == "PREP" and before.value == "on"
    return placed and (token.numbers[0] > LONGEST_LENS or (after is not None and after.kind == "PREP"))


def is_told_last(tokens: list[Token], at: int) -> bool:
    """'it says 1:2.8/80, 645', '80mm 645 normal lens': a film behind a lens that is told already; none is so long."""
    led = [one.kind for one in tokens[max(0, at - 2) : at]]
    led = led[:-1] if led[-1:] == ["JOIN"] else led
    return tokens[at].numbers[0] > LONGEST_LENS and bool(led) and led[-1] in ENDING_LENS


def is_frame_beside(tokens: list[Token], at: int) -> bool:
    """'9mm 2.8 1" ff eq': an inch type beside another focal length in mm; '25mm (1 inch)' is one told twice.

    A part of an inch is no focal length that people tell twice.
    """
    token = tokens[at]
    focals = [one.numbers[0] for one in tokens if one.kind == "COMBO" or one.is_mm]
    bare = [one.numbers[0] for one in tokens if one.kind == "NUMBER" and one.text.isdecimal()]
    focals = focals or [one for one in bare if one >= _SHORTEST]
    around = [one for one in tokens[max(0, at - 1) : at + 2] if one is not token]
    others = any(one.kind in _OF_OTHERS and one.value not in OPTICAL for one in around)
    if token.kind != "LENGTH" or token.unit != "in" or len(focals) != 1 or others:
        return False
    return "/" in token.value or abs(token.numbers[0] / focals[0] - 1) > _SAME
