"""Whether a focal length told after a lens is only what that lens frames like on the body: 'so it is a 75 then'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import mentions
from engine.answers.picture.crop_factors import crop_of, is_view
from engine.answers.picture.frames import frames_named
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.questions import Question

_WAYS: Final = ("chain", "focus-verdict")  # kinds that another lens would be asked of


def as_view(question: Question, before: Question | None, facts: Catalogue) -> Question:
    """The question as one of what the lens of before frames like, where the length told is that; else as it is."""
    if before is None or not question.follows or len(question.lenses) != 1 or before.lens is None:
        return question
    if question.intent not in _WAYS:
        return question  # what to enter for the stabiliser is told of the length itself
    told, own = question.lenses[0].focal_length_mm, before.lens.focal_length_mm
    if told is None or own is None or not mentions(question, "likened-view"):
        return question
    for form in frames_named(question, facts):
        if is_view(own, told, crop_of(form).by_diagonal):
            # which of the body's frames is meant the length tells
            bodies = tuple(replace(body, format=body.format or form.id) for body in question.bodies)
            return question.with_(intent="crop-equivalent", topic=None, lenses=(before.lens,), bodies=bodies)
    return question
