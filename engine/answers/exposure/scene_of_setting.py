"""The scene, in EV, that a whole setting exposes right."""

from __future__ import annotations

from engine.answers.exposure.lighting import BASE_ISO, Light, seconds
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import ranged, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question


def scene_of_setting(light: Light, question: Question) -> Told | None:
    """'ISO 3200, f/2, 1/25, what is that in EV': the scene that a whole setting exposes right."""
    asked = mentions(question, "in-ev") and question.said("light") is None
    if light.counted is None or not is_known(light.shutter) or not question.said("shutter") or not asked:
        return None
    found = exposure.scene_ev(light.counted, light.shutter, Interval.exact(light.iso or BASE_ISO))
    if not is_known(found):
        return None
    at = f"{light.counted_name}, {ranged(light.shutter, seconds)}, ISO {light.iso or BASE_ISO:g}"
    text = f"EV {trimmed(found.nominal, 1)} (counted at ISO 100): {at} exposes that right."
    return Told((Line("head", text),), (Quantity("scene_ev", found),))
