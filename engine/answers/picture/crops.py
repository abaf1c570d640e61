"""The largest clean crop of each shape on a frame: its size, punch-in, pixels left, and what the lens is like on it."""

from __future__ import annotations

from collections.abc import Iterator
from math import ceil, hypot, inf

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import percent, trimmed
from engine.answers.picture.crop_factors import shapes_told
from engine.answers.picture.pixels import pixels_lines
from engine.base.compact import compact
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question

WIDE = 16 / 9  # the shape of moving pictures
_USUAL_SHAPES = (("3:2", 1.5), ("4:3", 4 / 3), ("16:9", WIDE), ("1:1", 1.0))
SHAPE_NEAR = 0.02
LARGEST_CLEAN = "largest clean"  # how the line of such a crop begins


@compact
class Falls:
    """How a circle falls on a frame: the frame, how far its centre is shifted (mm), and what lens threw it."""

    form: Format
    right: float = 0.0
    up: float = 0.0
    focal_mm: float | None = None
    f_number: float | None = None
    extension_mm: float = 0.0


def crop_lines(circle: Interval, falls: Falls, question: Question, knowledge: Knowledge, case: str) -> Told:
    """The largest clean frame of the shape asked for, else of the format's own and of 16:9."""
    told = Told()
    for name, aspect in shapes(falls.form, question):
        told += _crop(circle, falls, name, aspect, question, knowledge, case)
    return told


def free_crops(circle: Interval, question: Question) -> Told:
    """The largest rectangle of each shape inside the circle alone, where no frame is told; claimed on the least."""
    parts, rows = [], []
    for name, aspect in _asked(None, question) or _USUAL_SHAPES:
        wide, high = coverage.largest_crop_mm(circle, inf, inf, aspect)
        if not (is_known(wide) and is_known(high)) or high.least <= 0:
            continue
        tag = f"{name} in the circle alone"
        rows += [Quantity("crop_width_mm", wide, tag), Quantity("crop_height_mm", high, tag)]
        factor, by_width = coverage.crop_factor(wide, high), coverage.crop_factor_by_width(wide)
        rows += [Quantity("crop_factor", factor, tag)] if is_known(factor) else []
        rows += [Quantity("crop_factor_by_width", by_width, tag)] if is_known(by_width) else []
        crop = f" (crop factor {factor.greatest:.2f})" if is_known(factor) else ""
        parts.append(f"{name} {wide.least:.1f} x {high.least:.1f} mm{crop}")
    if not parts:
        return Told()
    size = trimmed(circle.least, 2)
    return Told((Line("head", f"The largest that a circle of {size} mm holds: {'; '.join(parts)}."),), tuple(rows))


def shapes(form: Format, question: Question) -> Iterator[tuple[str, float]]:
    """Shapes asked for as (name, width over height); the format's own and 16:9 where none is."""
    asked = _asked(form, question)
    if asked:
        yield from asked
        return
    own = form.width_mm / form.height_mm
    yield "own-shape", own
    if abs(own - WIDE) > SHAPE_NEAR:
        yield "16:9", WIDE


def asks_shape(question: Question) -> bool:
    """Whether a shape of the frame is told: by two numbers, or as a square."""
    return ":" in (question.said("crop") or "") or bool(_asked(None, question))


def drawn_so_large(question: Question) -> bool:
    """'at 1:1, does it cover': how large it draws, and no shape."""
    return mentions(question, "drawn-so-large")


def _asked(form: Format | None, question: Question) -> list[tuple[str, float]]:
    out = shapes_told(question)
    if question.said("magnification") == "1" and mentions(question, "one-to-one") and not drawn_so_large(question):
        out.append(("1:1", 1.0))
    if form is not None and mentions(question, "native-shape"):
        out.append(("own-shape", form.width_mm / form.height_mm))
    return out


def _crop(
    circle: Interval, falls: Falls, name: str, aspect: float, question: Question, knowledge: Knowledge, case: str
) -> Told:
    form = falls.form
    wide, high = coverage.largest_crop_mm(circle, form.width_mm, form.height_mm, aspect, falls.right, falls.up)
    tag = f"{name} on {form.id}, {case}"
    if not (is_known(wide) and is_known(high)) or high.least <= 0:
        return Told((Line("fact", f"no clean {name} crop: the middle of the frame may be dark", 2),))
    crop, by_width = coverage.crop_factor(wide, high), coverage.crop_factor_by_width(wide)
    recorded = min(form.width_mm, form.height_mm * aspect)  # the widest frame of this shape that can be recorded
    punch = coverage.punch_in(Interval.exact(recorded), Interval.exact(recorded / aspect), wide, high)
    rows = [
        Quantity(quantity, value, tag)
        for quantity, value in (
            ("crop_width_mm", wide), ("crop_height_mm", high), ("crop_factor", crop),
            ("crop_factor_by_width", by_width), ("punch_in", punch),
        )
        if is_known(value)
    ]  # fmt: skip
    if not (is_known(crop) and is_known(by_width) and is_known(punch)):
        return Told((), tuple(rows))
    # what is claimed is claimed on the least circle
    share = percent(wide.least / form.width_mm)
    text = f"{LARGEST_CLEAN} {name} crop {wide.least:.1f} x {high.least:.1f} mm, {share} of the width"
    if punch.greatest > 1.0005:
        # rounded up: a punch-in of a percent less would show the corners
        text += f": punch in to {ceil(punch.greatest * 100 - 1e-6)} % on a timeline of that shape"
    text += f"; crop factor {crop.greatest:.2f} by diagonal, {by_width.greatest:.2f} by width"
    left = pixels_lines(falls.form, wide, high, tag, question, knowledge)
    like = like_line(falls, wide.least, high.least, "there", tag)
    return Told((Line("fact", text, 2),), tuple(rows)) + left + like


def like_line(falls: Falls, wide: float, high: float, lead: str, case: str) -> Told:
    """What the lens is like on full frame, and its angle of view, on an area of this size (mm); empty without f."""
    if falls.focal_mm is None:
        return Told()
    f, x = Interval.exact(falls.focal_mm), Interval.exact(falls.extension_mm)
    factor = coverage.FULL_FRAME_DIAGONAL_MM / hypot(wide, high)
    equal = falls.focal_mm * factor
    angles = [coverage.angle_of_view_deg(Interval.exact(side), f, x) for side in (wide, high, hypot(wide, high))]
    rows = [Quantity("equivalent_focal_mm", Interval.exact(equal), case)]
    text = f"{lead} it frames like {equal:.0f} mm"
    if falls.f_number is not None:
        rows.append(Quantity("equivalent_f_number", Interval.exact(falls.f_number * factor), case))
        text += f" on full frame, with the depth of field of f/{trimmed(falls.f_number * factor, 1)}"
    else:
        text += " on full frame"
    degrees = [angle.nominal for angle in angles if is_known(angle)]
    if len(degrees) == len(angles):
        text += f"; angle of view {degrees[0]:.0f} x {degrees[1]:.0f} degrees, {degrees[2]:.0f} across the diagonal"
        rows += [
            Quantity(f"angle_of_view_{side}_deg", Interval.exact(value), case)
            for side, value in zip(("width", "height", "diagonal"), degrees, strict=True)
        ]
    return Told((Line("fact", text, 3 if lead == "there" else 2),), tuple(rows))
