"""Lengths that an answer tells in millimetres, told in inches as well where they are asked for so."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import numbers
from engine.answers.parts.wording import listed, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_INCH
from grammar.kinds import COMPARE, COVERAGE, DEFINITION
from grammar.questions import Question

# what may be asked for so, in the order told; distances are told in feet and inches by the answers themselves
_LENGTHS: Final = {
    "shim_mm": "shim", "hole_mm": "hole", "ring_thickness_mm": "ring", "register_difference_mm": "difference",
    "register_mm": "register", "image_circle_mm": "image circle", "format_width_mm": "width",
    "format_height_mm": "height", "format_diagonal_mm": "diagonal", "thread_diameter_mm": "thread",
    "thread_pitch_mm": "pitch", "bore_mm": "bore", "crop_width_mm": "crop width", "crop_height_mm": "crop height",
}  # fmt: skip
_MADE: Final = frozenset(["shim_mm", "hole_mm", "ring_thickness_mm"])  # what is to be made is asked for alone
_SEEN: Final = frozenset([COVERAGE, DEFINITION, COMPARE])  # kinds that ask for nothing to be made
_MOST: Final = 3
_SIZES: Final = ("thickness", "length", "layer", "numbers", "total")
_THICKEST_MM: Final = 3.0  # of what is told in thousandths of an inch
_EXACT: Final = 0.05  # an interval no wider than this share is told by its middle


def with_inches(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer, led by its lengths in inches: the first of each kind."""
    told: dict[str, str] = {}
    if question.mentions("mm-asked"):
        return answer
    for row in answer.quantities:
        if row.name in _LENGTHS and row.name not in told and is_known(row.value):
            told[row.name] = f"{_LENGTHS[row.name]} {_inches(row.value)} in"
    if answer.intent in _SEEN:
        told = {name: text for name, text in told.items() if name not in _MADE}
    made = [name for name in told if name in _MADE]
    shown = [told[name] for name in (made[:1] or list(told))][:_MOST]
    if not shown:
        return answer
    return replace(answer, lines=(Line("head", f"In inches: {listed(shown)}."), *answer.lines))


def converted(question: Question) -> Told:
    """'12 thou of shim is how many mm', '0.3 mm in thou': so thin a thing in the other unit."""
    sizes, asked_mm = numbers(question, *_SIZES), bool(question.places("mm-asked"))
    asked = question.mentions("thou-or-inch") and (asked_mm or question.places("thou-asked"))
    if len(sizes) != 1 or not asked or not 0 < sizes[0] <= _THICKEST_MM:
        return Told()
    size = sizes[0]
    if question.lenses or question.bodies or question.said("mark") is not None:
        return Told()
    thou = f"{trimmed(size / MM_PER_INCH * 1000, 1)} thou"
    text = f"{thou} is {trimmed(size, 3)} mm." if asked_mm else f"{trimmed(size, 3)} mm is {thou}."
    return Told((Line("head", text),), (Quantity("shim_mm", Interval.exact(size)),))


def _inches(value: Interval) -> str:
    digits = 4 if abs(value.nominal) < MM_PER_INCH else 3
    low, high = (f"{end / MM_PER_INCH:.{digits}f}" for end in (value.least, value.greatest))
    if value.greatest - value.least <= _EXACT * abs(value.nominal):
        return f"{value.nominal / MM_PER_INCH:.{digits}f}"
    return f"{low} to {high}"
