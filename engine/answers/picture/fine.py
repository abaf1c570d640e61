"""Blur that focusing does not take away, where it matters: diffraction, and glass before the sensor."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import f_number, figures, small_mm
from engine.answers.picture.blur import blur_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import fine_blur, seat
from grammar.questions import Question


def diffraction(
    stop: float | None, form: Format, question: Question, knowledge: Knowledge, always: bool = False
) -> Told:
    """From which effective f-number diffraction alone blurs more than is allowed; by itself only past that stop."""
    light = knowledge.catalogue.assumptions["green-light"].value
    allowed = Interval.exact(blur_of(question, form, knowledge))
    limit = fine_blur.stop_of_diffraction(allowed, light)
    if not is_known(limit) or (not always and (stop is None or stop < limit.nominal)):
        return Told()
    case = form.name
    rows = [Quantity("diffraction_f_number", limit, case)]
    from_stop = f"f/{f_number(limit.nominal)}"
    text = f"On {form.name} diffraction alone blurs more than {small_mm(allowed.nominal)} from {from_stop} on"
    if stop is not None:
        disc = fine_blur.diffraction_blur_mm(Interval.exact(stop), light)
        if is_known(disc):
            rows.append(Quantity("diffraction_blur_mm", disc, f"f/{f_number(stop)}"))
            text += f"; at f/{f_number(stop)} its disc is {figures(disc.nominal * 1000, 2)} microns"
    text += ". Close up the effective f-number counts."
    return Told((Line("head" if always else "note", text),), tuple(rows))


def sensor_glass(stop: float, thickness_mm: Interval, form: Format, question: Question, knowledge: Knowledge) -> Told:
    """What the glass before a sensor does to a lens that was not made for it: focus, and blur on the axis."""
    index = knowledge.catalogue.assumptions["filter-glass-index"].value
    shift = seat.glass_shift_mm(thickness_mm, index)
    blur = fine_blur.plate_blur_mm(thickness_mm, Interval.exact(stop))
    if not (is_known(shift) and is_known(blur)):
        return Told()
    allowed = blur_of(question, form, knowledge)
    size = small_mm(thickness_mm.nominal)
    small = "less than" if blur.nominal < allowed else "more than"
    text = (
        f"{size} of glass before the sensor blurs the middle by {figures(blur.nominal * 1000, 2)} microns at "
        f"f/{f_number(stop)}: {small} the {figures(allowed * 1000, 2)} that still count as sharp on {form.name}. "
        "It falls with the cube of the f-number; corners suffer more, where the exit pupil is near."
    )
    rows = (
        Quantity("plate_blur_mm", blur, f"f/{f_number(stop)}"),
        Quantity("glass_shift_mm", shift, f"{size} of glass"),
    )
    return Told((Line("head", text),), rows)
