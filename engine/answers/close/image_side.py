"""How large things are wanted or get, where the magnification is told, or how far behind the lens the image stands."""

from __future__ import annotations

from engine.answers.parts.said import focals, number
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question

LEAST_DRAWN_MM = 100.0  # less may be the register of a mount


def image_told_mm(question: Question) -> float | None:
    """How far behind the lens the image is told to stand; 'the lens is 120 mm from the sensor' tells it too."""
    image = number(question, "image_distance")
    if image is not None:
        return image
    image = number(question, "flange_to_image")
    named = any(lens.ids for lens in question.lenses)
    return None if image is not None and named and image < LEAST_DRAWN_MM else image


def size_told(question: Question) -> float | None:
    """The magnification told; else what the image distance told makes it, from the rear principal plane."""
    told, lenses, image = number(question, "magnification"), focals(question), image_told_mm(question)
    if image is not None and lenses and image < lenses[0]:
        return told
    if told is not None or image is None or not lenses:
        return told
    size = closeup.magnification_at_image_distance(Interval.exact(lenses[0]), Interval.exact(image))
    return size.nominal or None if is_known(size) else None
