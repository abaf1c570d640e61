"""The distances in focus: a ruler from the sensor, and the focusing ring with its marks put where they belong."""

from __future__ import annotations

from collections.abc import Sequence
from math import isfinite

from engine.answers.parts.wording import distance, f_number, ranged
from engine.base.interval import Measure, is_known
from engine.judging.judge import Judged
from engine.render.drawing import Page
from engine.render.reach import FAR, Reach, reach_of
from engine.render.ring_strip import draw_ring
from engine.render.ruler import draw_ruler, drawable
from engine.render.stack import measure


def distances(judged: Judged, marks: Sequence[float] = (), feet: bool = False) -> str:
    """An SVG of what is in focus. `marks`: the lens's engraved distances in mm from the sensor, infinite for ∞.

    `feet`: distances are lettered in feet and inches.
    """
    setup = judged.setup
    reach = reach_of(judged, feet)
    title = f"Where {setup.lens.name or 'the lens'} is sharp on {setup.body.name or 'the body'}"
    page = Page(title, _says(judged, reach))
    top = page.heading() + 2.0
    under = draw_ruler(page, reach, top)
    drawn = draw_ring(page, reach, judged, marks, max(under, page.bottom) + 5.0)
    page.notes(_notes(judged, reach, drawn))
    return page.svg()


def _says(judged: Judged, reach: Reach) -> str:
    """The drawing in words."""
    parts = []
    for name, end in (("shortest setting", "far"), ("longest setting", "near")):
        sensor, glass = (measure(judged.trace, f"{end}_from_{place}_mm") for place in ("sensor", "front_glass"))
        far, near = _told(sensor, reach.feet), _told(glass, reach.feet)
        parts.append(f"Sharp at the {name}: {far} from the sensor, {near} from the front glass.")
    if reach.carried:
        parts.append("The depth of focus carries it on to infinity.")
    return " ".join(parts)


def _told(value: Measure, feet: bool) -> str:
    if not is_known(value):
        return "not known"
    if value.nominal > FAR:
        return "infinity" if value.least > FAR else f"infinity, at worst {distance(value.least, feet)}"
    return ranged(value, lambda one: distance(one, feet))


def _notes(judged: Judged, reach: Reach, drawn: bool) -> list[str]:
    rows = []
    if reach.carried and is_known(reach.far) and reach.far.nominal < FAR:
        stop = measure(judged.trace, "f_number")
        at = f" at f/{f_number(stop.nominal)}" if is_known(stop) else ""
        far = distance(reach.far.nominal, reach.feet)
        rows.append(f"At its farthest it is set to {far}; the depth of focus{at} carries it on to infinity.")
    if not drawable(reach):
        return rows
    if is_known(reach.far) and not reach.far.is_exact:
        near, far = _told(reach.near, reach.feet), _told(reach.far, reach.feet)
        open_ends = f"{far} from the sensor at the shortest setting, {near} at the longest (dotted)"
        rows.append(f"With tolerances and assumed planes what is sharp may be {open_ends}.")
    room = measure(judged.trace, "near_from_front_glass_mm")
    if reach.inside:
        rows.append("At the longest setting the subject would have to stand inside the lens.")
    elif is_known(room) and isfinite(room.greatest):
        rows.append(
            f"At the longest setting the subject is {_told(room.at_least(0.0), reach.feet)} from the front glass."
        )
    if reach.front is not None and judged.trace.given["front_focal_offset_mm"].assumed:
        rows.append(
            "The front glass is drawn where lenses of such a construction usually have it, the stack at its shortest."
        )
    if judged.trace.given["lens_register_mm"].assumed:
        rows.append("Reckoned with the register usual for lenses of its kind and length; its own is not known.")
    if drawn:
        rows.append(
            "The strip shows the lens's way along its axis, not the turn of the ring: its lead makes one the other."
        )
    return rows
