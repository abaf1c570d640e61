"""Whether an error of so much matters: what the depth of focus forgives, and the stop from which it is forgiven."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot
from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, numbers, stop
from engine.answers.parts.wording import f_number, small_mm
from engine.answers.picture.frames import frames_judged
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import focus
from grammar.questions import Question

LARGEST: Final = "largest-seat-error"  # of the facts
CLOSING_CURES: Final = "closing-cures"  # mentioned where it is asked whether a stop hides it
MOST_FRAMES: Final = 3
REMEDY: Final = "remedy"  # the topic of 'ok what do I do', which doubts nothing
TRUE: Final = "faces-true"  # the topic of how parallel the faces must be


def forgiven(question: Question, knowledge: Knowledge) -> Told:
    """An error told by itself, set beside what is forgiven at the stop told; nothing where either is not told."""
    at, error = stop(question), _error(question, knowledge)
    if at is None or error is None or question.topic == REMEDY or not mentions(question, "does-it-matter"):
        return Told()
    if (off := off_by_mm(question)) is not None and off < 0:
        text = f"Hardly: {small_mm(error)} too close leaves infinity sharp at every stop, only before its mark."
        return Told((Line("head", text),))
    lines, rows = [], []
    good, bad = ("Yes", "No") if mentions(question, "is-it-fine", CLOSING_CURES) else ("Hardly", "Yes")
    for form, blur, allowed in allowances(at, question, knowledge):
        from_stop = focus.infinity_from_f_number(Interval.exact(error), blur, Interval.exact(1.0))
        rows.append(Quantity("infinity_allowance_mm", allowed, f"f/{f_number(at)}, {form.name}"))
        holds = error <= allowed.nominal
        text = (
            f"{good if holds else bad}: at f/{f_number(at)} on {form.name} the depth of focus forgives"
            f" {small_mm(allowed.nominal)}, and {small_mm(error)} is {'less' if holds else 'more'}"
        )
        if holds:
            text += "; infinity looks sharp, only the marks of the scale shift a little"
        elif is_known(from_stop):
            rows.append(Quantity("infinity_from_f_number", from_stop, form.name))
            text += f"; from f/{f_number(from_stop.nominal)} on it is forgiven"
        lines.append(Line("head", f"{text}."))
    return Told(tuple(lines), tuple(rows))


def with_forgiven(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind whether the error matters, where it does not tell what is forgiven itself."""
    rows = answer.quantities or ()
    if any(row.name == "infinity_allowance_mm" for row in rows):
        return answer
    told = forgiven(question, knowledge)
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=(*rows, *told.quantities))


def _error(question: Question, knowledge: Knowledge) -> float | None:
    told = numbers(question, "thickness", "numbers", "length", "total")
    return next((one for one in told if is_error(one, knowledge)), None)


def is_error(size_mm: float, knowledge: Knowledge) -> bool:
    """Whether a seat may be off by so much: what is more is another ring."""
    return 0 < size_mm <= knowledge.catalogue.assumptions[LARGEST].value.greatest


def allowances(at: float, question: Question, knowledge: Knowledge) -> Iterator[tuple[Format, Interval, Interval]]:
    """What the depth of focus forgives at a stop on each format spoken of, with the blur that is allowed there, mm."""
    divisor = knowledge.catalogue.assumptions["blur-divisor"].value
    for form in frames_judged(question, knowledge.catalogue)[:MOST_FRAMES]:
        blur = Interval.exact(hypot(form.width_mm, form.height_mm)) / divisor
        allowed = focus.infinity_allowance_mm(Interval.exact(at), blur, Interval.exact(1.0))
        if is_known(blur) and is_known(allowed):
            yield form, blur, allowed


def faces_parallel(question: Question, knowledge: Knowledge) -> Told:
    """'how flat must the two faces be': how far they may be out of parallel, which no stop forgives on one side."""
    if question.topic != TRUE and not mentions(question, "how-parallel"):
        return Told()
    flat = knowledge.catalogue.assumptions["faces-parallel"].value.nominal
    text = f"Keep the faces flat, and parallel within {small_mm(flat)} all round: a wedge leaves one side soft."
    return Told((Line("head", text),))
