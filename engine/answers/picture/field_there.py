"""What a lens sees so far away, and which focal length sees a field of a width there."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, mentions
from engine.answers.parts.wording import area, distance, trimmed
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.crop_modes import in_mode
from engine.answers.picture.filling import Filling, fillings, motif_told
from engine.answers.picture.frames import frames_named
from engine.answers.picture.matching import of_mount
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import closeup, coverage, focus
from grammar.questions import Question

_THIN: Final = Interval.exact(0.0)  # principal planes in one
_MOST_FRAMES: Final = 3


def seen_there(question: Question, knowledge: Knowledge) -> Told:
    """How wide and how high the picture is at the distance told, for each focal length on each frame named."""
    away, told = distance_mm(question), Told()
    if away is None:
        return told
    factor = glass_factor(question, knowledge.catalogue) or 1.0
    for focal in focals(question):
        for form in _frames(question, knowledge)[:_MOST_FRAMES]:
            told += _seen(focal * factor, form, away, question.feet)
    return told


def _frames(question: Question, knowledge: Knowledge) -> list[Format]:
    """The frames named, else those that the lenses are told by: '35 mm f/2 Super 16 at 5 m', 'a 12 mm MFT lens'."""
    facts = knowledge.catalogue
    told = [facts.formats.get(lens.format or "") or of_mount(lens, facts) for lens in question.lenses]
    return in_mode(frames_named(question, facts), question) or [form for form in told if form is not None]


def _seen(focal: float, form: Format, away: float, feet: bool) -> Told:
    """Told from the sensor, as a tape and the scale of a lens have it."""
    f = Interval.exact(focal)
    magnified = focus.magnification(f, focus.travel_to_mark_mm(Interval.exact(away), f, _THIN))
    wide = closeup.field_mm(Interval.exact(form.width_mm), magnified)
    high = closeup.field_mm(Interval.exact(form.height_mm), magnified)
    if not (is_known(wide) and is_known(high)):
        return Told()
    case = f"{trimmed(focal, 1)} mm on {form.name} at {distance(away, feet)}"
    text = f"At {distance(away, feet)}, {trimmed(focal, 1)} mm sees a field of {area(wide.nominal, high.nominal, feet)}"
    rows = (Quantity("field_width_mm", wide, case), Quantity("field_height_mm", high, case))
    return Told((Line("head", f"{text} on {form.name}."),), rows)


def focal_for_field(question: Question, knowledge: Knowledge) -> Told:
    """Which focal length fills the frame with what is told to be so large and so far away; nothing if one is told."""
    away, motif = distance_mm(question), motif_told(question, knowledge.catalogue)
    asked = mentions(question, "which-focal") or (question.follows and mentions(question, "no-room"))
    if not away or motif is None or (focals(question) and not asked):
        return Told()
    factor, told = glass_factor(question, knowledge.catalogue), Told()
    for row in fillings(question, knowledge.catalogue):
        told += _filling(row, motif.words, away, factor, question.feet)
    return told


def _filling(row: Filling, words: str, away: float, factor: float | None, feet: bool) -> Told:
    m = row.magnification
    needed = away / (2 + m + 1 / m)  # D = f (2 + m + 1/m), thin lens
    view = needed * coverage.FULL_FRAME_DIAGONAL_MM / row.form.diagonal_mm
    text = f"{words} at {distance(away, feet)}, {row.words} of {row.form.name}, wants {trimmed(needed, 1)} mm"
    rows = [Quantity("focal_length_mm", Interval.exact(needed), f"{row.words}, {row.form.id}")]
    if factor is not None:
        rows.append(Quantity("focal_length_mm", Interval.exact(needed / factor), f"{row.words}, before {factor:g}x"))
        text += f": a lens of {trimmed(needed / factor, 1)} mm before the {factor:g}x"
    elif abs(view / needed - 1) > 0.01:
        rows.append(Quantity("equivalent_focal_mm", Interval.exact(view), row.form.name))
        text += f", which frames like {view:.0f} mm on full frame"
    return Told((Line("head", f"{text[:1].upper()}{text[1:]}."),), tuple(rows))
