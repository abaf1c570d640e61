"""How much of each frame each lens lights, where lenses or frames are set against each other."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import percent, ranged, trimmed
from engine.answers.picture.circles import Thrown, circles_of
from engine.answers.picture.same_depth import formats_told
from engine.answers.picture.which_cover import lit_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from grammar.questions import Question

MOST: Final = 4
LEAST_LIT: Final = 2
SEEN_NARROWER: Final = 1.1  # a frame that is so much smaller is seen to be


def lit_on_frames(question: Question, knowledge: Knowledge) -> Told:
    """Lenses told by what they were made for, or frames told without a mount: how much of each frame each lights."""
    facts = knowledge.catalogue
    forms = {form.id: form for thing, form in formats_told(question, facts) if thing not in question.lenses}
    told = any(lens.ids or lens.format or lens.lens_kind for lens in question.lenses)
    circles = circles_of(question, facts) if told else []
    if not forms and len(circles) >= LEAST_LIT and mentions(question, "covers-more"):
        return _circles_alone(circles)
    if len(forms) * len(circles) < LEAST_LIT:
        return Told()
    out = _fuller(list(forms.values()), circles)
    for form in forms.values():
        for thrown in circles:
            out += _lit_by(thrown, form)
    return out


def fuller_on(question: Question, bodies: Sequence[BodySide], knowledge: Knowledge) -> Told:
    """Which of two bodies has the frame that the lens lights the fuller."""
    forms = [body.format for body in bodies if body.format is not None]
    return _fuller(forms, circles_of(question, knowledge.catalogue)) if len(forms) == LEAST_LIT else Told()


def _fuller(forms: Sequence[Format], circles: Sequence[Thrown]) -> Told:
    """Which of two frames one lens lights the fuller."""
    shares = [(form, lit) for form in forms for one in circles if is_known(lit := lit_of(one, None, form))]
    if len(shares) != LEAST_LIT or len(circles) != 1:
        return Told()
    (less, low), (more, high) = sorted(shares, key=lambda row: (row[1].least, row[1].greatest))
    if low.least >= 1:
        return _both_whole(less, more)
    if (low.least, low.greatest) == (high.least, high.greatest):
        return Told()
    text = f"{more.name} is lit the fuller: {ranged(high, percent)}, {less.name} {ranged(low, percent)}."
    return Told((Line("head", f"{text[:1].upper()}{text[1:]}"),))


def _both_whole(one: Format, other: Format) -> Told:
    """Of two frames that are lit whole: how much narrower the smaller sees."""
    small, large = sorted((one, other), key=lambda form: form.diagonal_mm)
    factor = large.diagonal_mm / small.diagonal_mm
    text = "Both are lit whole."
    if factor < SEEN_NARROWER:
        return Told((Line("head", text),))
    text += (
        f" {small.name[:1].upper()}{small.name[1:]} takes the middle of what {large.name} shows: {trimmed(factor, 2)}"
        f" times narrower, a 50 mm frames like {trimmed(50 * factor, 0)} mm there, and soft corners fall away."
    )
    return Told((Line("head", text),), (Quantity("crop_factor", Interval.exact(round(factor, 4)), small.name),))


def _circles_alone(circles: Sequence[Thrown]) -> Told:
    """Which of several lenses throws the larger circle, where no frame is told."""
    told = Told()
    for thrown in sorted(circles, key=lambda one: -one.circle_mm.nominal):
        size = ranged(thrown.circle_mm, lambda value: f"{value:.0f} mm")
        least = "at least " if thrown.made_for else ""
        told += Told(
            (Line("fact", f"{thrown.words}: image circle {least}{size}", 1),),
            (Quantity("image_circle_mm", thrown.circle_mm, thrown.case),),
        )
    return told


def lit_on_bodies(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """How much of the frame of each body the lenses light."""
    lines: list[Line] = []
    rows: list[Quantity] = []
    facts = knowledge.catalogue
    circles = circles_of(question, facts) if lenses else []
    for body in bodies[:MOST]:
        form = body.format
        for thrown in circles if form is not None else []:
            assert form is not None
            part = _lit_by(thrown, form)
            lines += part.lines
            rows += part.quantities
    short = any(isinstance(row.value, Interval) and row.value.least < 1 for row in rows)
    return Told(tuple(lines) if short else (), tuple(rows))  # what all light whole sets nothing apart


def _lit_by(thrown: Thrown, form: Format) -> Told:
    lit = lit_of(thrown, None, form)
    if not is_known(lit):
        return Told()
    size = ranged(thrown.circle_mm, lambda value: f"{trimmed(value, 1)} mm")
    size = f"at least {size}" if thrown.made_for else size
    text = f"{form.name}: {thrown.words}, a circle of {size}, lights {ranged(lit, percent)}"
    return Told((Line("fact", text, 1),), (Quantity("lit_share", lit, f"{form.id}, {thrown.case}"),))
