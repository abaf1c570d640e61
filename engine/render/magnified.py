"""The image against the sensor, magnified: how far off it falls, what a stop forgives, what the making leaves open."""

from __future__ import annotations

from math import isfinite
from typing import Final

from engine.answers.parts.wording import f_number, trimmed
from engine.base.interval import Interval, is_known
from engine.render.drawing import SCALES, Label, Measured, Page, scale_text
from engine.render.naming import COLUMN, ELBOW, named
from engine.render.stack import Stack

HALF_HEIGHT: Final = 13.0
HALF_WIDTH: Final = 30.0
NEAR_NOTHING: Final = 0.0005


def draw_magnified(page: Page, stack: Stack, axis: float) -> None:
    """A window on the last tenths of a millimetre, under everything drawn so far."""
    error = stack.error.shortest
    if not is_known(error):
        return
    allowed = stack.allowance.nominal if is_known(stack.allowance) and not stack.glass else 0.0
    scale = scale_of(error, allowed)
    if scale is None:
        return
    top = page.bottom + 7.0
    middle = top + HALF_HEIGHT + 1.5
    at, against = ("lens flange", "right lens flange") if stack.glass else ("image", "sensor")
    title = f"{at} against {'its place' if stack.glass else 'sensor'}, {scale_text(scale)}"
    page.text(axis - HALF_WIDTH, top - 1.0, title, bold=True)
    page.box("hair", "none", axis - HALF_WIDTH, middle - HALF_HEIGHT, 2 * HALF_WIDTH, 2 * HALF_HEIGHT)
    rows = []
    y = middle - error.nominal * scale
    right = axis + HALF_WIDTH
    if not stack.glass:
        page.box("hair", "dark", axis - HALF_WIDTH, middle, 2 * HALF_WIDTH, 1.8)
    if allowed:
        rows.append(_forgiven(page, axis, middle, allowed, scale, stack.stop))
    page.line("edge", [(axis - HALF_WIDTH, middle), (right, middle)])
    rows.append(named(right - 2, middle, against, "where the flange should be" if stack.glass else "its front face"))
    page.line("image", [(axis - HALF_WIDTH + 6, y), (right - 6, y)])
    off = f"{trimmed(abs(error.nominal), 3)} mm {'too far out' if error.nominal > 0 else 'too close'}"
    near = abs(error.nominal) < NEAR_NOTHING
    rows.append(named(right - 6, y, at, "just right" if near else off))
    if not near:
        measured = Measured("register_error_mm", abs(error.nominal), scale, of="magnified")
        page.line("measure", [(axis, middle), (axis, y)], measured)
    if error.width > NEAR_NOTHING:
        _spread(page, axis - 12, middle, error, scale)
        ends = f"{trimmed(error.least, 3)} to {trimmed(error.greatest, 3)} mm"
        high = min(max(middle - error.greatest * scale, middle - HALF_HEIGHT), middle + HALF_HEIGHT)
        rows.append(named(axis - 12, high, "left open by tolerances", ends))
    page.labels(rows, COLUMN, ELBOW, top - 2.0, middle + HALF_HEIGHT + 4.0)


def scale_of(error: Interval, allowed: float) -> float | None:
    """A round scale at which the error shows and, as far as there is room, what is open and what is forgiven."""
    off = abs(error.nominal)
    widest = max(off, allowed, *(abs(end) for end in (error.least, error.greatest) if isfinite(end)), 0.0)
    if widest < NEAR_NOTHING:
        return None
    wanted = (HALF_HEIGHT - 1.5) / widest
    if off >= NEAR_NOTHING:
        wanted = max(wanted, min(2.0, HALF_HEIGHT - 2) / off)
    fitting = [scale for scale in SCALES if scale <= wanted * 1.0001 and off * scale <= HALF_HEIGHT - 1]
    return float(fitting[0]) if fitting else None


def _forgiven(page: Page, axis: float, middle: float, allowed: float, scale: float, stop: float | None) -> Label:
    """The band around the sensor that the depth of focus forgives; cut at the window where it is wider."""
    high = min(allowed * scale, HALF_HEIGHT)
    whole = allowed * scale <= HALF_HEIGHT
    measured = Measured("infinity_allowance_mm", 2 * allowed, scale, of="both sides") if whole else None
    page.box("hair", "sparse", axis + 4, middle - high, HALF_WIDTH - 12, 2 * high, measured)
    at = f"at f/{f_number(stop)} " if stop else ""
    told = f"{at}{trimmed(allowed, 3)} mm each side{'' if whole else ', more than shown'}"
    return named(axis + HALF_WIDTH - 8, middle - high * 0.6, "forgiven by depth of focus", told)


def _spread(page: Page, x: float, middle: float, error: Interval, scale: float) -> None:
    """A bar from the least to the greatest error, with ends where they lie in the window."""
    ends = [middle - end * scale for end in (error.greatest, error.least)]
    shown = [min(max(end, middle - HALF_HEIGHT), middle + HALF_HEIGHT) for end in ends]
    whole = ends == shown
    measured = Measured("register_error_spread_mm", error.width, scale) if whole else None
    page.line("measure", [(x, shown[0]), (x, shown[1])], measured)
    for end, at in zip(ends, shown, strict=True):
        if end == at:
            page.line("edge", [(x - 1.2, at), (x + 1.2, at)])
