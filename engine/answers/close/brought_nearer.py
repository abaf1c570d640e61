"""How much more extension brings a lens from one nearest distance to a nearer one."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, number, numbers
from engine.answers.parts.wording import distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_METRE
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question

_LEAST_MM: Final = 100.0  # of what a distance may be
_FOCALS: Final = (18.0, 800.0)


def with_more_extension(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind that: x(D) = extension for a subject at D from the sensor, and the one less the other."""
    focal, ends = _focal(question), _ends(question)
    of_size = question.said("magnification") is not None
    if focal is None or ends is None or of_size or any(one.thickness_mm for one in question.adapters):
        return answer
    if question.bodies and answer.intent != MACRO_DISTANCE:
        return answer
    start, wanted = ends
    lens = Distances(focal, knowledge.catalogue)
    by_itself, needed = lens.extension_at(start), lens.extension_at(wanted)
    if not (is_known(by_itself) and is_known(needed)):
        return answer
    more = round(needed.nominal - by_itself.nominal, 3)
    near, far, feet = distance(wanted, question.feet), distance(start, question.feet), f"{trimmed(focal, 1)} mm"
    text = (
        f"From {far} down to {near} takes {small_mm(more)} more: at {far} from the sensor the {feet} lens is"
        f" {small_mm(by_itself.nominal)} out, for {near} it must be {small_mm(needed.nominal)} out."
    )
    row = Quantity("extension_mm", Interval.exact(more), f"{near} and not {far}")
    rest = answer.lines if answer.intent == MACRO_DISTANCE else ()
    return replace(
        answer, intent=MACRO_DISTANCE, lines=(Line("head", text), *rest), quantities=(row, *(answer.quantities or ())),
    )  # fmt: skip


def _focal(question: Question) -> float | None:
    """Of the one lens named, else the one bare number that may be it, mm."""
    named = focals(question)
    bare = [one for one in numbers(question, "numbers") if _FOCALS[0] <= one <= _FOCALS[1]] if not named else []
    told = named or tuple(bare)
    return told[0] if len(told) == 1 else None


def _ends(question: Question) -> tuple[float, float] | None:
    """The nearest distance now and the nearer one that is wanted, mm; a bare '0.3' beside one is in metres."""
    told = {one for one in (question.distance_mm, number(question, "close_focus")) if one is not None}
    told |= {one for one in numbers(question, "distance") if one >= _LEAST_MM}
    if len(told) == 1:
        told |= {
            one * MM_PER_METRE
            for one in numbers(question, "numbers")
            if 0 < one < 1 and one * MM_PER_METRE >= _LEAST_MM
        }
    if len(told) != 2 or min(told) < _LEAST_MM:
        return None
    return max(told), min(told)
