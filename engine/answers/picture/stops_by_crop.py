"""'is f2 on MFT really f4': two stops as far apart as the crop factor are alike in depth of field, not in light."""

from __future__ import annotations

from itertools import permutations
from math import log2
from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import trimmed
from engine.answers.picture.frames import frames_named
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics.coverage import FULL_FRAME_DIAGONAL_MM
from grammar.questions import Question

_NEAR: Final = 0.06  # by which the ratio of the two may differ from the crop factor: stops are told rounded
_LEAST: Final = 1.2  # crop factors nearer 1 set no stops apart
AS_CROP: Final = "crop-equivalent"


def stops_by_crop(question: Question, facts: Catalogue) -> Told:
    """Which of the two is that on the frame named and which its likeness on full frame; nothing where neither is."""
    told = [thing.f_number for thing in question.lenses if thing.f_number]
    told += [question.f_number] if question.f_number else []
    for small in _frames(question, facts):
        crop = FULL_FRAME_DIAGONAL_MM / small.diagonal_mm
        for here, like in permutations(dict.fromkeys(told), 2):
            if crop >= _LEAST and abs(like / here / crop - 1) <= _NEAR:
                return _told(here, small, crop)
    return Told()


def with_stops_by_crop(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with that first; alone, as one about crops, where light was read to be asked for."""
    told = stops_by_crop(question, knowledge.catalogue)
    if not told.lines:
        return answer
    if answer.intent == "why":
        lines = (*told.lines, *(line for line in answer.lines if answer.status == 0))
        return replace(answer, status=0, lines=lines, quantities=(*(answer.quantities or ()), *told.quantities))
    kept = question.with_(intent=AS_CROP)
    return Answer(question.text, AS_CROP, 0, told.lines, question=kept, quantities=told.quantities)


def _frames(question: Question, facts: Catalogue) -> list[Format]:
    made_for = [facts.formats[one.format] for one in question.lenses if one.format and one.format in facts.formats]
    return [*frames_named(question, facts), *made_for]


def _told(here: float, small: Format, crop: float) -> Told:
    like, stops = here * crop, 2 * log2(crop)
    at, equal, factor = trimmed(here, 2), trimmed(like, 2), trimmed(crop, 2)
    text = (
        f"Only for depth of field: f/{at} on {small.name}, crop factor {factor}, blurs the background of the same view"
        f" as f/{equal} does on full frame. For exposure it is not: f/{at} stays f/{at} on any sensor, and no light is"
        f" lost; meter and expose for f/{at}. The smaller frame only gathers {trimmed(stops, 2)} stops less in all,"
        " which shows as noise at the same ISO."
    )
    rows = (
        Quantity("equivalent_f_number", Interval.exact(like), f"f/{at}, {small.name}"),
        Quantity("crop_factor", Interval.exact(crop), small.name),
        Quantity("f_number", Interval.exact(here), "for exposure"),
        Quantity("light_difference_stops", Interval.exact(stops), f"{small.name} squared"),
    )
    return Told((Line("head", text),), rows)
