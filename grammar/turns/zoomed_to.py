"""A focal length at which the zoom of before is set: 'and at 12.5', 'zoomed to 75', 'at the long end'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.questions import Question, Thing
from grammar.words.groups import LONG_END, WIDE_END
from grammar.words.token_kinds import SIZES

_ZOOM: Final = "zoom"
_MEASURED: Final = frozenset(["flange_to_image", "circle", "barrel", "rear_reach", "thread", "thickness", "extension"])
_BESIDE: Final = frozenset(["FORMAT", "FNUM"])
_OTHERS: Final = frozenset(["MOUNT", "BODY", "PIECE", "FORMAT", "FNUM", "COMBO", "RANGE", "KEYED"])


def zoomed_to(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """The zoom of before at the focal length told; None where none of its range is told, or anything else is."""
    said = before.said(_ZOOM)
    others = _OTHERS - _BESIDE if _is_led(heard) else _OTHERS
    if _MEASURED & heard.readings.values.keys():
        return None  # 'register is 13' of a zoom from 8 to 64
    if said is None or len(before.lenses) != 1 or any(token.kind in others for token in heard.line.tokens):
        return None
    low, _, high = said.removesuffix(" mm").partition("..")
    ends = (float(low), float(high))
    at = _set_at(heard, ends)
    return (replace(before.lenses[0], focal_length_mm=at),) if at is not None else None


def _is_led(heard: Heard) -> bool:
    """'at 135 on APS-C': what stands behind 'at' is what it is set to, whatever frame or stop is told beside it."""
    pairs = pairwise(heard.line.tokens)
    return any(one.kind == "PREP" and one.value == "at" and other.kind in SIZES for one, other in pairs)


def _set_at(heard: Heard, ends: tuple[float, float]) -> float | None:
    numbers = [
        token.numbers[0] for token in heard.line.tokens
        if token.kind in SIZES and not token.text.isalpha() and token.unit in ("", "mm")
    ]  # fmt: skip
    if len(numbers) == 1:
        return numbers[0] if ends[0] <= numbers[0] <= ends[1] else None
    if numbers:
        return None
    if _tells(heard, WIDE_END) and _tells(heard, LONG_END):
        return None  # 'sharp at tele but soft at wide'
    if _tells(heard, WIDE_END):
        return ends[0]
    return ends[1] if _tells(heard, LONG_END) else None


def _tells(heard: Heard, group: str) -> bool:
    """Whether a word of the group stands there, or two that are of it together: 'short end'."""
    tokens = heard.line.tokens
    pairs = (one.listed.of(f"{one.text} {other.text}") for one, other in pairwise(tokens))
    return any(group in one.groups for one in tokens) or any(group in found for found in pairs)
