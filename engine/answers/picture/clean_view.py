"""Whether a lens lights the frame it is likened on, and what it is like where it is cropped to its circle."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import FULL, percent, ranged, trimmed
from engine.answers.picture.circles import Thrown, circles_of, glass_factor
from engine.answers.picture.crop_factors import Crop
from engine.answers.picture.frames import frames_named
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question

MATTERS = 1.02  # a crop factor this much above that of the frame is worth a line


def clean_view(question: Question, crops: Sequence[Crop], facts: Catalogue) -> Told:
    """Whether the lens lights what it is put on, and what it is like where it is cropped to its circle."""
    if not any(lens.ids or lens.format for lens in question.lenses):
        return Told()
    factor, told = glass_factor(question, facts), Told()
    for thrown in circles_of(question, facts):
        circle = thrown.circle_mm * (factor or 1.0)
        for form in frames_named(question, facts)[:1]:
            told += _lit(thrown, circle, form, factor)
        clean = coverage.FULL_FRAME_DIAGONAL_MM / circle.least
        if thrown.focal_mm and not thrown.made_for and crops and clean > crops[0].by_diagonal * MATTERS:
            value = thrown.focal_mm * (factor or 1.0) * clean
            case = f"clean {trimmed(circle.least, 1)} mm circle"
            text = f"cropped to a {case} it is like {value:.0f} mm"
            line = Line("fact", text, 1) if thrown.typical else Line("head", f"{text[:1].upper()}{text[1:]}.")
            told += Told((line,), (Quantity("equivalent_focal_mm", Interval.exact(value), case),))
    return told


def _lit(thrown: Thrown, circle: Interval, form: Format, factor: float | None) -> Told:
    """One line on whether the corners are lit: what frames as wished and stays dark there is no use."""
    lit = coverage.lit_share(circle, Interval.exact(form.width_mm), Interval.exact(form.height_mm))
    if not is_known(lit):
        return Told()
    case = thrown.case + (f" with {factor:g}x" if factor is not None else "")
    size = ranged(circle, lambda value: f"{trimmed(value, 1)} mm")
    size = f"at least {size}" if thrown.made_for else f"{size} (typical of such lenses)" if thrown.typical else size
    if lit.least > FULL:
        says = "the corners are lit"
    elif thrown.made_for:
        # it covers the format it was made for; how much more is not known
        lit = Interval(lit.least, 1.0, lit.nominal)
        says = f"at least {percent(lit.least)} is lit; a circle larger than {thrown.made_for} lights the corners"
    else:
        says = f"{ranged(lit, percent)} is lit, the corners {'may ' if lit.greatest > FULL else ''}go dark"
    return Told(
        (Line("fact", f"image circle {size}; {form.name} needs {trimmed(form.diagonal_mm, 2)} mm: {says}", 1),),
        (
            Quantity("image_circle_mm", circle, case),
            Quantity("format_diagonal_mm", Interval.exact(form.diagonal_mm), form.id),
            Quantity("lit_share", lit, f"{form.id}, {case}"),
        ),
    )
