"""A focal length at which the zoom of before is set: 'and at 12.5', 'zoomed to 75', 'at the long end'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import Question, Thing

_ZOOM: Final = "zoom"
_NUMBERS: Final = frozenset(["NUMBER", "LENGTH", "FOCAL"])
_OTHERS: Final = frozenset(["MOUNT", "BODY", "PIECE", "FORMAT", "FNUM", "COMBO", "RANGE", "KEYED"])
_WIDE: Final = ("wide end", "wide", "short end", "widest")
_LONG: Final = ("long end", "tele end", "long", "longest", "tele")


def zoomed_to(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """The zoom of before at the focal length told; None where none of its range is told, or anything else is."""
    said = before.said(_ZOOM)
    if said is None or len(before.lenses) != 1 or any(token.kind in _OTHERS for token in heard.line.tokens):
        return None
    low, _, high = said.removesuffix(" mm").partition("..")
    ends = (float(low), float(high))
    at = _set_at(heard, ends)
    return (replace(before.lenses[0], focal_length_mm=at),) if at is not None else None


def _set_at(heard: Heard, ends: tuple[float, float]) -> float | None:
    numbers = [
        token.numbers[0] for token in heard.line.tokens
        if token.kind in _NUMBERS and not token.text.isalpha() and token.unit in ("", "mm")
    ]  # fmt: skip
    if len(numbers) == 1:
        return numbers[0] if ends[0] <= numbers[0] <= ends[1] else None
    if numbers:
        return None
    words = f" {heard.text.casefold().strip(' ?.!')} "
    if any(f" {word} " in words for word in _WIDE):
        return ends[0]
    return ends[1] if any(f" {word} " in words for word in _LONG) else None
