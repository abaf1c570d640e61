"""What is sharp ahead of the camera, on a straight ruler that begins at the sensor."""

from __future__ import annotations

from math import isfinite
from typing import Final

from engine.answers.parts.wording import distance
from engine.base.interval import Measure, is_known
from engine.base.units import MM_PER_FOOT, MM_PER_INCH
from engine.render.drawing import MARGIN, SIZE, SMALL, WIDTH, Label, Measured, Page, scale_for, scale_text
from engine.render.lettering import text_width, wrapped
from engine.render.reach import FAR, Reach, mark_text, to_figures

LEFT: Final = MARGIN + 5.0
LONG: Final = WIDTH - 2 * MARGIN - 24.0  # paper for the ruler; the rest is for what goes on beyond it
BAR: Final = 5.0
BROKEN: Final = 14.0  # paper for an end that is not known


def draw_ruler(page: Page, reach: Reach, top: float) -> float:
    """The ruler under `top`; gives where it ends. Says in words what cannot be drawn."""
    page.text(MARGIN, top, "Ahead of the camera", bold=True)
    if reach.high is None or not drawable(reach):
        return _in_words(page, reach, top)
    low, high = reach.low, reach.high
    shown = _shown(low, high, reach)
    scale = scale_for(shown, LONG)
    page.text(
        MARGIN + text_width("Ahead of the camera", SIZE, True) + 3,
        top,
        f"measured from the sensor, at {scale_text(scale)}",
    )
    told = _ends(low, high, reach.feet)
    bar = top + 17.0
    base = bar + BAR + 3.0
    end = LEFT + shown * scale
    page.line("thick", [(LEFT, bar - 2), (LEFT, base)])
    page.line("edge", [(LEFT, base), (end, base)])
    _ticks(page, scale, shown, base, reach.feet)
    rows = [_label(LEFT, bar - 2, "sensor")]
    if reach.front is not None and 0 < reach.front * scale < end - LEFT:
        at = LEFT + reach.front * scale
        page.line("unknown", [(at, bar - 1), (at, base)])
        rows.append(_label(at, bar - 1, "front glass"))
    beyond = high > shown * 1.0001
    right = end if beyond else LEFT + high * scale
    left = LEFT + low * scale if low is not None else max(right - BROKEN, LEFT + 1)
    page.box(
        "edge" if low is not None else "unknown", "rise" if low is not None else "sparse", left, bar, right - left, BAR
    )
    if low is not None:
        page.line("edge", [(left, bar), (left, bar + BAR)])
        page.line("hair", [(LEFT, base), (left, base)], Measured("low_from_sensor_mm", low, scale))
        rows.append(_label(left, bar, f"sharp from {told[0]}"))
    else:
        page.text(left + 2.0, bar - 1.0, "?", anchor="middle", bold=True)
    if beyond:
        _goes_on(page, reach, right, bar, high)
    else:
        page.line("hair", [(LEFT, base), (right, base)], Measured("high_from_sensor_mm", high, scale))
        rows.append(_label(right, bar, f"to {told[1]}"))
    page.labels_across(rows, top + 4.5, top + 11.5, MARGIN, WIDTH - MARGIN)
    _open_ends(page, reach, scale, bar + BAR + 1.2, end)
    return base + 9.0


def drawable(reach: Reach) -> bool:
    """Whether an end of what is sharp is known and not at infinity."""
    return reach.high is not None and (isfinite(reach.high) or (reach.low is not None and isfinite(reach.low)))


def _in_words(page: Page, reach: Reach, top: float) -> float:
    if not reach.moves_whole:
        text = "This lens focuses by moving a part of itself: what is sharp at which setting cannot be worked out."
    elif reach.glass:
        text = "There is glass in the stack of which too little is known: distances cannot be worked out."
    elif reach.focal is None:
        text = "Distances hang on the focal length, which is not known."
    elif reach.shortest is None:
        text = "Distances hang on the seat, which is not known: a register or a thickness is missing."
    elif reach.low is not None:
        text = "Far things alone are sharp: nothing brings it nearer, or it sits too close for anything to be sharp."
    else:
        text = "Sharp from infinity down to a distance that is not known: how far the ring moves the lens is missing."
    y = top
    for words in wrapped(text, WIDTH - 2 * MARGIN, SIZE, 3):
        y += 5.0
        page.text(MARGIN, y, words)
    return y + 5.0


def _shown(low: float | None, high: float, reach: Reach) -> float:
    """How far the ruler goes: past the far end, or some way towards one that is very far."""
    if low is None:
        return high * 1.15
    if high > 14 * low:
        return 6 * low
    greatest = reach.far.greatest if is_known(reach.far) and isfinite(reach.far.greatest) else high
    return max(high * 1.1, min(greatest, high * 1.5))


def _ticks(page: Page, scale: float, shown: float, base: float, feet: bool) -> None:
    """Round distances along the ruler, as many as can be lettered."""
    units = (MM_PER_FOOT, MM_PER_INCH) if feet else (1.0,)
    unit = next((one for one in units if shown >= 2 * one), units[-1])
    step = next(n * 10.0**p * unit for p in range(-3, 12) for n in (1, 2, 5) if n * 10.0**p * unit * scale >= 17.0)
    count = int(shown / step + 1e-9)
    for n in range(count + 1):
        x = LEFT + n * step * scale
        page.line("edge", [(x, base), (x, base + 1.6)])
        told = f"{n * step / unit:.4g} {'ft' if unit == MM_PER_FOOT else 'in'}" if feet else mark_text(n * step)
        page.text(x, base + 1.6 + SMALL, told if n else "0", SMALL, anchor="middle")


def _goes_on(page: Page, reach: Reach, x: float, bar: float, high: float) -> None:
    """The far end past the ruler: an arrow and where it leads."""
    kind = "unknown" if reach.carried else "edge"
    middle = bar + BAR / 2
    page.line(kind, [(x, middle), (x + 8, middle)])
    page.line("edge", [(x + 6.2, middle - 1.2), (x + 8, middle), (x + 6.2, middle + 1.2)])
    page.text(x + 9, middle + 1.1, mark_text(to_figures(high, 2, reach.feet), reach.feet), bold=True)


def _open_ends(page: Page, reach: Reach, scale: float, y: float, end: float) -> None:
    """A dotted line over all that the ends may be, tolerances and assumed planes together."""
    for name, value in (("near", reach.near), ("far", reach.far)):
        ends = _finite(value)
        if ends is None or ends[1] - ends[0] < 0.4 / scale or LEFT + ends[1] * scale > end:
            continue
        x1, x2 = LEFT + ends[0] * scale, LEFT + ends[1] * scale
        measured = Measured("open_mm", ends[1] - ends[0], scale, of=name)
        at = y if name == "near" else y + 0.9
        page.line("ghost", [(x1, at), (x2, at)], measured)


def _finite(value: Measure) -> tuple[float, float] | None:
    if not is_known(value) or value.greatest > FAR:
        return None
    return value.least, value.greatest


def _ends(low: float | None, high: float, feet: bool) -> tuple[str, str]:
    """Both ends in as many figures as tell them apart."""
    if low is None or not isfinite(high):
        return (distance(low, feet) if low is not None else ""), mark_text(to_figures(high, 2, feet), feet)
    for count in (2, 3, 4):
        told = mark_text(to_figures(low, count, feet), feet), mark_text(to_figures(high, count, feet), feet)
        if told[0] != told[1]:
            break
    return told


def _label(x: float, y: float, text: str) -> Label:
    return Label(x, y, (text,))
