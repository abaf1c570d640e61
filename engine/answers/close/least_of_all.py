"""How near a lens can come at all, whatever stands behind it: four focal lengths from the sensor, at life size."""

from __future__ import annotations

from collections.abc import Iterable

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import article, distance, ranged, trimmed
from engine.answers.seat.distances import Distances
from engine.base.interval import is_known

HOW = "By how much it moves: told by its nearest mark, or by the tube, helicoid or close-up lens that is put to it."


def least_of_all(lenses: Iterable[Distances], feet: bool) -> Told:
    """D = 4f + HH' at x = f. Source: optics model, D = 2f + HH' + f*f/x + x is least there."""
    told = Told()
    for lens in lenses:
        at = lens.at(lens.focal)
        least = at.from_sensor_mm
        if not is_known(least) or not is_known(at.magnification):
            continue
        focal = f"{trimmed(lens.focal.nominal, 1)} mm"
        words = ranged(least, lambda value: distance(value, feet))
        text = (
            f"{article(focal).capitalize()} {focal} lens never comes sharp nearer than about {words} from the sensor:"
            " four focal lengths, at life size. Tubes beyond that enlarge it, and the distance grows again."
        )
        case = f"{focal}, nearest of all"
        rows = (Quantity("focus_from_sensor_mm", least, case), Quantity("near_from_sensor_mm", least, case))
        told += Told((Line("head", text),), rows)
    return told + Told((Line("ask", HOW),)) if told.lines else told
