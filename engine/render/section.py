"""The stack in section: the lens above, the body below, every piece between, and where the image falls."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from engine.answers.parts.wording import f_number, listed
from engine.answers.seat.described import BENDS
from engine.base.interval import is_known
from engine.judging.judge import Judged
from engine.render.cutting import Cutting
from engine.render.drawing import MARGIN, Label, Measured, Page, column_height, scale_text
from engine.render.gauges import Gauge, draw_gauges, gauge_labels
from engine.render.levels import Levels, levels_of
from engine.render.magnified import draw_magnified
from engine.render.naming import COLUMN, ELBOW, millimetres, off_text, part_labels, thickness_text
from engine.render.stack import Stack, stack_of

AXIS: Final = 101.0
SEEN: Final = 1.0  # mm of paper below which a distance is magnified


def section(judged: Judged, names: Mapping[str, str]) -> str:
    """An SVG of the chain in section. `names`: designation of each mount by its id."""
    stack = stack_of(judged, names)
    levels = levels_of(stack)
    setup = judged.setup
    page = Page(f"{setup.lens.name or 'lens'} on {setup.body.name or 'body'}, cut along the axis", _says(stack))
    under = f"Far things send their light from the top. Drawn at {scale_text(levels.scale)}"
    under += ", lens at its infinity mark" if setup.lens.focusing != "none" else ""
    top = page.heading(under + (", every helicoid at its shortest." if stack.travel_mm else "."))
    cutting = Cutting(page, stack, levels, AXIS)
    names_high = column_height(part_labels(judged, stack, levels, cutting, names, AXIS, 0.0))
    high = levels.bottom - levels.top + 9.0
    flange = top + 3.0 - levels.top + max(names_high - high, 0.0) / 2
    cutting.draw(flange)
    gauges = _gauges(stack, levels, flange, cutting)
    draw_gauges(page, gauges)
    bottom = max(flange + levels.bottom + 6.0, top + names_high)
    page.labels(part_labels(judged, stack, levels, cutting, names, AXIS, flange), COLUMN, ELBOW, top, bottom)
    gauge_labels(page, gauges, _not_known(stack, levels, flange), top, bottom)
    page.scale_bar(levels.scale, MARGIN, page.bottom + 5.0)
    error = stack.error_mm
    if error is not None and abs(error) * levels.scale < SEEN:
        draw_magnified(page, stack, AXIS)
    page.notes(_notes(judged, stack))
    return page.svg()


def _says(stack: Stack) -> str:
    """The drawing in words, for who cannot see it."""
    pieces = ", ".join(f"{piece.name} ({thickness_text(piece)})" for piece in reversed(stack.pieces)) or "nothing"
    parts = [f"From the lens to the body stand: {pieces}."]
    if stack.seat_mm is not None:
        parts.append(f"Lens flange to body flange: {millimetres(stack.seat_mm)}.")
    if stack.body_register_mm is not None:
        parts.append(f"Body flange to sensor: {millimetres(stack.body_register_mm)}.")
    if stack.error_mm is None:
        parts.append("Where the image falls is not known.")
    elif stack.glass:
        parts.append(f"The seat is off by {millimetres(stack.error_mm)}; above 0 is too far out.")
    else:
        parts.append(f"The image of far things falls {off_text(stack.error_mm)}.")
    rear, depth = stack.overhang_mm, stack.clear_depth_mm
    parts.append(f"Overhang of the rear: {'not known' if rear is None else millimetres(rear)}.")
    parts.append(f"Free depth behind the flange: {'not known' if depth is None else millimetres(depth)}.")
    return " ".join(parts)


def _gauges(stack: Stack, levels: Levels, flange: float, cutting: Cutting) -> list[Gauge]:
    """The lengths along the axis that are drawn at the left."""
    rows: list[Gauge] = []

    def add(name: str, quantity: str, ends: tuple[float, float], mm: float | None, reach: tuple[float, float]) -> None:
        if mm is None:
            return
        measured = Measured(quantity, abs(mm), levels.scale)
        one, other = (flange + end for end in ends)
        rows.append(Gauge(one, other, AXIS - reach[0], AXIS - reach[1], (name, millimetres(abs(mm))), measured))

    out, sensor, image, seat = levels.outside, cutting.sensor_half, cutting.image_half, levels.lens_flange
    if stack.seat_mm:
        name, edge = ("seat", out) if stack.seat_mm > 0 else ("seat inside flange", cutting.barrel)
        add(name, "seat_mm", (0.0, seat), stack.seat_mm, (out, edge))
    if stack.travel_mm:
        add("settable by", "settable_mm", (seat, levels.longest), stack.travel_mm, (out, cutting.barrel))
    add("body register", "body_register_mm", (0.0, levels.sensor), stack.body_register_mm, (out, sensor))
    if levels.image is not None:
        at = levels.image
        name = "lens register, usual" if stack.register_usual else "lens register"
        add(name, "lens_register_mm", (seat, at), stack.lens_register_mm, (cutting.barrel, image))
        if levels.principal is not None and stack.beam_mm is not None:
            beam = levels.half(stack.beam_mm)
            add("focal length", "focal_length_mm", (levels.principal, at), stack.focal_mm, (beam, image))
        error = stack.error_mm
        if error is not None and stack.body_register_mm is not None and abs(error) * levels.scale >= SEEN:
            name = "too far out by" if error > 0 else "too close by"
            add(name, "register_error_mm", (levels.sensor, at), error, (sensor, image))
    if levels.right_seat is not None and stack.error_mm is not None and abs(stack.error_mm) * levels.scale >= SEEN:
        name = "too far out by" if stack.error_mm > 0 else "too close by"
        add(name, "register_error_mm", (seat, levels.right_seat), stack.error_mm, (out, out - 5))
    if stack.rear_reach_mm is not None and stack.overhang_mm is not None:
        name = "overhang" if stack.overhang_mm > 0 else "rear ends ahead by"
        add(name, "overhang_mm", (0.0, levels.rear), stack.overhang_mm, (out, cutting.rear_half))
    add("free depth", "clear_depth_mm", (0.0, levels.depth), stack.clear_depth_mm, (out, cutting.depth_half))
    return rows


def _not_known(stack: Stack, levels: Levels, flange: float) -> list[Label]:
    """What is missing on the left, said where it would stand."""
    rows = []
    left = AXIS - levels.outside
    if stack.seat_mm is None:
        rows.append(Label(left, flange + levels.lens_flange / 2, ("seat", "not known")))
    if stack.body_register_mm is None:
        rows.append(Label(left + 6, flange + levels.sensor / 2 + 2.0, ("body register", "not known")))
    if stack.lens_register_mm is None:
        rows.append(Label(AXIS - 6, flange + levels.lens_flange, ("lens register", "not known")))
    return rows


def _notes(judged: Judged, stack: Stack) -> list[str]:
    rows = [
        "Lengths along the axis are to scale, and so are openings, sensor and beam where full lines bound them. "
        "Wavy edges: the outside is not drawn. Broken lines and a question mark: not known, drawn at no scale."
    ]
    if stack.error_mm is None:
        rows.append("Where the image falls cannot be drawn: a register or a thickness is not known.")
    if stack.register_usual:
        rows.append("The lens's register is what is usual for lenses of its kind and length; its own is not known.")
    bending = [piece.name for piece in stack.pieces if piece.kind in BENDS]
    if bending:
        told = listed(bending)
        rows.append(f"{told[:1].upper()}{told[1:]} can bend or shift the lens: drawn straight and centred.")
    if stack.glass:
        rows.append(
            "There is glass in the stack: the beam behind it is not drawn, and the seat is held against the right one."
        )
    if stack.stop is not None and judged.trace.given["f_number"].assumed:
        rows.append(f"The stop, f/{f_number(stack.stop)}, is assumed.")
    form, used = judged.setup.judged_format, judged.setup.format
    if is_known(stack.allowance) and form is not None and form != used:
        rows.append(f"The depth of focus is that which {form.name} asks for.")
    return rows
