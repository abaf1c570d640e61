"""How large things are wanted or get, where the magnification is told, or how far behind the lens the image stands."""

from __future__ import annotations

from engine.answers.parts.said import focals, number
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question

LEAST_DRAWN_MM = 100.0  # less may be the register of a mount


def size_told(question: Question) -> float | None:
    """The magnification told; else what the image distance told makes it, from the rear principal plane."""
    told, lenses = number(question, "magnification"), focals(question)
    image = number(question, "image_distance")
    if image is None:
        image = number(question, "flange_to_image")  # 'the lens is 120 mm from the sensor'
        named = any(lens.ids for lens in question.lenses)
        image = None if image is not None and named and image < LEAST_DRAWN_MM else image
    if image is not None and lenses and image < lenses[0]:
        return told
    if told is not None or image is None or not lenses:
        return told
    size = closeup.magnification_at_image_distance(Interval.exact(lenses[0]), Interval.exact(image))
    return size.nominal or None if is_known(size) else None
