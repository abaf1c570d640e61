"""A ring before a lens that is narrower than its front: whether it stops the lens down, and whether it cuts corners."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, numbers, stop
from engine.answers.parts.wording import article, f_number, ranged, trimmed
from engine.answers.picture.filter_effects import clipped
from engine.base.interval import Interval
from grammar.questions import Question, Thing

STEP: Final = "step-ring"
_THREADS: Final = "filter_thread"  # key of the front threads that were told as such
_WHOLE: Final = 1.02  # a beam that the ring is wider than by so much passes whole
NARROWER: Final = "A step down puts a rim narrower than the lens's own front before it."
LENS_ASKED: Final = "For which lens: which focal length and f-number, on which sensor?"


def stepped_down_to(question: Question) -> float | None:
    """The smaller thread of a step down that is told, in mm; None where none is."""
    for thing in question.adapters:
        if thing.piece == STEP and thing.steps and thing.steps[0] > thing.steps[1]:
            return thing.steps[1]
    told = numbers(question, _THREADS)
    return min(told) if len(told) > 1 and mentions(question, "step-down") else None


def stepped_down(question: Question, thread: float, knowledge: Knowledge) -> Told:
    """What a ring of this thread (mm) takes from each lens told."""
    clear = thread - knowledge.catalogue.assumptions["filter-clear-less"].value
    told = Told()
    for lens in question.lenses:
        if lens.focal_length_mm is not None:
            told += _of_lens(lens, lens.focal_length_mm, clear, question)
    judged = clipped(question, thread, 0.0, knowledge)
    told += judged
    if any(line.kind == "fact" for line in judged.lines):
        return Told((*told.lines, Line("text", NARROWER)), told.quantities)
    ask = () if judged.lines else (Line("ask", LENS_ASKED),)
    return Told((Line("head", f"Yes: {NARROWER[:1].lower()}{NARROWER[1:]}"), *told.lines, *ask), told.quantities)


def _of_lens(lens: Thing, focal: float, clear: Interval, question: Question) -> Told:
    """The f-number that a far beam as wide as the ring is clear would be, against that of the lens."""
    limit = Interval.exact(focal) / clear
    wide = ranged(clear, lambda value: f"{trimmed(value, 0)}")
    at = lens.f_number or stop(question)
    focal_words = f"{trimmed(focal, 1)} mm"
    name = f"{article(focal_words)} {focal_words}"
    stops = f"f/{ranged(limit, f_number)}".replace(" to ", " to f/")
    rows = (Quantity("f_number", limit, "as wide as the ring is clear"),)
    if at is None:
        text = f"{wide} mm is clear: that stops {name} lens down where it opens wider than {stops}."
        return Told((Line("head", text),), rows)
    told = f"{name} f/{f_number(at)}"
    if limit.least > at * _WHOLE:
        text = f"It stops {told} down to about {stops}: about {wide} mm is clear."
    elif limit.greatest * _WHOLE > at:
        text = f"It may stop {told} down a little, to {stops}: about {wide} mm is clear."
    else:
        text = f"It leaves {told} its f-number: {trimmed(focal / at, 0)} mm passes, {wide} mm is clear."
    return Told((Line("head", text),), rows)
