"""The density that a scene asks for, at every usual stop, where none is told."""

from __future__ import annotations

from typing import Final

from engine.answers.exposure.lighting import BASE_ISO, Light, setting
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import f_number, listed, ranged
from engine.base.interval import Interval, is_known
from engine.physics import exposure

STOPS: Final = (1.4, 2.0, 2.8, 4.0, 5.6, 8.0)
NONE: Final = "none"


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
