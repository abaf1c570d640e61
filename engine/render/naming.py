"""The parts of a section by name: what is lettered beside it, led to the place it is about."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from engine.answers.parts.wording import SEAT_READS_MM, f_number, trimmed
from engine.base.interval import is_known
from engine.judging.judge import Judged
from engine.render.cutting import Cutting
from engine.render.drawing import SIZE, Label
from engine.render.lettering import wrapped
from engine.render.levels import Levels
from engine.render.stack import Piece, Stack

COLUMN: Final = 149.0
ELBOW: Final = 140.5
ROOM: Final = 202.0 - COLUMN
APART: Final = 1.0  # mm of paper between two points that labels are led to


def millimetres(value: float) -> str:
    """A length as it is lettered: to a thousandth where it has one."""
    return f"{trimmed(value, 3)} mm"


def off_text(error_mm: float) -> str:
    """Where the image of far things falls, in words."""
    if abs(error_mm) < SEAT_READS_MM:
        return "on the sensor"
    return f"{millimetres(abs(error_mm))} {'ahead of' if error_mm > 0 else 'behind'} the sensor"


def thickness_text(piece: Piece) -> str:
    """What a piece puts between lens and body, in words."""
    if piece.thickness_mm is None:
        return "thickness not known"
    if piece.kind == "joint":
        return "adds nothing"
    if piece.thickness_mm < 0:
        inside = f"seats the lens {millimetres(-piece.thickness_mm)} inside"
        return f"{inside}, settable by {millimetres(piece.travel_mm)}" if piece.travel_mm else inside
    if piece.travel_mm:
        return f"{millimetres(piece.thickness_mm)} to {millimetres(piece.thickness_mm + piece.travel_mm)}"
    return millimetres(piece.thickness_mm)


def named(x: float, y: float, name: str, *facts: str) -> Label:
    """A label of the right column: the name stands out, the facts follow."""
    title = wrapped(name, ROOM, SIZE, 2, True)
    more = [words for fact in facts for words in wrapped(fact, ROOM, SIZE, 2)]
    return Label(x, y, (*title, *more), len(title))


def part_labels(judged: Judged, stack: Stack, levels: Levels, cutting: Cutting, names: Mapping[str, str], axis: float,
                flange: float) -> list[Label]:  # fmt: skip
    """Every part of the drawing, with the body flange at height `flange`."""
    setup = judged.setup
    rows: list[Label] = []

    def add(half: float, level: float, name: str, *facts: str) -> None:
        rows.append(named(axis + half, flange + level, name, *facts))

    lens = setup.lens.name or f"{names.get(setup.lens_mount.id, setup.lens_mount.designation)} lens"
    front = ("how far it stands out: not known",) if stack.front_mm is None else ()
    add(cutting.barrel, (levels.lens_flange + 2 * levels.front) / 3, lens, *front)
    if levels.principal is not None and stack.beam_mm is not None:
        beam = f"beam at f/{f_number(stack.stop or 0.0)}"
        add(levels.half(stack.beam_mm), levels.principal, "H', where it bends light", beam)
    for piece, (rear, face) in zip(stack.pieces, levels.pieces, strict=True):
        facts = [thickness_text(piece)]
        if piece.glass:
            times = f" {trimmed(piece.factor, 3)}x" if piece.factor is not None else ""
            facts.append(f"glass{times}: where it sits is not known")
        if piece.rests_on_flange:
            facts.append("barrel too wide for its cup: it rests on the ring")
        recess = piece.thickness_mm is not None and piece.thickness_mm < 0
        middle = (rear + face) / 2
        if abs(middle - levels.rear) < APART:
            middle = (rear + 3 * face) / 4  # the rear of the lens is led from there
        add(cutting.cup_half(piece) + 1.1 if recess else levels.outside - 1.5, middle, piece.name, *facts)
    add(levels.outside - 1.5, 2.2, setup.body.name or "body", f"flange of {setup.body_mount.designation}")
    reach = "reach not known: measure it"
    if stack.rear_reach_mm is not None:
        reach = f"{millimetres(stack.rear_reach_mm)} behind its flange"
    add(cutting.rear_half, levels.rear, "rear of the lens", reach)
    what = setup.body.first_obstruction or ("mirror" if setup.body_mount.mirror else "first thing in the body")
    depth = stack.clear_depth_mm
    free = "free depth not known" if depth is None else f"{millimetres(depth)} free behind the flange"
    add(cutting.depth_half, levels.depth, what, free)
    size = "size not known"
    if stack.sensor_mm:
        size = f"{trimmed(stack.sensor_mm[0], 2)} x {trimmed(stack.sensor_mm[1], 2)} mm"
    add(cutting.sensor_half, levels.sensor + 0.8, "sensor", size)
    if levels.image is not None and stack.error_mm is not None:
        add(cutting.image_half, levels.image, "far things sharp here", off_text(stack.error_mm))
        if levels.far_image is not None and is_known(stack.error.longest):
            far = off_text(stack.error.longest.nominal)
            add(cutting.image_half, levels.far_image, "at the longest setting", far)
    if levels.right_seat is not None:
        add(levels.outside - 6, levels.right_seat, "right lens flange", "for far things, with this glass")
    return rows
