"""Two lenses that are told by focal length and stop and nothing else: how much more light the faster lets in."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import same_light_stops
from engine.answers.parts.wording import f_number, figures, small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval
from grammar.questions import Question

_PAIR: Final = 2


def with_lenses_by_stop(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what the stops tell; advice that computes nothing gives way to it. Opening: f over N."""
    lenses = question.lenses
    alike = len(lenses) == _PAIR and lenses[0].ids == lenses[1].ids and lenses[0].format == lenses[1].format
    if not alike or question.adapters or len(question.bodies) > 1 or len(question.frames) > 1:
        return answer
    told = [(one.f_number, one.focal_length_mm) for one in lenses if one.f_number and one.focal_length_mm]
    if len(told) != _PAIR or abs(log2(told[0][0] / told[1][0])) * 2 < same_light_stops(knowledge.catalogue):
        return answer
    (fast, long), (slow, other) = sorted(told)
    stops = 2 * log2(slow / fast)
    first, second = f"{trimmed(long, 1)} mm f/{f_number(fast)}", f"{trimmed(other, 1)} mm f/{f_number(slow)}"
    text = f"{first} lets in {trimmed(stops, 2)} stops more light than {second}, {figures(2**stops, 3)} times as much."
    wide = f"Its opening is {small_mm(long / fast)} against {small_mm(other / slow)}"
    if long == other:
        wide += (
            f": wide open so much less is sharp. Stopped down to f/{f_number(slow)} both have the same depth of field"
        )
    row = Quantity("light_difference_stops", Interval.exact(stops), f"{first} against {second}")
    rest = answer.lines if answer.chains or answer.quantities else ()
    lines = (Line("head", text), Line("text", f"{wide}."), *rest)
    return replace(answer, lines=lines, quantities=(row, *(answer.quantities or ())))
