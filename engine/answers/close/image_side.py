"""How large things are wanted or get, where the magnification is told, or how far behind the lens the image stands."""

from __future__ import annotations

from engine.answers.parts.said import focals, number
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question


def size_told(question: Question) -> float | None:
    """The magnification told; else what the image distance told makes it, from the rear principal plane."""
    told = number(question, "magnification")
    image, lenses = number(question, "image_distance"), focals(question)
    if told is not None or image is None or not lenses:
        return told
    size = closeup.magnification_at_image_distance(Interval.exact(lenses[0]), Interval.exact(image))
    return size.nominal or None if is_known(size) else None
