"""Where a bare glass is held for a distance: a meniscus in a body cap, a lens without focusing in a tube."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, body_side
from engine.answers.parts.said import distance_mm, focals, mentions
from engine.answers.parts.wording import distance, small_mm, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import focus
from grammar.questions import CLOSE_UP_LENS, Question


def held_at(question: Question, knowledge: Knowledge) -> Told:
    """How far before the sensor, and from the flange, a glass of this focal length stands for what is to be sharp."""
    if not mentions(question, "single-glass") or question.said("flange_to_image") is not None:
        return Told()  # what was measured of a lens with a seat goes before what holds of a bare glass
    if any(thing.id for thing in question.lenses if thing.kind == "lens"):
        return Told()
    if any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
        return Told()  # a magnifier that is told by its power goes before a lens
    at, lines, rows = distance_mm(question), [], []
    side = body_side(question.body, knowledge.catalogue)
    for focal in focals(question):
        f = Interval.exact(focal)
        x = focus.travel_to_mark_mm(Interval.exact(at), f, Interval.exact(0.0)) if at else Interval.exact(0.0)
        if not is_known(x):
            continue
        image = f + x
        sharp = f"at {distance(at, question.feet)} from the sensor" if at else "at infinity"
        text = f"A {trimmed(focal, 1)} mm glass sharp {sharp}: its middle {small_mm(image.nominal)} before the sensor"
        rows.append(Quantity("image_distance_mm", image, f"{trimmed(focal, 1)} mm"))
        if isinstance(side, BodySide) and is_known(side.mount.register_mm):
            ahead = image - side.mount.register_mm
            where = "ahead of" if ahead.nominal >= 0 else "behind"
            text += f", {small_mm(abs(ahead.nominal))} {where} the {side.mount.designation} flange"
            rows.append(Quantity("stack_mm", ahead, "glass to body flange"))
        lines.append(Line("head", f"{text}. Make it a little short, and move it until a target there is sharp."))
    return Told(tuple(lines), tuple(rows))
