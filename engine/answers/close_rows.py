"""One setting close up as a line and its numbers: where the subject stands, how large it comes, what light it costs."""

from __future__ import annotations

from engine.answers.answer import Line, Quantity, Told
from engine.answers.distances import Distances
from engine.answers.wording import distance, f_number, ranged, small_mm, times, trimmed
from engine.base.interval import Interval, is_known
from engine.chains.setup import Facts
from engine.physics import closeup, focus

EVEN_PUPILS = Interval.exact(1.0)


def at_extension(
    focal_mm: float, extension_mm: float, facts: Facts, case: str, *, end: str = "far", stop: float | None = None,
    feet: bool = False, lead: str = "", depth: int = 1, kind: str | None = None,
) -> Told:  # fmt: skip
    """A lens at one extension. `end`: which distance it is, far (infinity mark), near (nearest mark) or focus (set)."""
    x = Interval.exact(extension_mm)
    at = Distances(focal_mm, facts, kind).at(x)
    if not is_known(at.from_sensor_mm) or not is_known(at.magnification):
        return Told()

    def show(value: float) -> str:
        return distance(value, feet)

    rows = [Quantity(f"{end}_from_sensor_mm", at.from_sensor_mm, case)]
    rows.append(Quantity("magnification", at.magnification, case))
    if end != "focus":
        rows.append(Quantity("focus_from_sensor_mm", at.from_sensor_mm, case))
    rows.append(Quantity("extension_mm", x, case))
    text = f"{lead or case}: sharp at {show(at.from_sensor_mm.nominal)} from the sensor"
    if is_known(at.from_front_principal_mm):
        rows.append(Quantity("from_front_principal_mm", at.from_front_principal_mm, case))
        text += f" ({show(at.from_front_principal_mm.nominal)} from the front principal plane)"
    text += f", {times(at.magnification.nominal)}"
    room = at.working_distance_mm
    if is_known(room) and room.greatest > 0:
        # a lens that is not a retrofocus or telephoto one: what construction allows is wide enough as it is
        room = room.at_least(0.0)
        rows.append(Quantity("working_distance_mm", room, case))
        text += f", about {ranged(room, show)} before the front glass"
    light = at_magnification_light(at.magnification.nominal, stop, case)
    rows += light.quantities
    if stop is not None and at.magnification.nominal > 0.1:
        effective = stop * (1 + at.magnification.nominal)
        text += f"; f/{f_number(stop)} counts as f/{f_number(effective)}"
    return Told((Line("fact", f"{text}.", depth),), tuple(rows))


def at_magnification_light(magnification: float, stop: float | None, case: str) -> Told:
    """The f-number that counts for exposure and the stops lost, for even pupils."""
    m = Interval.exact(magnification)
    rows = []
    lost = focus.light_lost_stops(m, EVEN_PUPILS)
    if is_known(lost):
        rows.append(Quantity("light_difference_stops", lost, case))
    if stop is not None:
        effective = focus.effective_f_number(Interval.exact(stop), m, EVEN_PUPILS)
        if is_known(effective):
            rows.append(Quantity("effective_f_number", effective, case))
    return Told((), tuple(rows))


def at_magnification(
    focal_mm: float, magnification: float, facts: Facts, stop: float | None = None, feet: bool = False,
    kind: str | None = None,
) -> Told:  # fmt: skip
    """What a wanted magnification asks of a lens: extension, image distance and where the subject then stands."""
    f, m = Interval.exact(focal_mm), Interval.exact(magnification)
    extension = closeup.extension_for_magnification_mm(f, m)
    image = closeup.image_distance_mm(f, m)
    if not (is_known(extension) and is_known(image)):
        return Told()
    case = f"m = {trimmed(magnification, 2)}"
    head = (
        f"{trimmed(focal_mm, 1)} mm at {times(magnification)}: {small_mm(extension.nominal)} of extension beyond its "
        f"infinity position, {small_mm(image.nominal)} from the rear principal plane to the sensor."
    )
    rows = (Quantity("image_distance_mm", image, case),)
    told = at_extension(
        focal_mm, extension.nominal, facts, case, end="focus", stop=stop, feet=feet, lead="there", kind=kind
    )  # fmt: skip
    return Told((Line("head", head),), rows) + told
