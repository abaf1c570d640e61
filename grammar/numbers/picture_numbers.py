"""Bare numbers of the picture: a magnification beside its word, the shape of a frame, how many pixels a sensor has."""

from __future__ import annotations

import re
from typing import Final

from grammar.numbers.focal_numbers import LENSLIKE
from grammar.words.groups import OF_SHAPE, OF_SIZE
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_SHAPES: Final = frozenset([1.33, 1.66, 1.78, 1.85, 2.35, 2.39, 2.4, 2.76])
_LIT: Final = frozenset(["cover", "vignette", "image-circle", "crop", "disc"])  # cues of light and crop
_COVERAGE: Final = "after-coverage"
_CLOSE: Final = frozenset(["macro", "how-close", "frame-filling", "working-distance", "bellows-factor"])
_LARGEST: Final = 20.0  # times that a lens enlarges

_PIXELS: Final = "pixels"
_ACROSS: Final = (1200.0, 20000.0)  # pixels, of sensors
_UPRIGHT: Final = re.compile(r"[2-9]:[2-9]")  # '4:5', '2:3': after what is lit no thing and its image
_NARROWEST: Final = 0.5
_LINES: Final = frozenset([720.0, 1080.0, 2160.0])  # of recordings
_YEARS: Final = (1840.0, 2035.0)
_MILLIONS: Final = (3.0, 250.0)
_LEADING: Final = frozenset(["of", "from", "has", "have", "be", "with", "out of"])  # before how many there are


def with_pixels_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'how many pixels are left of 4608', 'the sensor is 5184 wide', 'how many megapixels if it has 24'."""
    if any(one.kind == "PIXELS" for one in tokens):
        return tokens
    out = list(tokens)
    for at, token in enumerate(tokens):
        if token.kind != "NUMBER" or not token.text.isdecimal():
            continue
        number, before = token.numbers[0], tokens[at - 1] if at else None
        wide = at + 1 < len(tokens) and tokens[at + 1].text.casefold() in ("wide", "across")
        led = before is not None and bool({before.value, before.text.casefold()} & _LEADING)
        if _MILLIONS[0] <= number <= _MILLIONS[1] and "megapixels" in told and led and _ends(tokens, at):
            out[at] = token.as_("PIXELS", value=f"{token.text} megapixels", numbers=(number * 1e6,))
        elif number in _LINES and (_COVERAGE in told or "recording" in told):
            out[at] = token.as_("CUE")  # 'does 1080 work'
        elif _ACROSS[0] <= number <= _ACROSS[1] and not _YEARS[0] <= number <= _YEARS[1]:
            sensor = wide and any(one.kind in ("FRAME", "BODY") for one in tokens[max(0, at - 4) : at])
            if _PIXELS in told or sensor or (_COVERAGE in told and (led or wide)):
                out[at] = token.as_("PIXELS", value=f"{token.text} pixels across")
                out[at + 1 : at + 2] = [one.as_("CUE") if wide else one for one in out[at + 1 : at + 2]]
    return out


def _shape_of(token: Token) -> str:
    """Its sides as typed, where it is told by two."""
    return token.text.replace(" ", "") if token.kind == "RATIO" else f"{token.numbers[0]:g}:1"


def _ends(tokens: list[Token], at: int) -> bool:
    return at + 1 == len(tokens) or tokens[at + 1].kind in ("STOP", "MARK", "JOIN", "FILLER")


def with_shapes_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'2.39 on APS-C, 22 mm circle', '2:1 crop': where light or crop is asked about, numbers that only shapes have.

    A shape between words for one is left to what stands around it.
    """
    after = _COVERAGE in told  # 'does it cover' was asked before
    pictured = told & _LIT or after or any((one.kind, one.value) == ("MEASURE", "circle") for one in tokens)
    if not pictured or told & _CLOSE:
        return tokens
    return [
        token.as_("ASPECT", value=_shape_of(token)) if _is_shape_alone(tokens, at, after) else token
        for at, token in enumerate(tokens)
    ]


def _is_shape_alone(tokens: list[Token], at: int, goes_on: bool) -> bool:
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    if token.kind == "RATIO":
        text = token.text.replace(" ", "")
        upright = bool(_UPRIGHT.fullmatch(text)) and _NARROWEST <= token.numbers[0] <= 1
        among = text == "1:1" and any(one.kind == "ASPECT" for one in tokens)  # 'clean in 16:9 and 1:1'
        return text == "2:1" or among or (goes_on and (text == "1:1" or upright))
    if token.kind not in ("NUMBER", "FNUM", "LIMIT") or not token.text[-1:].isdigit() or not token.numbers:
        return False
    of_lens = after is not None and after.kind in LENSLIKE
    return token.numbers[0] in _SHAPES and token.numbers[0] not in STOPS and not of_lens and "f" not in token.text


def is_size(tokens: list[Token], at: int, told: frozenset[str]) -> bool:
    """'mag 0.5', '0.25 magnification': beside the word for it a decimal that no stop is written like."""
    token, beside = tokens[at], (*tokens[max(0, at - 1) : at], *tokens[at + 1 : at + 2])
    size = "." in token.text and 0.02 <= token.numbers[0] <= 10 and token.numbers[0] not in STOPS
    return size and "how-big" in told and any(one.kind == "CUE" and one.text[:1].isalpha() for one in beside)


def is_size_named(tokens: list[Token], at: int) -> bool:
    """'mag of 3', 'magnification 0.4': right behind the word, and of no lens."""
    led = [n for n in range(max(0, at - 2), at) if tokens[n].value not in ("of", "be", "equals", "at")]
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    return (
        bool(led)
        and names_size(tokens, led[-1])
        and tokens[at].numbers[0] <= _LARGEST
        and (after is None or after.kind not in LENSLIKE)
    )


def names_size(tokens: list[Token], at: int) -> bool:
    return at < len(tokens) and OF_SIZE in tokens[at].groups


def is_shape(tokens: list[Token], at: int) -> bool:
    """'a 2.39 crop', 'in 1.85': the shape of a frame as it is named on a cinema screen."""
    around = (*tokens[max(0, at - 3) : at], *tokens[at + 1 : at + 3])
    return tokens[at].numbers[0] in _SHAPES and any(OF_SHAPE in token.groups for token in around)
