"""Bare numbers of the picture: a magnification beside its word, the shape of a frame as cinema screens name it."""

from __future__ import annotations

from typing import Final

from grammar.numbers.focal_numbers import LENSLIKE
from grammar.words.groups import OF_SHAPE, OF_SIZE
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_SHAPES: Final = frozenset([1.33, 1.66, 1.78, 1.85, 2.35, 2.39, 2.4, 2.76])
_LIT: Final = frozenset(["cover", "vignette", "image-circle", "crop", "disc"])  # cues of light and crop
_CLOSE: Final = frozenset(["macro", "how-close", "frame-filling", "working-distance", "bellows-factor"])
_LARGEST: Final = 20.0  # times that a lens enlarges


def with_shapes_told(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """'2.39 on APS-C, 22 mm circle', '2:1 crop': where light or crop is asked about, numbers that only shapes have.

    A shape between words for one is left to what stands around it.
    """
    pictured = told & _LIT or any((one.kind, one.value) == ("MEASURE", "circle") for one in tokens)
    if not pictured or told & _CLOSE:
        return tokens
    return [
        token.as_("ASPECT", value=f"{token.numbers[0]:g}:1") if _is_shape_alone(tokens, at) else token
        for at, token in enumerate(tokens)
    ]


def _is_shape_alone(tokens: list[Token], at: int) -> bool:
    token, after = tokens[at], tokens[at + 1] if at + 1 < len(tokens) else None
    if token.kind == "RATIO":
        return token.text.replace(" ", "") == "2:1"
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
    led = [n for n in range(max(0, at - 2), at) if tokens[n].value not in ("of", "be", "equals")]
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
