"""The size that tubes gave one lens, wanted of another: 'same scale off a 50, tube?' after a 135 mm with 50 mm."""

from __future__ import annotations

import re
from itertools import pairwise
from typing import Final

from grammar.hearing import Heard
from grammar.kinds import CLOSE_UPS
from grammar.questions import Question
from grammar.things.casting import DRAWN
from grammar.words.groups import LIKE_BEFORE, SIZE_SAID
from grammar.words.tokens import Token

_FOCALS: Final = (8.0, 1200.0)  # mm
_LENGTH: Final = re.compile(r"(\d+(?:\.\d+)?) mm")
_NUMBER: Final = re.compile(r"\d+(?:\.\d+)?")
_ELSE: Final = ("dof", "exposure", "nd", "working-distance", "how-wide", "why", "vignette", "cover", "better")


def size_again(heard: Heard, before: Question) -> str | None:
    """That lens at the size of before, with tubes; None where no size was told, or another matter is asked."""
    size, tokens = _size(before), heard.line.tokens
    told = [one for one in tokens if one.numbers and not one.text.isalpha()]
    if size is None or len(told) != 1 or any(map(heard.tells, _ELSE)) or not _is_focal(told[0], before):
        return None
    if heard.cast.bodies or heard.cast.frames or heard.readings.f_number is not None or heard.readings.distance_mm:
        return None
    if not (heard.tells("same-scale") or heard.tells("match") or _says_so_large(tokens)):
        return None
    return f"{told[0].numbers[0]:g} mm lens at {size:.4g}x with a tube"


def _size(before: Question) -> float | None:
    """How large the one lens of before drew, by its tubes or as it was told; None where that is not known."""
    lens = before.lens
    if before.intent not in CLOSE_UPS or len(before.lenses) != 1 or lens is None or not lens.focal_length_mm:
        return None
    told = _NUMBER.fullmatch(before.said("magnification") or "")
    if told is not None:
        return float(told[0])
    out = _LENGTH.fullmatch(before.said("extension") or "")
    tubes = [one for one in before.adapters if one.piece in DRAWN and one.is_of_one_length]
    drawn = sum(one.thickness_mm[0] for one in tubes if one.thickness_mm) + (float(out[1]) if out is not None else 0.0)
    only = len(tubes) == len(before.adapters)
    return drawn / lens.focal_length_mm if drawn and only else None


def _is_focal(token: Token, before: Question) -> bool:
    lens = before.lens
    fits = _FOCALS[0] <= token.numbers[0] <= _FOCALS[1] and token.kind in ("NUMBER", "LENGTH", "FOCAL")
    other = lens is not None and token.numbers[0] != lens.focal_length_mm
    return fits and other and token.unit in ("", "mm")


def _says_so_large(tokens: tuple[Token, ...]) -> bool:
    """'that size', 'the same magnification'."""
    return any(LIKE_BEFORE in one.groups and SIZE_SAID in two.groups for one, two in pairwise(tokens))
