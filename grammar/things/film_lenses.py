"""Lenses told by the film that they are for: '16mm lenses: 10, 25 and 75 mm C', 'a 16mm cine lens' of that length."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Final

from grammar.words.tokens import Token, is_plural

_LENGTHS: Final = frozenset(["LENGTH", "FOCAL", "COMBO"])
_WANTED: Final = frozenset(["equiv", "dof", "match", "how-close", "frame-filling", "field"])  # asked of a focal length
_FILM: Final = re.compile(r"(\d+(?:\.\d+)?) ?mm\b")
_NUMBERED: Final = _LENGTHS | {"RANGE", "NUMBER"}
_PROJECTOR: Final = "projector"
_ZOOM: Final = "zoom"
_GAUGES: Final = frozenset([8.0, 9.5, 16.0])  # mm, of cine films, which the lenses of cine cameras go by
_SEVERAL: Final = 2


def without_film_head(tokens: list[Token]) -> list[Token]:
    """'16mm lenses: 10mm, 25mm, 75mm C mounts': before a row of lengths with their mount the film is no lens more."""
    for at, (token, head) in enumerate(pairwise(tokens)):
        film = token.kind in ("LENGTH", "FORMAT") and bool(token.ids) and bool(_FILM.match(token.text))
        if not film or head.kind != "LENS" or not is_plural(head):
            continue
        behind = tokens[at + 2 :]
        mounted = any(one.kind == "MOUNT" for one in behind)
        if mounted and sum(one.kind in _LENGTHS and one.text != token.text for one in behind) >= _SEVERAL:
            return [*tokens[:at], *behind]
    return tokens


def with_zooms_of_film(tokens: list[Token]) -> list[Token]:
    """'an old 16mm zoom', '12-120 16mm zoom': no zoom is known by one focal length, so that this is its film."""
    out = list(tokens)
    for at, (token, zoom) in enumerate(pairwise(tokens)):
        film = token.is_mm and bool(token.ids) and "format" in token.implies and token.numbers[0] in _GAUGES
        if film and zoom.kind == "KIND" and zoom.value == _ZOOM:
            out[at] = token.as_("FORMAT")
    return out


def with_focal_of_film(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'16mm cine lens on MFT, equivalent': where a length is wanted and no other is told, it is the lens's too."""
    if not told & _WANTED or any(one.kind in _NUMBERED and one.unit in ("", "mm") for one in tokens):
        return tokens
    for at, token in enumerate(tokens):
        film = _FILM.match(token.text) if token.kind == "FORMAT" else None
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        shown = after is not None and after.value == _PROJECTOR  # those are far longer than their film is wide
        if film is None or after is None or shown or after.kind not in ("LENS", "KIND") or is_plural(after):
            continue
        length = token.as_("LENGTH", text=film[1], numbers=(float(film[1]),), unit="mm", ids=(), value=film[1])
        return [*tokens[:at], length, *tokens[at:]]
    return tokens
