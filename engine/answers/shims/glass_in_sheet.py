"""A flange depth that counts the glass before the sensor: longer than that of the mount by what glass does."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number
from engine.answers.parts.wording import ranged, small_mm, trimmed
from engine.answers.shims.bare_sensor import shift_of
from engine.base.compact import replace
from engine.base.interval import is_known
from grammar.questions import Question

_NEAR_MM: Final = 0.02  # as sheets round


def with_glass_in_sheet(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """That the glass accounts for the difference, t(1 - 1/n), in place of an error to be taken off."""
    told, glass = number(question, "flange_to_image"), number(question, "glass")
    body = question.body
    mount = knowledge.catalogue.mounts.get(body.id or "") if body is not None else None
    if told is None or glass is None or mount is None or not is_known(mount.register_mm) or question.follows:
        return answer
    shift = shift_of(glass, knowledge.catalogue)
    more = told - mount.register_mm.nominal
    if shift is None or not shift.least - _NEAR_MM <= more <= shift.greatest + _NEAR_MM:
        return answer
    by = ranged(shift, small_mm)
    text = (
        f"The glass accounts for it: {trimmed(glass, 2)} mm before the sensor moves the image back by {by},"
        f" t(1 - 1/n), so the sensor lies at {trimmed(told, 3)} mm where {mount.designation} is"
        f" {trimmed(mount.register_mm.nominal, 3)} mm in air. It is as it should be:"
        " nothing is to be taken off or put under, as long as the glass stays in."
    )
    rows = (Quantity("glass_shift_mm", shift), Quantity("register_mm", mount.register_mm, mount.id))
    return replace(answer, lines=(Line("head", text),), quantities=rows, chains=None)
