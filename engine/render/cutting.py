"""The parts of a stack as they are cut along the axis: walls hatched, light shaded, the unknown broken off."""

from __future__ import annotations

from math import pi, sin
from typing import Final

from engine.render.drawing import Measured, Page
from engine.render.levels import HALF, WALL, Levels
from engine.render.stack import Piece, Stack

HATCHED: Final = {"helicoid": "upright", "bellows": "upright", "joint": "flat"}
WAVE: Final = 0.5
BODY_WALL: Final = 4.0
GLASS: Final = 1.6  # how far the sign of a lens bulges


class Cutting:
    """Draws the stack about the axis `x`."""

    def __init__(self, page: Page, stack: Stack, levels: Levels, x: float) -> None:
        self.page, self.stack, self.levels, self.x, self.y = page, stack, levels, x, 0.0
        self._asked: list[tuple[float, float]] = []
        half = levels.half
        self.sensor_half = half(stack.sensor_mm[0]) if stack.sensor_mm else 8.0
        self.image_half = max(self.sensor_half, 6.0) + 3.0
        self.depth_half = max(levels.opening - 1.5, 4.0) if stack.throat_mm is None else half(stack.throat_mm)
        self.barrel = self._barrel()
        throat = half(stack.lens_throat_mm) if stack.lens_throat_mm is not None else levels.opening
        self.rear_half = min(throat, self.barrel) * 0.75
        if stack.rear_diameter_mm is not None:
            self.rear_half = half(stack.rear_diameter_mm)

    def _barrel(self) -> float:
        """Half of the lens barrel: to scale where its collar is known."""
        stack, levels = self.stack, self.levels
        if stack.collar_mm is not None:
            return levels.half(stack.collar_mm)
        beam = levels.half(stack.beam_mm) if stack.beam_mm else 0.0
        throat = levels.half(stack.lens_throat_mm) + 2.0 if stack.lens_throat_mm is not None else levels.opening
        wide = min(max(beam + 2.5, throat, 7.0), HALF + WALL - 1)
        cup = stack.pieces[-1] if stack.pieces else None
        if cup is not None and cup.bore_mm is not None and (cup.thickness_mm or 0.0) < 0:
            wide = min(wide, levels.half(cup.bore_mm) - 0.8)
        return wide

    def cup_half(self, piece: Piece) -> float:
        """Half of a recess: to scale where its bore is known."""
        if piece.bore_mm is not None:
            return self.levels.half(piece.bore_mm)
        return max(self.levels.opening - 4.0, self.barrel + 0.8)

    def draw(self, flange: float) -> None:
        """Everything of the section, from what lies under to what lies over, the body flange at this height."""
        self.y = flange
        self._lens_body()
        self._light()
        for n, piece in enumerate(self.stack.pieces):
            self._piece(piece, *self.levels.pieces[n], HATCHED.get(piece.kind, ("rise", "fall")[n % 2]))
        for piece, (rear, front) in zip(self.stack.pieces, self.levels.pieces, strict=True):
            if piece.glass:
                self._glass(piece, (rear + front) / 2)
        self._body()
        self._lens_lines()
        self._beam_lines()
        self._sensor()
        self._planes()
        self.page.line("axis", [(self.x, self.y + self.levels.top - 3), (self.x, self.y + self.levels.bottom + 4)])

    def _across(
        self, kind: str, half: float, at: float, quantity: str = "", mm: float | None = None, of: str = ""
    ) -> None:
        measured = Measured(quantity, mm, self.levels.scale, of=of) if mm is not None else None
        self.page.line(kind, [(self.x - half, self.y + at), (self.x + half, self.y + at)], measured)

    def _both(self, kind: str, half: float, one: float, other: float, measured: Measured | None = None) -> None:
        for side in (-1, 1):
            x = self.x + side * half
            self.page.line(kind, [(x, self.y + one), (x, self.y + other)], measured)

    def _question(self, x: float, y: float) -> None:
        """A question mark at what is not known, beside those that stand there already."""
        while any(abs(x - other) < 3.0 and abs(y - level) < 3.6 for other, level in self._asked):
            x -= 1.0
        self._asked.append((x, y))
        self.page.text(x, y, "?", anchor="middle", bold=True)

    def _wave(self, half: float, one: float, other: float, side: int) -> list[tuple[float, float]]:
        """The edge at which a part is broken off."""
        steps = max(int(abs(other - one) / 0.6), 1)
        heights = [one + (other - one) * n / steps for n in range(steps + 1)]
        return [(self.x + side * (half + WAVE * sin(2 * pi * h / 4.4)), self.y + h) for h in heights]

    def _wall(self, hatch: str, inner: float, one: float, other: float) -> None:
        """A wall from an opening out to where it is broken off, on both sides."""
        outside = self.levels.outside
        for side in (-1, 1):
            wave = self._wave(outside, one, other, side)
            inside = [(self.x + side * inner, self.y + other), (self.x + side * inner, self.y + one)]
            self.page.area(hatch, [*inside, *wave])
            self.page.line("break", wave)
            for at in (one, other):
                self.page.line("edge", [(self.x + side * inner, self.y + at), (self.x + side * outside, self.y + at)])

    def _piece(self, piece: Piece, rear: float, front: float, hatch: str) -> None:
        levels = self.levels
        known = piece.bore_mm is not None
        inner = levels.half(piece.bore_mm) if piece.bore_mm is not None else levels.opening
        if piece.thickness_mm is not None and piece.thickness_mm < 0:
            self._cup(piece, rear, front, self.cup_half(piece), hatch)
            return
        if piece.thickness_mm is None:
            self._wall("sparse", inner, rear, front)
            self._both("unknown", inner, rear, front)
            self._question(self.x - inner - 2.2, self.y + (rear + front) / 2 + 1.1)
            return
        if piece.thickness_mm:
            self._wall(hatch, inner, rear, front)
        else:
            for side in (-1, 1):
                ends = [(self.x + side * inner, self.y + rear), (self.x + side * levels.outside, self.y + rear)]
                self.page.line("edge", ends)
        thick = Measured("thickness_mm", piece.thickness_mm, levels.scale, of=piece.id)
        self._both("edge" if known else "unknown", inner, rear, front, thick)
        if known:
            self._across("ghost", inner, rear, "bore_mm", piece.bore_mm, piece.id)

    def _cup(self, piece: Piece, rear: float, front: float, inner: float, hatch: str) -> None:
        """A recess: its rim lies on the flange behind it, its floor, where the lens seats, inside that flange."""
        self._wall(hatch, inner, rear - 1.2, rear)
        thick = Measured("thickness_mm", abs(piece.thickness_mm or 0.0), self.levels.scale, of=piece.id)
        throat = self.stack.lens_throat_mm
        floor = min(max(self.levels.half(throat) if throat is not None else 0.0, self.rear_half) + 0.5, inner - 1.0)
        for side in (-1, 1):
            x, out, hole = self.x + side * inner, self.x + side * (inner + 2.2), self.x + side * floor
            wall = [(x, rear), (out, rear), (out, front + 1.2), (hole, front + 1.2), (hole, front), (x, front)]
            points = [(px, self.y + py) for px, py in wall]
            self.page.area(hatch, points)
            self.page.line("edge", points[1:])
        self._both("edge" if piece.bore_mm is not None else "unknown", inner, rear, front, thick)
        if piece.bore_mm is not None:
            self._across("ghost", inner, rear, "bore_mm", piece.bore_mm, piece.id)

    def _glass(self, piece: Piece, at: float) -> None:
        """The sign of a lens: bulging where it gathers light, hollow where it spreads it; its place is not known."""
        half = (self.levels.half(piece.bore_mm) if piece.bore_mm is not None else self.levels.opening) * 0.8
        bulge = 0.0 if piece.factor in (None, 1.0) else GLASS if piece.factor and piece.factor < 1 else -GLASS
        steps = [n / 8 - 1 for n in range(17)]
        for side in (-1, 1):
            rim = 0.4 + max(-bulge, 0.0)
            curve = [(self.x + t * half, self.y + at + side * (rim + bulge * (1 - t * t))) for t in steps]
            self.page.line("unknown", curve)
        for side in (-1, 1):
            x = self.x + side * half
            self.page.line("unknown", [(x, self.y + at - rim), (x, self.y + at + rim)])

    def _body(self) -> None:
        levels, throat = self.levels, self.stack.throat_mm
        half = levels.half(throat) if throat is not None else levels.opening
        self._wall("flat", half, 0.0, BODY_WALL)
        self._both("edge" if throat is not None else "unknown", half, 0.0, BODY_WALL)
        self._across("ghost", half, 0.0, "throat_mm", throat)
        kind = "unknown" if self.stack.clear_depth_mm is None else "edge"
        reach = self.depth_half
        # what stands in the way is told by a rake of short strokes behind it
        self._across(kind, reach, levels.depth)
        strokes = int(2 * reach / 2.4)
        for n in range(strokes + 1):
            x = self.x - reach + n * 2 * reach / max(strokes, 1)
            self.page.line("break", [(x, self.y + levels.depth), (x - 0.9, self.y + levels.depth + 1.3)])
        if self.stack.clear_depth_mm is None:
            self._question(self.x + reach * 0.7, self.y + levels.depth - 0.8)

    def _lens_body(self) -> None:
        levels = self.levels
        front, flange = self.y + levels.front, self.y + levels.lens_flange
        self.page.area("paper", [(self.x - self.barrel, flange), (self.x + self.barrel, flange),
                                 (self.x + self.barrel, front), (self.x - self.barrel, front)])  # fmt: skip

    def _lens_lines(self) -> None:
        stack, levels = self.stack, self.levels
        side = "edge" if stack.collar_mm is not None else "unknown"
        self._both(side, self.barrel, levels.lens_flange, levels.front)
        self._across("thick", self.barrel, levels.lens_flange, "collar_mm", stack.collar_mm)
        if stack.front_mm is None:
            self._torn(levels.front, self.barrel)
            beam = levels.half(stack.beam_mm) if stack.beam_mm is not None else 0.0
            clear = (x for x in (self.barrel * share for share in (0.55, 0.3, 0.8)) if abs(x - beam) > 2.6)
            self._question(self.x + next(clear, self.barrel * 0.55), self.y + levels.front - 1.4)
        else:
            self._across("edge", self.barrel, levels.front)
            stands = Measured("front_vertex_mm", stack.front_mm, levels.scale)
            self._both(side, self.barrel, levels.lens_flange, levels.front, stands)
        known = stack.rear_reach_mm is not None
        tube = "edge" if known and stack.rear_diameter_mm is not None else "unknown"
        reach = (
            Measured("rear_reach_mm", stack.rear_reach_mm, levels.scale) if stack.rear_reach_mm is not None else None
        )
        self._both(tube, self.rear_half, levels.lens_flange, levels.rear, reach)
        if known:
            self._across("edge", self.rear_half, levels.rear, "rear_diameter_mm", stack.rear_diameter_mm)
        else:
            self._torn(levels.rear, self.rear_half)
            self._question(self.x - self.rear_half * 0.5, self.y + levels.rear - 1.0)
        if stack.travel_mm:
            self._across("ghost", self.barrel, levels.longest)

    def _torn(self, at: float, half: float) -> None:
        """A zigzag: the part goes on, nobody knows how far."""
        teeth = max(int(half / 1.6), 2)
        points = [
            (self.x - half + n * half / teeth, self.y + at + (0.8 if n % 2 else -0.8)) for n in range(2 * teeth + 1)
        ]
        self.page.line("edge", points)

    def _cone(self) -> tuple[float, float, float, float] | None:
        """Half the beam at H', H', the tip of the cone, and where the sensor meets the beam."""
        stack, levels = self.stack, self.levels
        if stack.beam_mm is None or levels.principal is None or levels.image is None:
            return None
        end = levels.sensor if stack.body_register_mm is not None else levels.image
        return levels.half(stack.beam_mm), levels.principal, levels.image, max(end, levels.principal)

    def _light(self) -> None:
        cone = self._cone()
        if cone is None:
            return
        half, principal, tip, end = cone
        x, y = self.x, self.y
        spot = half * (end - tip) / (tip - principal) if tip != principal else 0.0
        if end >= tip:
            self.page.area("light", [(x - half, y + principal), (x + half, y + principal), (x, y + tip)])
            self.page.area("light", [(x, y + tip), (x - spot, y + end), (x + spot, y + end)])
        else:
            self.page.area("light", [(x - half, y + principal), (x + half, y + principal), (x - spot, y + end),
                                     (x + spot, y + end)])  # fmt: skip

    def _beam_lines(self) -> None:
        cone = self._cone()
        if cone is None:
            return
        half, principal, tip, end = cone
        for side in (-1, 1):
            edge = (self.x + side * half, self.y + principal)
            self.page.line("beam", [(edge[0], self.y + self.levels.top - 3), edge])
            spot = side * half * (tip - end) / (tip - principal) if tip != principal else 0.0
            self.page.line("beam", [edge, (self.x + spot, self.y + end)])
            if end < tip:
                self.page.line("beam-on", [(self.x + spot, self.y + end), (self.x, self.y + tip)])
        self._across("edge", half, principal, "beam_mm", self.stack.beam_mm)
        for side in (-1, 1):  # outward points: it gathers light
            x, y = self.x + side * half, self.y + principal
            self.page.line("edge", [(x - side * 1.3, y - 1.1), (x, y), (x - side * 1.3, y + 1.1)])

    def _sensor(self) -> None:
        stack, levels = self.stack, self.levels
        half = self.sensor_half
        kind = "edge" if stack.body_register_mm is not None and stack.sensor_mm else "unknown"
        self.page.box(kind, "dark", self.x - half, self.y + levels.sensor, 2 * half, 1.8)
        if stack.sensor_mm:
            self._across("edge", half, levels.sensor, "used_width_mm", stack.sensor_mm[0])
        if stack.body_register_mm is None:
            for n in (-1, 1):
                at = levels.sensor / 2 + 0.7 * n + 2.0
                self.page.line("edge", [(self.x - 1.6, self.y + at + 0.7), (self.x + 1.6, self.y + at - 0.7)])
            self._question(self.x + 3.2, self.y + levels.sensor / 2 + 3.0)

    def _planes(self) -> None:
        levels = self.levels
        if levels.image is not None:
            self._across("image", self.image_half, levels.image)
        if levels.far_image is not None:
            self._across("image-far", self.image_half, levels.far_image)
        if levels.right_seat is not None:
            self._across("image", self.levels.outside - 5, levels.right_seat)
