"""What keeps a drawing from being made, and what is drawn broken in it: facts that are not known, by quantity."""

from __future__ import annotations

from engine.answers.parts.answer import Sketch
from engine.answers.seat.standin import ANY
from engine.base.compact import compact
from engine.base.interval import is_known
from engine.physics.quantities import PARTLY_MOVED
from engine.render.reach import reach_of
from engine.render.ring_strip import can_draw_ring
from engine.render.ruler import drawable
from engine.render.stack import measure, stack_of


@compact
class Lacking:
    """`facts`: quantities that are not known; `why`: what else keeps it from being drawn, as a clause."""

    facts: tuple[str, ...] = ()
    why: str = ""


def lacking(sketch: Sketch) -> Lacking | None:
    """Why a drawing of this kind cannot be made of this chain; None where it can."""
    if sketch.kind == "frame":
        return _frame(sketch)
    if sketch.kind == "section" and sketch.judged.setup.lens_mount.id == ANY:
        return Lacking(why="which mount the lens has is not known, so no register is")
    return _distances(sketch) if sketch.kind == "distances" else None


def broken(sketch: Sketch) -> tuple[str, ...]:
    """Quantities that a drawing which can be made shows as not known."""
    if sketch.kind != "section":
        return ()
    stack = stack_of(sketch.judged, {})
    rows = (
        ("lens_register_mm", stack.lens_register_mm is None),
        ("body_register_mm", stack.body_register_mm is None),
        ("seat_mm", stack.seat_mm is None),
        ("rear_reach_mm", stack.rear_reach_mm is None),
        ("focal_length_mm", stack.focal_mm is None and sketch.judged.setup.lens.focusing not in PARTLY_MOVED),
        ("clear_depth_mm", stack.clear_depth_mm is None),
        ("front_vertex_mm", stack.front_mm is None),
    )
    return tuple(name for name, missing in rows if missing)


def _frame(sketch: Sketch) -> Lacking | None:
    if (sketch.judged.setup.format or sketch.judged.setup.judged_format) is None:
        return Lacking(why="which format the body uses is not known")
    known = is_known(measure(sketch.judged.trace, "image_circle_at_far_mm"))
    if not known or sketch.judged.setup.lens_mount.id == ANY:
        return Lacking(("image_circle_mm",))
    return None


def _distances(sketch: Sketch) -> Lacking | None:
    judged, reach = sketch.judged, reach_of(sketch.judged)
    if not reach.moves_whole:
        return Lacking(
            why="the lens focuses by moving a part of itself, and no simple formula tells what is sharp then"
        )
    if drawable(reach) or can_draw_ring(reach, judged, sketch.marks):
        return None
    if reach.focal is None:
        return Lacking(("focal_length_mm",))
    if reach.shortest is None:
        known = is_known(measure(judged.trace, "lens_register_mm"))
        return Lacking(("seat_mm",) if known else ("lens_register_mm",))
    if reach.glass:
        return Lacking(why="too little is known of the glass in the stack")
    if reach.travel is None and reach.own_ring:
        return Lacking(("travel_mm",))
    return Lacking(why="far things alone are sharp, and nothing on the lens or the stack is there to focus with")
