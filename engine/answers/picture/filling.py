"""What fills the frame: at which magnification a thing of a size, told or known by its name, does so."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import distance, figures, trimmed
from engine.answers.picture.crop_modes import in_mode
from engine.answers.picture.frames import frames_named, frames_of
from engine.base.compact import compact
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_METRE
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import closeup
from grammar.numbers.motifs import FIELD, IMAGE_SIZE, MOTIF, SIDES
from grammar.questions import Question

_ALIKE: Final = 0.01  # magnifications that differ by less are one


@compact
class Motif:
    """What is photographed, mm: `short` is None where one side alone is known."""

    words: str
    long: float
    short: float | None = None


@compact
class Filling:
    """One way in which it fills a frame: 'the whole of it', 'its long side fills the width'."""

    words: str
    magnification: float
    form: Format


def motif_told(question: Question, facts: Catalogue) -> Motif | None:
    """By its size where that is told, else by its name."""
    wide = number(question, FIELD)
    if wide is not None:
        return Motif(f"{trimmed(wide, 1)} mm" if wide < MM_PER_METRE else distance(wide, question.feet), wide)
    sides = re.fullmatch(r"([\d.]+) x ([\d.]+) mm", question.said(SIDES) or "")
    if sides is not None:
        return _of_sides("", float(sides[1]), float(sides[2]))
    known = (question.said(MOTIF) or "").split(", ")[-1]  # 'a spread of A4, so A3'
    if known in facts.motifs:
        row = facts.motifs[known]
        return _of_sides(row.name, row.long_mm, row.short_mm)
    if known in facts.formats:
        film = facts.formats[known]
        return _of_sides(f"a {film.name} frame", film.width_mm, film.height_mm)
    return None


def _of_sides(name: str, one: float, other: float | None) -> Motif:
    short = min(one, other) if other is not None else None
    long = max(one, other) if other is not None else one
    size = f"{trimmed(long, 1)} x {trimmed(short, 1)} mm" if short is not None else f"{trimmed(long, 1)} mm"
    return Motif(f"{name}, {size}" if name else size, long, short)


def fillings(question: Question, facts: Catalogue) -> list[Filling]:
    """How what is told fills the frame, the likeliest meaning first; nothing where nothing of a size is told.

    Where no frame is named, that meaning for each of the usual ones.
    """
    motif = motif_told(question, facts)
    if motif is None:
        return []
    named = in_mode(frames_named(question, facts), question)
    if named or number(question, IMAGE_SIZE) is not None:
        return _ways(motif, question, (named or frames_of(question, facts))[0])
    return [row for form in frames_of(question, facts)[::-1] for row in _ways(motif, question, form)[:1]]


def _ways(motif: Motif, question: Question, form: Format) -> list[Filling]:
    """How it fills one frame, the likeliest meaning first."""
    image = number(question, IMAGE_SIZE)
    if image is not None:
        return _each(form, ((f"{trimmed(image, 1)} mm long there", image, motif.long),))
    share = _share(question)[1]
    by_height = mentions(question, "of-height")
    if motif.short is None:
        side = form.height_mm if by_height else form.width_mm
        return _each(form, (("it fills the height" if by_height else "it fills the width", side * share, motif.long),))
    width = ("its long side fills the width", form.width_mm * share, motif.long)
    height = ("its short side fills the height", form.height_mm * share, motif.short)
    upright = ("upright, its long side fills the height", form.height_mm * share, motif.long)
    if by_height:
        return _each(form, (height, upright))
    if mentions(question, "of-width"):
        return _each(form, (width,))
    rows = _each(form, (width, height))
    rows.sort(key=lambda row: row.magnification)
    if len(rows) > 1:
        rows = [Filling("all of it in the picture", *_rest(rows[0])), Filling("no border left", *_rest(rows[1]))]
    return rows


def _share(question: Question) -> tuple[str, float]:
    """How much of the frame is to be filled, in words and as a share of its side."""
    if mentions(question, "two-thirds-of-frame"):
        return "two thirds of ", 2 / 3
    if mentions(question, "half-of-frame"):
        return "half of ", 0.5
    if mentions(question, "third-of-frame"):
        return "a third of ", 1 / 3
    if mentions(question, "quarter-of-frame"):
        return "a quarter of ", 0.25
    return "", 1.0


def _rest(row: Filling) -> tuple[float, Format]:
    return row.magnification, row.form


def _each(form: Format, rows: tuple[tuple[str, float, float], ...]) -> list[Filling]:
    out: list[Filling] = []
    for words, side, long in rows:
        m = closeup.magnification_for_field(Interval.exact(side), Interval.exact(long))
        alike = is_known(m) and any(abs(one.magnification / m.nominal - 1) < _ALIKE for one in out)
        if is_known(m) and not alike:
            out.append(Filling(words, m.nominal, form))
    return out


def magnification_filling(question: Question, facts: Catalogue) -> float | None:
    """The magnification at which what is told fills the frame, in its likeliest meaning."""
    rows = fillings(question, facts)
    return rows[0].magnification if rows else None


def filling_told(rows: list[Filling], question: Question, facts: Catalogue) -> Told:
    """What is filled, and the magnification that it takes."""
    motif = motif_told(question, facts)
    if motif is None or not rows:
        return Told()
    filled = f"{_share(question)[0]}{rows[0].form.name}"
    name = f"{motif.words[:1].upper()}{motif.words[1:]}"
    if len({row.form.id for row in rows}) > 1:
        ends = [f"{figures(row.magnification, 3)}x on {row.form.name}" for row in rows]
        share = _share(question)[0]
        part = f" ({share}the frame)" if share else ""
        text = f"{name}, {rows[0].words}{part}: {'; '.join(ends)}."
    else:
        ends = [f"{row.words} at {figures(row.magnification, 3)}x" for row in rows]
        text = f"{name} on {filled}: {'; '.join(ends)}."
    numbers = tuple(
        Quantity("magnification", Interval.exact(row.magnification), f"{row.words}, {row.form.id}") for row in rows
    )
    return Told((Line("head", text),), numbers)
