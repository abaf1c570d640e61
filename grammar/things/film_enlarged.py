"""Whether a number is the film a lens is of, or its focal length: '35mm' of an enlarger lens, '645 on 44x33'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import CAMERA_BUILD
from grammar.words.tokens import Token

FULL_FRAME: Final = "35mm-full-frame"
LONGEST_LENS: Final = 600.0  # mm, of a bare number
_FILM_MM: Final = 35.0
_ENLARGER: Final = "enlarger"
_FOR: Final = frozenset(["made-for", "for", "from"])
_NEAR: Final = 4  # tokens
_OF_PIECES: Final = ("PIECE", "MEASURE")


def is_film_enlarged(tokens: list[Token], at: int) -> bool:
    """'a 35mm enlarger lens, 50 2.8', 'for 35mm': beside a focal length the width of the film that it was made for."""
    token, after, before = tokens[at], tokens[at + 1 : at + 2], tokens[max(0, at - 1) : at]
    if token.kind != "LENGTH" or token.unit != "mm" or token.numbers != (_FILM_MM,):
        return False
    of_film = any(one.value == _ENLARGER for one in after) or any(one.value in _FOR for one in before)
    return of_film and any(one.value == _ENLARGER for one in tokens) and _has_other_focal(tokens, at)


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
