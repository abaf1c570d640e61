"""Whether an error of the seat may be left as it is: 'does it matter if I leave it', 'can I live with it'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, number
from engine.answers.parts.wording import READS_MM, distance, f_number, small_mm
from engine.answers.seat.distances import Distances
from engine.answers.shims.carried import SHIM, is_limit
from engine.answers.shims.left_off import left_as_it_is
from engine.answers.shims.loose import off_by_mm
from engine.answers.shims.turning import short_by_turns_mm
from engine.answers.ways.ring_off import error_of_the_pair
from engine.answers.words.advice import advice_lines
from engine.base.interval import is_known
from engine.facts.guidance import Advice
from grammar.questions import Question
from grammar.turns.going_on import LEFT

FROM_STOP: Final = "infinity_from_f_number"
USUAL_STOP: Final = "stop-of-a-mount-alone"  # of the facts: of a lens whose own is not told
_USUAL: Final = "thin-on-purpose"  # and on how rings are made
_SCALE: Final = "scale-wrong"  # advice on a seat too near
_OF_SCALE: Final = frozenset(["scale_mark_mm"])
_SMALLEST: Final = "smallest-stop"  # of the facts: the f-number that lenses close to
_SMALLER: Final = "smaller-sensor-of-a-mount"  # and how much more the smaller sensor of a mount asks
TOO_NEAR: Final = "Nothing is harmed, and infinity is there: only before its mark."
TOO_FAR: Final = "Nothing is harmed, but what is far stays soft until you stop down"


def left_so(question: Question, before: Question | None, knowledge: Knowledge) -> Answer | None:
    """What comes of leaving the error of before in; None where none was told, or something else is asked."""
    if before is None or question.topic != LEFT:
        return None
    error = _error_of(before, knowledge)
    if any(one.focal_length_mm for one in question.lenses):
        before = before.with_(lenses=question.lenses)  # 'does it matter for a 100'
    if error is None and number(before, "mark") is not None:  # by how much hangs on the lens, which was not told
        lines = (Line("head", TOO_NEAR), *advice_lines(_of_scale(knowledge)))
        return Answer(question.text, question.intent, ANSWERED, lines, question=question)
    if error is None or abs(error) < READS_MM:
        return None
    by = f"{small_mm(abs(error))} too {'short' if error < 0 else 'long'}"
    left = left_as_it_is(error, before, knowledge)
    usual = knowledge.catalogue.advice.get(_USUAL) if question.mentions("seat-usual") else None
    harm = TOO_NEAR if error < 0 else _too_far(left, before.feet, knowledge)
    head = f"{_hidden(left, before, knowledge) or harm} The seat is {by}."
    # what is too near has infinity at every stop
    kept = [line for line, row in zip(left.lines, left.quantities, strict=False) if error > 0 or row.name in _OF_SCALE]
    told = Told((Line("head", head), *kept), left.quantities if error > 0 else left.quantities[: len(kept)])
    if usual is not None:
        lead = Line("head", f"The seat is {by}. {usual.says}")
        told = Told((lead, *told.lines), told.quantities)
    lines = (*told.lines, *(advice_lines(_of_scale(knowledge)) if error < 0 else ()))
    return Answer(question.text, question.intent, ANSWERED, lines, question=question, quantities=told.quantities)


def _hidden(left: Told, before: Question, knowledge: Knowledge) -> str | None:
    """That nothing of it shows, where the depth of focus forgives all of it at the widest stop of the lens."""
    needed = [row.value.nominal for row in left.quantities if row.name == FROM_STOP and is_known(row.value)]
    lens, usual = before.lens, knowledge.catalogue.assumptions[USUAL_STOP].value.nominal
    widest = lens.f_number if lens is not None and lens.f_number is not None else before.f_number or usual
    smaller = knowledge.catalogue.assumptions[_SMALLER].value.nominal
    if not needed or needed[0] * smaller > widest:
        return None
    return f"Nothing of it shows: depth of focus forgives all of it from f/{f_number(needed[0])} on. Leave it."


def _too_far(left: Told, feet: bool, knowledge: Knowledge) -> str:
    """That what is far stays soft: beyond which distance, and up to which stop."""
    ends = [row.value.nominal for row in left.quantities if row.name == "far_from_sensor_mm" and is_known(row.value)]
    stops = [row.value.nominal for row in left.quantities if row.name == FROM_STOP and is_known(row.value)]
    text = TOO_FAR.replace("what is far", f"what lies beyond {distance(ends[0], feet)}") if len(ends) == 1 else TOO_FAR
    closes = stops and stops[0] <= knowledge.catalogue.assumptions[_SMALLEST].value.nominal
    return f"{text} to f/{f_number(stops[0])}." if closes else f"{text}."


def _of_scale(knowledge: Knowledge) -> list[Advice]:
    return [row for row in (knowledge.catalogue.advice.get(_SCALE),) if row is not None]


def _error_of(before: Question, knowledge: Knowledge) -> float | None:
    """By how much the seat of before is too long, mm: by what was told or carried over, the mark or the far limit."""
    told = off_by_mm(before)
    if told is not None:
        return told
    carried = number(before, SHIM)
    if carried is not None:
        return -carried  # 'where would it be on a 90' after the mark of a 40: by so much it sits too near
    short = short_by_turns_mm(before, knowledge.catalogue)
    if short is not None:
        return -short
    at, lenses = number(before, "mark") or distance_mm(before), focals(before)
    if at is None or not lenses:
        return error_of_the_pair(before, knowledge)
    error = Distances(lenses[0], knowledge.catalogue).extension_at(at)
    if not is_known(error):
        return None
    return error.nominal if is_limit(before) else -error.nominal
