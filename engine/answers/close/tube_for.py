"""How long an extension tube must be for a subject at the distance that was told."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.close.close_rows import Shown, at_extension
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.said import distance_mm, number
from engine.answers.parts.wording import about, small_mm
from engine.answers.seat.described import TUBE
from engine.answers.seat.distances import Distances
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.physics import closeup
from grammar.questions import Question


def tube_for(lens: Distances, tubes: list[float], question: Question, shown: Shown) -> Iterator[Told]:
    """How long a tube must be for a subject at the distance told: from the sensor, or before the front glass."""
    open_tube = any(thing.piece == TUBE and thing.thickness_mm is None for thing in question.adapters)
    at, room = distance_mm(question), number(question, "front_glass")
    if tubes or not open_tube or (at is None and room is None):
        return
    x: Measure = UNKNOWN
    words = ""
    if room is not None:
        words = f"{shown.distance(room)} before the front glass"
        x = closeup.extension_for_room_mm(lens.focal, lens.offset, Interval.exact(room))
    elif at is not None:
        words = f"{shown.distance(at)} from the sensor"
        x = lens.extension_at(at)
    if is_known(x):
        lead = f"to be sharp {words}: {about(x, small_mm)} of tube, the focus ring at infinity"
        yield Told((Line("head", f"{lead[:1].upper()}{lead[1:]}."),)) + at_extension(
            lens, x, shown, words, end="focus", lead="there"
        )
