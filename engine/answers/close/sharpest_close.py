"""The stop that is best close up where none is told: the last before diffraction shows, by the magnification."""

from __future__ import annotations

from engine.answers.close.stop_wanted import size_by_extension
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number, stop
from engine.answers.parts.wording import f_number, small_mm, times
from engine.answers.picture.blur import blur_of
from engine.answers.picture.frames import frames_named, frames_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import depth, fine_blur
from grammar.questions import Question

EVEN_PUPILS = Interval.exact(1.0)
FEW = 2  # frames
WIDEST_STOP = "widest-stop"  # of the facts


def sharpest(question: Question, knowledge: Knowledge) -> Told:
    """The same at the magnification told, or that of the extension, on each frame spoken of, or on full frame."""
    size = number(question, "magnification") or size_by_extension(question, knowledge)
    if size is None and question.follows and question.prior is not None:
        size = number(question.prior, "magnification")  # how large it was to be just before
    if size is None:
        return Told()
    frames = frames_named(question, knowledge.catalogue) or frames_of(question, knowledge.catalogue)[-1:]
    told = Told()
    for form in frames[:FEW]:
        told += sharpest_close(size, form, question, knowledge)
    return told


def sharpest_close(size: float, form: Format, question: Question, knowledge: Knowledge) -> Told:
    """The marked stop whose effective f-number just makes the blur that is allowed, and how deep it is there.

    `size`: the magnification. Source: N (1 + m) = c / (2.44 wavelength), pupils even.
    """
    light = knowledge.catalogue.assumptions["green-light"].value
    allowed = Interval.exact(blur_of(question, form, knowledge))
    limit = fine_blur.stop_of_diffraction(allowed, light)
    if not is_known(limit):
        return Told()
    marked = limit.nominal / (1 + size)
    if marked < knowledge.catalogue.assumptions[WIDEST_STOP].value.least:
        text = (
            f"At {times(size)} on {form.name} any stop counts as more than f/{f_number(limit.nominal)}, from where"
            f" diffraction alone blurs more than {small_mm(allowed.nominal)}: open it as far as the lens is good."
        )
        return Told((Line("head", text),), (Quantity("diffraction_f_number", limit, form.name),))
    case = f"{times(size)} on {form.name}"
    deep = depth.close_up_depth_mm(Interval.exact(size), Interval.exact(marked), allowed, EVEN_PUPILS)
    text = (
        f"{case}: up to f/{f_number(marked)} on the ring. There it counts as f/{f_number(limit.nominal)}, from where"
        f" diffraction alone blurs more than {small_mm(allowed.nominal)}."
    )
    rows = [Quantity("f_number", Interval.exact(marked), case), Quantity("diffraction_f_number", limit, form.name)]
    if is_known(deep):
        text += f" {small_mm(deep.nominal)} is sharp in all. For the finest detail open one stop more."
        rows.append(Quantity("dof_mm", deep, f"{case}, f/{f_number(marked)}"))
    lines = [Line("head", text)]
    told = stop(question)
    if told is not None and told > marked:
        past = f"f/{f_number(told)} is past it: more depth, less detail. Take several pictures instead and join them."
        lines.append(Line("fact", past, 1))
    return Told(tuple(lines), tuple(rows))
