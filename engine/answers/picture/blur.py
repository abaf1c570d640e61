"""The blur that still counts as sharp: told in mm, as two pixels of the body named, else a share of the diagonal."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number_beside, numbers
from engine.answers.picture.pixels import pixels_of
from engine.facts.records import Format
from grammar.questions import Question

LARGEST_TOLD_MM = 0.5  # a larger 'circle' is an image circle
PIXELS = 2.0
MOST_PIXELS = 20.0


def blur_told(question: Question, forms: Sequence[Format], knowledge: Knowledge) -> float | None:
    """The blur in mm where the question tells it, by length or by pixels; None where it does not."""
    told = next((value for value in numbers(question, "blur", "circle", "length") if 0 < value < LARGEST_TOLD_MM), None)
    if told is not None:
        return told
    if not mentions(question, "pixel") and question.said("pixels") is None:
        return None
    told = number_beside(question, "pixels")
    told = told if told is not None and told <= MOST_PIXELS else None  # '6000 x 4000 pixels' is no blur
    count = told if told is not None else 1.0 if mentions(question, "one-pixel") else PIXELS
    for form in forms:
        pixels = pixels_of(question, form, knowledge.catalogue)
        if pixels is not None:
            return count * form.width_mm / pixels[0]
    return None


def blur_of(question: Question, form: Format, knowledge: Knowledge) -> float:
    """The allowed blur on this area, in mm."""
    told = blur_told(question, (form,), knowledge)
    divisor = knowledge.catalogue.assumptions["blur-divisor"].value.nominal
    return told if told is not None else hypot(form.width_mm, form.height_mm) / divisor
