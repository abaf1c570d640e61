"""Where an objective for a fixed tube length is held: its shoulder as far from the sensor as from its own image."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import small_mm, times, trimmed
from engine.base.interval import Interval, is_known
from grammar.questions import Question

FINITE: Final = "finite-conjugate"  # trait of mounts whose register is that of the image at the mark's magnification


def on_its_tube(question: Question, knowledge: Knowledge) -> Told:
    """What stands between body and objective for the magnification on its barrel; nothing where it is no such one.

    Source: the mount's register, shoulder to image; lengths add.
    """
    lens = lens_side(question.lens, knowledge.catalogue)
    if not isinstance(lens, LensSide) or FINITE not in lens.mount.traits or mentions(question, "infinity-objective"):
        return Told()
    image, marked = lens.mount.register_mm, number(question, "magnification")
    if not is_known(image):
        return Told()
    size = times(marked) if marked else "its marked magnification"
    text = f"It gives {size} with its shoulder {small_mm(image.nominal)} from the sensor"
    rows = []
    body = body_side(question.body, knowledge.catalogue)
    if isinstance(body, BodySide) and is_known(body.mount.register_mm):
        stack = image - body.mount.register_mm
        text += (
            f": {trimmed(image.nominal, 2)} - {trimmed(body.mount.register_mm.nominal, 3)} ="
            f" {small_mm(stack.nominal)} of tubes, rings and bellows from the {body.mount.designation} flange to the"
            " shoulder of the objective"
        )
        rows.append(Quantity("stack_mm", stack, "shoulder to body flange"))
    else:
        rows.append(Quantity("register_mm", image, lens.mount.id))
    if marked:
        rows.append(Quantity("magnification", Interval.exact(marked), "as marked"))
    text += ". A few millimetres more or less are harmless; focus by moving the whole."
    return Told((Line("head", text),), tuple(rows))
