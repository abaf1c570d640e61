"""In a talk of a lens whose widest stop is known: whether light is held back there, or the lens closed down."""

from __future__ import annotations

from typing import Final

from engine.answers.exposure.holding_back import held_back
from engine.answers.exposure.lighting import BASE_ISO, Light
from engine.answers.parts.answer import Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question

_CLOSED: Final = "smallest-stop"  # of the facts: the f-number to which such lenses close
_DENSITY: Final = "nd"  # topic of a density that is asked for, as long as only settings change


def goes_on_with_density(question: Question) -> bool:
    """'and at ISO 400' after which filter: the lens stays as far open as it was."""
    prior = question.prior
    if prior is None or not question.follows or prior.intent != EXPOSURE_ND or prior.lenses != question.lenses:
        return False
    asked = prior.mentions("nd-or-density", "filtered", "my-filters") or question.topic == prior.topic == _DENSITY
    return asked and not mentions(question, "which-stop", "which-shutter")


def stop_or_density(stop: Told, light: Light, question: Question, knowledge: Knowledge) -> Told:
    """'noon, 1/500, ISO 100': the stop, and beside it what a filter holds back wide open; that alone where no lens
    closes so far."""
    if not question.follows or light.counted is None:
        return stop
    iso = Interval.exact(light.iso or BASE_ISO)
    stops = exposure.stops_to_hold_back(light.scene, light.counted, light.shutter, iso)
    if not is_known(stops) or stops.least <= 0:
        return stop
    found = [row.value for row in stop.quantities if isinstance(row.value, Interval)]
    closed = knowledge.catalogue.assumptions[_CLOSED].value.greatest
    beyond = bool(found) and found[0].least > closed and not mentions(question, "which-stop")
    held = held_back(light, question, knowledge)
    return held if beyond else stop + held
