"""How near a lens comes that sits too close to the sensor: what its marks then mean, for that is no extension."""

from __future__ import annotations

from engine.answers.close.tube_sets import tubes_told
from engine.answers.parts.answer import Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, number
from engine.answers.remarking import remarked
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from grammar.questions import OFF, Question

LEAST_MM = 0.01  # of an error


def sits_too_close(question: Question, knowledge: Knowledge) -> Told:
    """The marks told, or the nearest of its scale, as they are then; nothing where anything draws the lens out."""
    off = off_by_mm(question) if question.off_word is not None else None
    if off is None or off > -LEAST_MM or not focals(question) or question.said("magnification") is not None:
        return Told()
    if any(tubes_told(replace(question, values=question.rest(OFF, "thickness")), knowledge)):
        return Told()
    near = number(question, "close_focus")
    marks = (("mark", f"{near:g} mm"),) if near is not None else ()
    return remarked(question.with_(values=(*question.values, *marks)), knowledge)
