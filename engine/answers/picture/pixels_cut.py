"""What a smaller frame, or a shape, cut out of a sensor leaves: '6000x4000, Super 16 crop, how many pixels'."""

from __future__ import annotations

import re
from collections.abc import Sequence
from math import hypot, sqrt
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import trimmed
from engine.answers.picture.crop_factors import shapes_told
from engine.answers.picture.frames import USUAL_FRAMES
from engine.answers.picture.matching import of_mount
from engine.answers.picture.same_depth import formats_told
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question

_ASPECT: Final = 0.02  # share by which the shape of the pixels told is that of a sensor
_SMALLER: Final = 0.97  # an area cut out is narrower by more
MILLION: Final = 1e6


def pixels_cut(question: Question, facts: Catalogue) -> Told:
    """The pixels of the smallest frame told, out of all those told; for each usual sensor where none is told."""
    told, area = _pixels(question), _area(question, facts)
    lens = any(
        one.format or one.focal_length_mm or (one.ids and of_mount(one, facts) is None) for one in question.lenses
    )
    if lens or question.said("circle") or area is None:
        return Told()
    if told is None or not mentions(question, "area-cut"):
        return _shapes(question, facts) if told is None else Told()
    wholes = _wholes(question, area, told[1], facts)
    lines, rows = [], []
    for form in wholes:
        across, down = _all_of(told, form)
        wide, high = coverage.pixels_left((across, down), form.width_mm, form.height_mm, area.width_mm, area.height_mm)
        case = f"{area.name} on {form.name}"
        text = f"{case}: {wide} x {high} pixels left of {across} x {down}, {wide * high / MILLION:.1f} megapixels"
        lines.append(Line("head", f"{text}."))
        rows.append(Quantity("pixels_across", Interval.exact(wide), case))
        rows.append(Quantity("pixels_down", Interval.exact(high), case))
    if len(wholes) > 1:
        lines.append(Line("ask", "How large is the whole sensor? The count hangs on it.", wants="body"))
    return Told(tuple(lines), tuple(rows))


def _shapes(question: Question, facts: Catalogue) -> Told:
    """'2.39:1 on MFT': the largest picture of each shape told that a frame told holds, and the circle that it needs."""
    lines, rows = [], []
    bare = all(not (lens.ids or lens.lens_kind or lens.traits or lens.f_number) for lens in question.lenses)
    shapes = shapes_told(question) if bare else []
    for form in dict.fromkeys(_frames(question, facts)) if shapes else ():
        for name, aspect in shapes:
            lit = Interval.exact(form.diagonal_mm)
            wide, high = coverage.largest_crop_mm(lit, form.width_mm, form.height_mm, aspect)
            crop = coverage.crop_factor(wide, high)
            if not (is_known(wide) and is_known(high) and is_known(crop)):
                continue
            case, needed = f"{name} on {form.name}", hypot(wide.least, high.least)
            text = f"{case}: {wide.least:.1f} x {high.least:.1f} mm, crop factor {crop.greatest:.2f} by diagonal"
            lines.append(Line("head", f"{text}; it needs an image circle of {trimmed(needed, 2)} mm."))
            rows += [Quantity("crop_width_mm", wide, case), Quantity("crop_height_mm", high, case)]
            rows += [Quantity("crop_factor", crop, case)]
    return Told(tuple(lines), tuple(rows))


def _pixels(question: Question) -> tuple[float, float | None] | None:
    """The pixels told: across and down, or (millions, None)."""
    told = question.said("pixels") or ""
    if match := re.match(r"(\d+) x (\d+)", told):
        return float(match[1]), float(match[2])
    match = re.match(r"[\d.]+", told)
    return (float(match[0]), None) if match and "megapixels" in told and not told.endswith("across") else None


def _all_of(told: tuple[float, float | None], form: Format) -> tuple[int, int]:
    if told[1] is not None:
        return int(told[0]), int(told[1])
    across = sqrt(told[0] * MILLION * form.width_mm / form.height_mm)
    return int(across + 0.5), int(across * form.height_mm / form.width_mm + 0.5)


def _frames(question: Question, facts: Catalogue) -> list[Format]:
    """Every frame told, and that of the mount of a body that another frame is told of."""
    forms = [form for _, form in formats_told(question, facts)]
    mounts = [facts.mounts[body.id or ""] for body in question.bodies if body.kind == "mount" and body.format]
    own = [form for lens in question.lenses if (form := of_mount(lens, facts)) is not None]  # '20mp mft'
    return [*forms, *own, *(facts.formats[one.format or ""] for one in mounts if one.format in facts.formats)]


def _area(question: Question, facts: Catalogue) -> Format | None:
    return min(_frames(question, facts), key=lambda form: form.width_mm, default=None)


def _wholes(question: Question, area: Format, down: float | None, facts: Catalogue) -> Sequence[Format]:
    """The sensor told; else the usual ones that are larger than the area, of the shape of the pixels told."""
    larger = [form for form in _frames(question, facts) if form.width_mm * _SMALLER > area.width_mm]
    if larger:
        return [max(larger, key=lambda form: form.width_mm)]
    usual = [facts.formats[id_] for id_ in USUAL_FRAMES if facts.formats[id_].width_mm * _SMALLER > area.width_mm]
    across = _pixels(question)
    if down is None or across is None:
        return usual
    shape = across[0] / down
    alike = [form for form in usual if abs(form.width_mm / form.height_mm / shape - 1) <= _ASPECT]
    return alike or usual
