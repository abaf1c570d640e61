"""A crop mode told by its factor, '2x digital tele': the part of the body's frame that it uses."""

from __future__ import annotations

from collections.abc import Sequence
from math import prod

from engine.answers.parts.said import numbers
from engine.answers.picture.crop_factors import is_own
from engine.answers.picture.frames import TOLD
from engine.facts.records import Format
from grammar.questions import Question


def in_mode(frames: Sequence[Format], question: Question) -> list[Format]:
    """Each frame as the crop told leaves it; as it is where none is told, or where the crop told is its own."""
    told = numbers(question, "crop")
    if not told or ":" in (question.said("crop") or ""):
        return list(frames)
    factor = prod(told)
    return [form if factor <= 1 or is_own(form, factor, question) else _cropped(form, factor) for form in frames]


def _cropped(form: Format, factor: float) -> Format:
    wide, high = form.width_mm / factor, form.height_mm / factor
    return Format(f"{form.id} cropped {factor:g}x", f"{form.name} cropped {factor:g}x", wide, high, TOLD)
