"""Where an objective for a fixed tube length is held: its shoulder as far from the sensor as from its own image."""

from __future__ import annotations

from typing import Final

from engine.answers.close.close_picture import shown_by
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import area, f_number, small_mm, times, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question

_NEAR: Final = frozenset(["how-close", "working-distance", "touch-subject"])  # topics of how near it comes
_SIZE: Final = frozenset(["how-big", "size-against", "frame-size"])  # and of how large
_ROOM: Final = "objective-room"  # the advice on how near an objective works
_OBJECTIVE: Final = "objective"
_EXPOSED: Final = ("shutter", "light", "iso", "nd")
_BY_MARKS: Final = (
    "An objective leaves little light: by the marks on its barrel the f-number that counts at the sensor is the"
    " magnification over twice the NA: tell both marks for it. Bring a lamp or a flash near."
)
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
    shown = _shown(question, knowledge, marked) + _light(question, marked)
    near = question.topic in _NEAR and _ROOM in knowledge.catalogue.advice
    lines = [Line("head", f"Near it: {knowledge.catalogue.advice[_ROOM].says}")] if near else []
    first = (*lines, *shown.lines) if near or question.topic in _SIZE else ()
    last = shown.lines if not first else ()
    return Told((*first, Line("head", text), *last), (*rows, *shown.quantities))


def objective_lit(question: Question, knowledge: Knowledge) -> Told:
    """How much light a microscope objective leaves, where no exposure is told."""
    if question.lens is None or question.lens.lens_kind != _OBJECTIVE or any(map(question.said, _EXPOSED)):
        return Told()
    told = _light(question, number(question, "magnification"))
    return told if told.lines else Told((Line("head", _BY_MARKS),))


def _shown(question: Question, knowledge: Knowledge, marked: float | None) -> Told:
    """How much of the subject fills the frame. Source: definition of magnification."""
    form = shown_by(question, knowledge).form
    if marked is None or form is None:
        return Told()
    size = Interval.exact(marked)
    sides = [closeup.field_mm(Interval.exact(side), size) for side in (form.width_mm, form.height_mm)]
    if not all(is_known(side) for side in sides):
        return Told()
    wide, high = (side.nominal for side in sides if is_known(side))
    text = (
        f"The frame shows {area(wide, high)} of the subject on {form.name}: 1 mm of it comes {small_mm(marked)} long."
    )
    return Told((Line("head", text),), (Quantity("field_width_mm", Interval.exact(wide), form.id),))


def _light(question: Question, marked: float | None) -> Told:
    """The f-number that counts at the sensor, by both marks on the barrel."""
    cone = number(question, "na")
    if cone is None or marked is None or cone <= 0:
        return Told()
    counts = closeup.objective_f_number(Interval.exact(cone), Interval.exact(marked))
    if not is_known(counts):
        return Told()
    text = (
        f"At NA {cone:g} and {times(marked)} it counts as f/{f_number(counts.nominal)} at the sensor: bring a lamp or a"
        " flash near, and hold all of it still."
    )
    return Told((Line("text", text),), (Quantity("effective_f_number", counts, "at the sensor"),))
