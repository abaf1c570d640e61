"""The density, or the shutter, that a scene asks for at every usual stop, where none is told."""

from __future__ import annotations

from typing import Final

from engine.answers.exposure.lighting import BASE_ISO, HALF_A_FRAME, Light, held, seconds, setting
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import f_number, listed, ranged
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics import exposure

STOPS: Final = (1.4, 2.0, 2.8, 4.0, 5.6, 8.0)
NONE: Final = "none"
EXPOSURE: Final = "exposure"  # the topic of what is asked of a still


def at_any_stop(light: Light) -> Told:
    """What is to be held back at each usual stop, in the light and at the shutter and ISO told or assumed."""
    iso = Interval.exact(light.iso or BASE_ISO)
    words: list[str] = []
    rows: list[Quantity] = []
    for n in STOPS:
        stops = exposure.stops_to_hold_back(light.scene, Interval.exact(n), light.shutter, iso)
        if not is_known(stops):
            return Told()
        rows.append(Quantity("nd_stops", stops, f"f/{f_number(n)}"))
        shown = ranged(stops, lambda value: f"{max(value, 0.0):.1f}") if stops.greatest > 0 else NONE
        words.append(f"f/{f_number(n)} {shown}")
    head = f"Stops of ND to hold back, by the f-number: {listed(words)}; {setting(light)}."
    ask = Line("ask", "For which f-number? Then the filter can be told.", wants="stop")
    return Told((Line("head", head), ask), tuple(rows))


def shutters_at_any_stop(light: Light) -> Told:
    """Which shutter each usual stop takes in the light told: a still, whose lens opens nobody told how far."""
    iso = Interval.exact(light.iso or BASE_ISO)
    found = [(n, exposure.shutter_for_s(light.scene, Interval.exact(n), iso, held(light))) for n in STOPS]
    times = [(n, time) for n, time in found if is_known(time)]
    if not times:
        return Told()
    light = replace(light, assumed=tuple(said for said in light.assumed if said != HALF_A_FRAME))
    words = listed([f"f/{f_number(n)} {ranged(time, seconds)}" for n, time in times])
    ask = Line("ask", "How far does the lens open, or to which f-number is it closed?", wants="stop")
    rows = tuple(Quantity("shutter_s", time, f"f/{f_number(n)}") for n, time in times)
    return Told((Line("head", f"By the f-number: {words}; {setting(light, without='shutter')}."), ask), rows)
