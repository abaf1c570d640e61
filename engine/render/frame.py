"""The frame with what the lens lights of it, and the largest crop that is lit to its corners."""

from __future__ import annotations

from math import hypot, inf, isfinite
from typing import Final

from engine.answers.parts.wording import percent, ranged, trimmed
from engine.base.interval import Interval, Measure, is_known
from engine.facts.records import Format
from engine.judging.judge import Judged
from engine.physics.coverage import FULL_FRAME_DIAGONAL_MM, largest_crop_mm, lit_share, pixels_left, punch_in
from engine.render.drawing import MARGIN, SIZE, Label, Measured, Page, scale_for, scale_text
from engine.render.naming import COLUMN, ELBOW, named
from engine.render.stack import measure

LEFT: Final = 28.0  # the height is lettered left of it
RIGHT: Final = 136.0
HIGH: Final = 98.0
NAMED_ASPECTS: Final = ((3, 2), (4, 3), (1, 1), (16, 9), (5, 4), (2, 1), (235, 100), (239, 100))
MOST: Final = 6.0  # diagonals of the frame that a circle may measure and still be drawn whole
SEEN: Final = 0.25  # mm of paper between two circles that are told apart


def frame(judged: Judged, aspect: float | None = None) -> str:
    """An SVG of the area used and the image circle over it. `aspect`: width over height of the crop; None: as it is."""
    setup = judged.setup
    form = setup.format or setup.judged_format
    circle = _circle(judged)
    title = f"What {setup.lens.name or 'the lens'} lights on {setup.body.name or 'the body'}"
    page = Page(title, _says(judged, form, circle, aspect))
    if form is None:
        page.heading("Which format is used is not known: there is no frame to draw.")
        if is_known(circle):
            page.notes([f"Image circle: {circle_text(circle)}."])
        return page.svg()
    scale = _scale(form, circle)
    under = f"Seen from the lens, at {scale_text(scale)}; the circle at the farthest focus of this stack."
    _draw(page, judged, form, circle, aspect, scale, page.heading(under))
    page.notes(_notes(judged, form, circle))
    return page.svg()


def _circle(judged: Judged) -> Measure:
    """The circle at the farthest focus; of one that is known at its least, any from there up."""
    circle = measure(judged.trace, "image_circle_at_far_mm")
    if is_known(circle) and judged.trace.given["image_circle_mm"].at_least:
        return Interval(circle.least, inf, circle.nominal)
    return circle


def circle_text(circle: Interval) -> str:
    """The diameter of an image circle, as a range where it is one."""
    low, middle, high = (f"{trimmed(value, 1)}" for value in (circle.least, circle.nominal, circle.greatest))
    if not isfinite(circle.greatest):
        return f"{low} mm or more"
    return f"{middle} mm" if low == high else f"{middle} mm ({low} to {high})"


def aspect_text(aspect: float) -> str:
    """'3:2', or '1.85:1' for one that has no name."""
    for wide, high in NAMED_ASPECTS:
        if abs(aspect / (wide / high) - 1) < 0.004:
            return f"{wide / 100:g}:1" if high == 100 else f"{wide}:{high}"
    return f"{trimmed(aspect, 2)}:1"


def _scale(form: Format, circle: Measure) -> float:
    """The largest scale at which frame and circle fit; the frame alone where the circle is far larger than it."""
    wide, high = form.width_mm, form.height_mm
    largest = _largest_mm(circle)
    if isfinite(largest) and largest < MOST * hypot(wide, high):
        wide, high = max(wide, largest), max(high, largest)
    return min(scale_for(wide, RIGHT - LEFT), scale_for(high, HIGH))


def _largest_mm(circle: Measure) -> float:
    """The largest circle that is drawn: the greatest, else the likeliest; none where unknown."""
    if not is_known(circle):
        return 0.0
    return circle.greatest if isfinite(circle.greatest) else circle.nominal


def _draw(page: Page, judged: Judged, form: Format, circle: Measure, aspect: float | None, scale: float,
          top: float) -> None:  # fmt: skip
    largest = _largest_mm(circle)
    fits = largest * scale <= min(RIGHT - LEFT, HIGH) + 0.01
    half_high = max(form.height_mm, largest if fits else 0.0) * scale / 2
    x, y = (LEFT + RIGHT) / 2, top + half_high + 1.0
    wide, high = form.width_mm * scale, form.height_mm * scale
    left, upper = x - wide / 2, y - high / 2
    lettered: list[Label] = [named(left + wide, upper + high * 0.08, form.name, _size(form.width_mm, form.height_mm))]
    page.box("thick", "dark" if is_known(circle) else "none", left, upper, wide, high)
    if is_known(circle) and not isfinite(circle.least * scale):
        page.box("thick", "paper", left, upper, wide, high)
    elif is_known(circle):
        page.lit(x, y, circle.least * scale / 2, left, upper, wide, high)
        lettered += _circles(page, circle, scale, x, y, fits)
        lettered += _smaller(page, judged.setup.smaller_format, circle, scale, x, y)
        lettered += _dark(judged, form, circle, scale, x, y)
        lettered += _crop(page, judged, form, circle, aspect or form.width_mm / form.height_mm, scale, x, y)
    else:
        lettered.append(named(x, y, "image circle not known", "nothing is said of what is lit"))
        page.text(x, y - 2.0, "?", anchor="middle", bold=True)
    sides = Measured("used_width_mm", form.width_mm, scale), Measured("used_height_mm", form.height_mm, scale)
    page.box("edge", "none", left, upper, wide, high)
    _sides(page, left, upper, wide, high, x, y, half_high, sides)
    lettered += _facts(judged, y + half_high * 0.9)
    page.labels(lettered, COLUMN, ELBOW, top, max(y + half_high, page.bottom))
    page.scale_bar(scale, MARGIN, page.bottom + 4.0)


def _sides(page: Page, left: float, upper: float, wide: float, high: float, x: float, y: float, half_high: float,
           sides: tuple[Measured, Measured]) -> None:  # fmt: skip
    """Width under the drawing and height left of it."""
    below, beside = y + half_high + 4.0, max(min(left, x - half_high) - 3.5, LEFT - 4.0)
    width, height = sides
    for at in (left, left + wide):
        page.line("hair", [(at, upper + high), (at, below + 1.2)])
        page.line("measure", [(at - 0.7, below + 0.7), (at + 0.7, below - 0.7)])
    page.line("measure", [(left, below), (left + wide, below)], width)
    page.text(x, below + SIZE + 0.8, f"{trimmed(width.mm, 2)} mm", anchor="middle")
    for at in (upper, upper + high):
        page.line("hair", [(left, at), (beside - 1.2, at)])
        page.line("measure", [(beside - 0.7, at + 0.7), (beside + 0.7, at - 0.7)])
    page.line("measure", [(beside, upper), (beside, upper + high)], height)
    page.text(beside - 1.6, y + 1.1, f"{trimmed(height.mm, 2)} mm", anchor="end")


def _circles(page: Page, circle: Interval, scale: float, x: float, y: float, fits: bool) -> list[Label]:
    """The likeliest circle, and the least and greatest where they can be told apart."""
    if not fits:
        return [named(x, y, "image circle", circle_text(circle), "larger than this drawing")]
    rows = []
    largest = _largest_mm(circle)
    if (largest - circle.least) * scale / 2 > SEEN:
        ends = (("least", circle.least), ("greatest", circle.greatest))
        for name, value in ends if isfinite(circle.greatest) else ends[:1]:
            measured = Measured("image_circle_at_far_mm", value, scale, of=name)
            page.circle("ghost", x, y, value * scale / 2, measured)
    radius = circle.nominal * scale / 2
    page.circle("image", x, y, radius, Measured("image_circle_at_far_mm", circle.nominal, scale))
    at = x + radius * 0.7071, y - radius * 0.7071
    rows.append(named(*at, "image circle", circle_text(circle)))
    return rows


def _dark(judged: Judged, form: Format, circle: Interval, scale: float, x: float, y: float) -> list[Label]:
    """The part of the frame that may stay dark, where there is one."""
    lit = measure(judged.trace, "lit_share")
    if circle.least >= hypot(form.width_mm, form.height_mm) or not is_known(lit):
        return []
    told = f"{percent(lit.nominal)} of the frame is lit"
    if not isfinite(circle.greatest):
        told = f"at least {told}"
    if percent(lit.least) == percent(1.0):
        told = "all but a trace of the frame is lit"
    elif percent(lit.least) != percent(lit.greatest):
        told = f"{ranged(lit, percent)} of the frame is lit"
    corner = x + form.width_mm * scale / 2 - 0.8, y + form.height_mm * scale / 2 - 0.8
    return [named(*corner, "dark, or not sure to be lit", told)]


def _smaller(page: Page, form: Format | None, circle: Interval, scale: float, x: float, y: float) -> list[Label]:
    """The smaller frame that bodies of this mount may have too, and how much of that is lit."""
    if form is None:
        return []
    wide, high = form.width_mm * scale, form.height_mm * scale
    measured = Measured("smaller_frame_mm", form.height_mm, scale, wide_mm=form.width_mm)
    page.box("halo", "none", x - wide / 2, y - high / 2, wide, high)
    page.box("edge", "none", x - wide / 2, y - high / 2, wide, high, measured)
    facts = [_size(form.width_mm, form.height_mm)]
    lit = lit_share(circle, Interval.exact(form.width_mm), Interval.exact(form.height_mm))
    if is_known(lit):
        facts.append(f"{_share(lit, circle)} of it is lit")
    return [named(x + wide / 2, y - high / 4, f"if the body is {form.name}", *facts)]


def _share(lit: Interval, circle: Interval) -> str:
    """'15 to 44 %'; of a circle that is only known at its least, at least so much."""
    if percent(lit.least) == percent(lit.greatest):
        return percent(lit.least)
    return ranged(lit, percent) if isfinite(circle.greatest) else f"at least {percent(lit.least)}"


def _crop(page: Page, judged: Judged, form: Format, circle: Interval, aspect: float, scale: float, x: float,
          y: float) -> list[Label]:  # fmt: skip
    """The largest frame of this aspect that is lit for sure."""
    wide, high = largest_crop_mm(circle, form.width_mm, form.height_mm, aspect)
    if not (is_known(wide) and is_known(high)) or high.least <= 0:
        return []
    sure, tall = wide.least, high.least
    whole = abs(sure - form.width_mm) < 1e-9 and abs(tall - form.height_mm) < 1e-9
    if whole:
        return [named(x + sure * scale / 2, y, "lit to the corners", "the whole frame")]
    left, upper = x - sure * scale / 2, y - tall * scale / 2
    measured = Measured("crop_mm", tall, scale, wide_mm=sure)
    page.box("unknown", "none", left, upper, sure * scale, tall * scale, measured)
    arm = min(3.0, sure * scale / 3, tall * scale / 3)
    for px, sx in ((left, 1), (left + sure * scale, -1)):
        for py, sy in ((upper, 1), (upper + tall * scale, -1)):
            page.line("thick", [(px + sx * arm, py), (px, py), (px, py + sy * arm)])
    facts = [_size(sure, tall)]
    recorded = min(form.width_mm, form.height_mm * aspect)  # the widest frame of this shape that can be recorded
    cost = punch_in(*(Interval.exact(side) for side in (recorded, recorded / aspect, sure, tall)))
    if is_known(cost) and cost.nominal > 1.004:
        facts.append(f"punch in to {percent(cost.nominal)} in that shape")
    focal = measure(judged.trace, "combined_focal_mm")
    if is_known(focal):
        facts.append(f"frames like {focal.nominal * FULL_FRAME_DIAGONAL_MM / hypot(sure, tall):.0f} mm, by diagonal")
    if judged.setup.body.pixels:
        across, down = pixels_left(judged.setup.body.pixels, form.width_mm, form.height_mm, sure, tall)
        facts.append(f"{across} x {down} pixels are left")
    return [named(left + sure * scale, y, f"sure crop {aspect_text(aspect)}", *facts)]


def _facts(judged: Judged, y: float) -> list[Label]:
    """What the frame makes of the lens: numbers that have no place in the picture."""
    crop, equal = measure(judged.trace, "crop_factor"), measure(judged.trace, "equivalent_focal_mm")
    if not is_known(crop):
        return []
    rows = [f"{trimmed(crop.nominal, 2)} against 36 x 24 mm"]
    if is_known(equal):
        rows.append(f"all of it is like {equal.nominal:.0f} mm there")
    return [Label(ELBOW, y, named(ELBOW, y, "crop factor by diagonal", *rows).lines, 1, led=False)]


def _size(wide: float, high: float) -> str:
    return f"{trimmed(wide, 2)} x {trimmed(high, 2)} mm"


def _says(judged: Judged, form: Format | None, circle: Measure, aspect: float | None) -> str:
    """The drawing in words."""
    parts = [f"Frame: {form.name}, {_size(form.width_mm, form.height_mm)}." if form else "No frame is known."]
    parts.append(f"Image circle: {circle_text(circle) if is_known(circle) else 'not known'}.")
    lit = measure(judged.trace, "lit_share")
    if is_known(lit):
        least = "" if is_known(circle) and isfinite(circle.greatest) else "at least "
        parts.append(f"Lit: {least}{percent(lit.nominal)} of the frame.")
    if form is not None and is_known(circle):
        ratio = aspect or form.width_mm / form.height_mm
        wide, high = largest_crop_mm(circle, form.width_mm, form.height_mm, ratio)
        if is_known(wide) and is_known(high):
            parts.append(f"Largest crop of {aspect_text(ratio)} that is lit for sure: {_size(wide.least, high.least)}.")
    return " ".join(parts)


def _notes(judged: Judged, form: Format, circle: Measure) -> list[str]:
    rows = []
    if is_known(circle) and circle.least < hypot(form.width_mm, form.height_mm):
        rows.append("Hatched: dark, or not sure to be lit. Thick corners: the crop that is lit for sure.")
    if is_known(circle) and not isfinite(circle.greatest):
        rows.append("Such lenses light the format they are made for; how much more they light is not known.")
    elif is_known(circle) and circle_text(circle) != f"{trimmed(circle.nominal, 1)} mm":
        rows.append(
            "Dashed circle: the likeliest; dotted: the least and the greatest it may be, where they stand apart."
        )
    if judged.trace.given["image_circle_mm"].assumed and is_known(circle):
        rows.append("The circle is that usual for such lenses, not measured on this one. Rings and tubes may clip it.")
    return rows
