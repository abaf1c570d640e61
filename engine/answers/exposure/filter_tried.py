"""How a picture came out behind the filter that was told to be taken: the light is so far off what was reckoned."""

from __future__ import annotations

from typing import Final

from engine.answers.exposure.lighting import BASE_ISO, held, light_of
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import same_light_stops
from engine.answers.parts.said import number
from engine.answers.parts.wording import trimmed
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.physics import exposure
from grammar.questions import Question
from grammar.turns.answer_told import FILTER_ON
from grammar.turns.filter_tried import CAME_OUT
from grammar.turns.measured_anew import BRIGHTER

_STRENGTH: Final = "factor"  # the key of the filters named


def by_picture(question: Question, knowledge: Knowledge) -> Question:
    """The question with the light as the picture showed it; unchanged where no filter was tried."""
    came_out, before = question.said(CAME_OUT), question.prior
    stops = _stops(question, knowledge)
    if came_out is None or before is None or not is_known(stops):
        return question
    marks = held(light_of(question, knowledge)).nominal if question.said(_STRENGTH) != before.said(_STRENGTH) else 0.0
    right = (marks or dict(before.told).get(FILTER_ON, 0.0)) + _off(came_out)
    shift = max(right, 0.0) - stops.nominal + (number(question, BRIGHTER) or 0.0)
    rest = question.rest(BRIGHTER)
    return question.with_(values=(*rest, (BRIGHTER, f"{shift:.4g}")))


def filter_tried(question: Question, knowledge: Knowledge) -> Told:
    """How far off the picture was behind which filter, and how much density is right; nothing where none was tried."""
    came_out, stops = question.said(CAME_OUT), _stops(question, knowledge)
    if came_out is None or not is_known(stops):
        return Told()
    right = stops.nominal if stops.nominal > same_light_stops(knowledge.catalogue) else 0.0
    behind = f" behind {trimmed(right - _off(came_out), 1)} stops of ND" if right else ""
    text = f"{came_out}{behind}: {f'{trimmed(right, 1)} stops are right' if right else 'no ND is right'}."
    return Told((Line("head", text),), (Quantity("nd_stops", Interval.exact(right), "put right"),))


def _off(came_out: str) -> float:
    """How much more density it takes, in stops."""
    stops = float(came_out.split()[0])
    return -stops if came_out.endswith("dark") else stops


def _stops(question: Question, knowledge: Knowledge) -> Measure:
    light = light_of(question, knowledge)
    if light.counted is None:
        return UNKNOWN
    iso = Interval.exact(light.iso or BASE_ISO)
    return exposure.stops_to_hold_back(light.scene, light.counted, light.shutter, iso)
