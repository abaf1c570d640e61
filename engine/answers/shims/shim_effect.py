"""What a shim of so much does to the lens it is put under, where that is asked: how far it then reaches, and from which
stop on nobody sees it."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.wording import f_number, small_mm
from engine.answers.picture.frames import frames_of
from engine.answers.seat.spacing import far_limits
from engine.answers.shims.forgiving import allowances, is_error
from engine.base.interval import Interval, is_known
from engine.physics import focus
from grammar.questions import Question

FULLY_OPEN = 1.0  # any stop does to ask what blur is allowed
_SIZES = ("thickness", "numbers", "length", "total", "layer", "extension")


def shim_effect(question: Question, knowledge: Knowledge) -> Told:
    """'what does a 0.1 shim do to a 35': the farthest that is sharp if infinity was right before; else nothing."""
    named = focals(question)
    if question.said("mark") is not None or mentions(question, "sits-too-close", "sits-too-far"):
        return Told()  # by how much the seat is off was told, and no shim
    size = number(question, *_SIZES)
    if size is None:
        size = next((one.thickness_mm[0] for one in question.adapters if one.thickness_mm is not None), None)
    if not named or size is None or not is_error(size, knowledge) or not mentions(question, "shim-effect"):
        return Told()
    form = frames_of(question, knowledge.catalogue)[0]
    head = (
        f"A shim of {small_mm(size)} moves the lens as far out: infinity that was just right falls short, that lay"
        " before its mark comes nearer to it."
    )
    told = Told((Line("head", head),)) + far_limits(named, size, knowledge.catalogue, question.feet, 1)
    for frame, blur, _ in allowances(FULLY_OPEN, question, knowledge):
        stop = focus.infinity_from_f_number(Interval.exact(size), blur, Interval.exact(1.0))
        if frame.id == form.id and is_known(stop):
            text = f"from f/{f_number(stop.nominal)} on nobody sees it ({frame.name})"
            told += Told((Line("fact", text, 1),), (Quantity("infinity_from_f_number", stop, frame.name),))
    return told
