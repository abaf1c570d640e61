"""Where the parts of a stack come to lie on paper: heights and half widths at one scale, gaps for the unknown."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact
from engine.render.drawing import scale_for
from engine.render.stack import Stack, nominal

TALL: Final = 160.0  # paper for the stack
HALF: Final = 32.0  # paper on each side of the axis
WALL: Final = 6.0
GAP_PIECE: Final = 9.0  # paper left for a length that is not known; drawn broken
GAP_SENSOR: Final = 26.0
STUB: Final = 14.0


@compact
class Levels:
    """Heights in mm of paper below the body flange (above it: negative); None for what has no known place."""

    scale: float
    pieces: tuple[tuple[float, float], ...]  # rear and front face of each
    lens_flange: float
    longest: float  # the lens flange at the longest setting
    sensor: float
    image: float | None
    far_image: float | None  # at the longest setting
    right_seat: float | None  # with glass: where the lens flange should be
    principal: float | None
    front: float
    rear: float
    depth: float
    top: float
    bottom: float
    opening: float  # half an opening whose width is not known
    outside: float  # where walls are broken off

    def half(self, width_mm: float) -> float:
        """Half of a width on paper."""
        return width_mm * self.scale / 2


def levels_of(stack: Stack) -> Levels:
    """The largest round scale at which the stack fits its part of the page, and everything's place at it."""
    tall_mm, broken = _tall(stack)
    wide_mm = max((width for width in _widths(stack)), default=0.0)
    scale = min(scale_for(max(tall_mm, 1e-6), TALL - broken), scale_for(max(wide_mm, 1e-6), 2 * HALF), 20.0)
    faces = []
    at = 0.0
    for piece in stack.pieces:
        rear = at
        at -= GAP_PIECE if piece.thickness_mm is None else piece.thickness_mm * scale
        faces.append((rear, at))
    register = stack.body_register_mm
    sensor = GAP_SENSOR if register is None else register * scale
    image = far_image = right_seat = principal = None
    error, longest_error = stack.error_mm, nominal(stack.error.longest)
    if stack.glass:
        if error is not None:
            right_seat = at + error * scale
    elif stack.lens_register_mm is not None and stack.seat_mm is not None:
        image = at + stack.lens_register_mm * scale
        if stack.travel_mm and longest_error is not None:
            far_image = image - stack.travel_mm * scale
        if stack.focal_mm is not None:
            principal = image - stack.focal_mm * scale
    front = at - STUB if stack.front_mm is None else at - stack.front_mm * scale
    if stack.front_mm is None and principal is not None:
        front = min(front, principal - 5.0)
    rear = at + (5.0 if stack.rear_reach_mm is None else stack.rear_reach_mm * scale)
    depth = sensor * 0.55 if stack.clear_depth_mm is None else stack.clear_depth_mm * scale
    longest = at - stack.travel_mm * scale
    places = [sensor, rear, depth, at, front, longest, 0.0]
    places += [place for place in (image, far_image, right_seat, principal) if place is not None]
    opening = min(
        max(10.0, *(width * scale / 2 for width in (stack.throat_mm, stack.lens_throat_mm) if width), 0.0), HALF
    )
    wide = max([opening, *(width * scale / 2 for width in _widths(stack))])
    return Levels(
        scale, tuple(faces), at, longest, sensor, image, far_image, right_seat, principal, front, rear, depth,
        min(places), max(places), opening, wide + WALL,
    )  # fmt: skip


def _tall(stack: Stack) -> tuple[float, float]:
    """Millimetres that must fit in height, and paper that broken parts take besides."""
    above, below, broken = [0.0], [0.0], 8.0
    seat = sum(piece.thickness_mm or 0.0 for piece in stack.pieces)
    broken += GAP_PIECE * sum(piece.thickness_mm is None for piece in stack.pieces)
    above += [seat, seat + stack.travel_mm]
    if stack.front_mm is None:
        broken += STUB
    else:
        above.append(seat + stack.front_mm)
    if stack.body_register_mm is None:
        broken += GAP_SENSOR
    else:
        below.append(stack.body_register_mm)
    if stack.lens_register_mm is not None and stack.seat_mm is not None and not stack.glass:
        below.append(stack.lens_register_mm - seat)
        above.append(seat + stack.travel_mm - stack.lens_register_mm)
        if stack.focal_mm is not None:
            above.append(seat - stack.lens_register_mm + stack.focal_mm)
            below.append(stack.lens_register_mm - seat - stack.focal_mm)
    if stack.error_mm is not None:
        above.append(seat - stack.error_mm)
    below.append((stack.rear_reach_mm or 0.0) - seat)
    below.append(stack.clear_depth_mm or 0.0)
    return max(above) + max(below), broken


def _widths(stack: Stack) -> list[float]:
    """Every width that is drawn to scale."""
    widths = [piece.bore_mm for piece in stack.pieces]
    widths += [stack.throat_mm, stack.lens_throat_mm, stack.collar_mm, stack.rear_diameter_mm, stack.beam_mm]
    widths.append(stack.sensor_mm[0] if stack.sensor_mm else None)
    return [width for width in widths if width]
