"""How much of a frame an image circle lights, and what the frame makes of the lens. Lengths in mm."""

from __future__ import annotations

from math import asin, atan, degrees, hypot, inf, pi, radians, sqrt, tan
from typing import Final

from engine.base.interval import UNKNOWN, Measure, is_known
from engine.physics.enclose import enclose

FULL_FRAME_WIDTH_MM: Final = 36.0
FULL_FRAME_DIAGONAL_MM: Final = hypot(FULL_FRAME_WIDTH_MM, 24.0)  # what crop factors are counted from


def image_circle_mm(
    circle: Measure,
    extension: Measure,
    focal_length: Measure,
    pupil: Measure,
    growth: Measure,
    growth_without_pupil: Measure,
) -> Measure:
    """The circle at extension x: C(1 + g*x/(p*f)); with p unknown C(1 + g*x/f), by the other `growth`.

    The true circle lies in the interval; coverage is claimed on its least. Tubes may clip it further.
    Source: optics model, image circle.
    """
    if is_known(extension) and extension.is_exact and extension.nominal == 0:
        return circle
    if not is_known(pupil):
        return enclose(lambda c, x, f, g: c * (1 + g * x / f), circle, extension, focal_length, growth_without_pupil)
    if pupil.least <= 0:
        return UNKNOWN
    return enclose(lambda c, x, f, p, g: c * (1 + g * x / (p * f)), circle, extension, focal_length, pupil, growth)


def lit_area_mm2(radius: float, left: float, bottom: float, right: float, top: float) -> float:
    """Area of a rectangle that lies inside a circle of `radius` about the origin, exactly."""
    return (
        _from_axes(radius, right, top)
        - _from_axes(radius, left, top)
        - _from_axes(radius, right, bottom)
        + _from_axes(radius, left, bottom)
    )


def _from_axes(radius: float, x: float, y: float) -> float:
    """Signed area inside the circle of the rectangle between the axes and (x, y)."""
    if x < 0:
        return -_from_axes(radius, -x, y)
    if y < 0:
        return -_from_axes(radius, x, -y)
    if radius == inf or x * x + y * y <= radius * radius:
        return x * y
    x, y = min(x, radius), min(y, radius)
    start = sqrt(max(radius * radius - y * y, 0.0))  # where the circle comes down to the top edge
    return y * start + _under_circle(radius, x) - _under_circle(radius, start)


def _under_circle(radius: float, x: float) -> float:
    """Area under the circle from its axis to `x`."""
    if x >= radius:
        return pi * radius * radius / 4
    return (x * sqrt(radius * radius - x * x) + radius * radius * asin(x / radius)) / 2


def lit_share(circle: Measure, width: Measure, height: Measure) -> Measure:
    """Share of a frame's area, 0..1, that a centred image circle lights. Source: plane geometry."""
    return enclose(lambda c, w, h: lit_share_off_centre(c, w, h, 0.0, 0.0), circle, width, height)


def lit_share_shifted(circle: Measure, width: Measure, height: Measure, right: float, up: float) -> Measure:
    """The same with the frame's centre moved off the circle's, as by a shift adapter. Source: plane geometry."""
    return enclose(lambda c, w, h: lit_share_off_centre(c, w, h, right, up), circle, width, height)


def lit_share_off_centre(circle: float, width: float, height: float, right: float, up: float) -> float:
    """The same with the frame's centre moved `right` and `up` from the circle's. Source: plane geometry."""
    if circle <= 0:
        return 0.0
    area = lit_area_mm2(circle / 2, right - width / 2, up - height / 2, right + width / 2, up + height / 2)
    return min(max(area / (width * height), 0.0), 1.0)


def shift_left_mm(circle: Measure, side: Measure, across: Measure) -> Measure:
    """How far a frame may be shifted along `side` until the corners of its leading edge leave the circle; at least 0.

    The corner at (s + side/2, across/2) then lies on the circle. Source: plane geometry.
    """

    def left(c: float, s: float, a: float) -> float:
        return max(sqrt(max((c * c - a * a) / 4, 0.0)) - s / 2, 0.0)

    return enclose(left, circle, side, across)


def crop_factor(width: Measure, height: Measure) -> Measure:
    """Diagonal of 36 x 24 over the diagonal of the area used. Source: the trade's definition."""
    return enclose(lambda w, h: FULL_FRAME_DIAGONAL_MM / hypot(w, h), width, height)


def crop_factor_by_width(width: Measure) -> Measure:
    """36 over the width of the area used, as the makers of motion pictures count. Source: the trade's definition."""
    return enclose(lambda w: FULL_FRAME_WIDTH_MM / w, width)


def equivalent(value: Measure, crop: Measure) -> Measure:
    """A focal length or f-number times the crop factor: what frames alike, or blurs alike, on 36 x 24.

    Never for exposure. Source: the trade's definition.
    """
    return value * crop if is_known(value) else UNKNOWN


def largest_crop_mm(
    circle: Measure, width: float, height: float, aspect: float, right: float = 0.0, up: float = 0.0
) -> tuple[Measure, Measure]:
    """Width and height of the largest frame of `aspect` (width over height) inside both circle and frame.

    It keeps the frame's centre, which may stand `right` and `up` of the circle's: its far corner then lies on the
    circle, (right + aspect*h/2)^2 + (up + h/2)^2 = (C/2)^2. 0 where the centre itself is dark. Source: plane geometry.
    """
    tallest = min(height, width / aspect)
    high = enclose(lambda c: min(tallest, _tall_in_circle(c / 2, aspect, abs(right), abs(up))), circle)
    return (high * aspect if is_known(high) else UNKNOWN), high


def _tall_in_circle(radius: float, aspect: float, right: float, up: float) -> float:
    """h, the larger root of (right + aspect*h/2)^2 + (up + h/2)^2 = radius^2, at least 0."""
    square, linear = (1 + aspect * aspect) / 4, right * aspect + up
    under = linear * linear - 4 * square * (right * right + up * up - radius * radius)
    return max((sqrt(under) - linear) / (2 * square), 0.0) if under > 0 else 0.0


def angle_of_view_deg(side: Measure, focal_length: Measure, extension: Measure) -> Measure:
    """2*atan(side / (2(f + x))): what one side or the diagonal of the area used takes in, lens drawn true to line.

    Source: similar triangles through the principal planes, image distance f + x.
    """
    return enclose(lambda s, f, x: 2 * degrees(atan(s / (2 * (f + max(x, 0.0))))), side, focal_length, extension)


def image_of_angle_mm(focal_length: Measure, angle_deg: Measure) -> Measure:
    """2f*tan(angle / 2), mm: how wide on the sensor what is far off and seen under that angle is, lens at infinity.

    Source: optics model, drawn true to line.
    """
    return enclose(lambda f, a: 2 * f * tan(radians(a) / 2), focal_length, angle_deg)


def hood_mm(width: Measure, opening: Measure, focal_length: Measure, diagonal: Measure) -> Measure:
    """How far ahead of the entrance pupil a round rim may stand: the beam to the corner widens by diagonal / f.

    (width - opening) * f / diagonal, in mm; `opening`: f/N, the pupil that the beam fills. Source: similar triangles.
    """

    def longest(d: float, p: float, f: float, diag: float) -> float:
        return (d - p) * f / diag

    return enclose(longest, width, opening, focal_length, diagonal)


def punch_in(width: Measure, height: Measure, crop_width: Measure, crop_height: Measure) -> Measure:
    """How much a crop must be enlarged to fill the frame across its tighter side; 1: nothing is lost.

    Source: plane geometry.
    """
    return enclose(lambda w, h, cw, ch: max(w / cw, h / ch), width, height, crop_width, crop_height)


def pixels_left(
    pixels: tuple[int, int], width: float, height: float, crop_width: float, crop_height: float
) -> tuple[int, int]:
    """Whole pixels of a crop, across and down. Source: plane geometry."""
    return int(pixels[0] * crop_width / width + 1e-9), int(pixels[1] * crop_height / height + 1e-9)
