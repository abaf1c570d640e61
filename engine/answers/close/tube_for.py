"""How long an extension tube must be for a subject at the distance that was told."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.close.close_rows import Shown, at_extension
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import distance_mm, mentions, number
from engine.answers.parts.wording import about, small_mm
from engine.answers.seat.described import TUBE
from engine.answers.seat.distances import Distances
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.physics import closeup
from grammar.questions import Question

RING = "adapter"


def tube_for(lens: Distances, tubes: list[float], question: Question, shown: Shown) -> Iterator[Told]:
    """How long a tube must be for a subject at the distance told: from the sensor, or before the front glass."""
    open_tube = any(thing.piece == TUBE and thing.thickness_mm is None for thing in question.adapters)
    open_tube = open_tube or (mentions(question, "extension-asked") and not question.adapters)
    open_tube = open_tube or (number(question, "close_focus") is not None and _is_any_ring(question))
    at, room, ahead = distance_mm(question), number(question, "front_glass"), number(question, "front_principal")
    if question.distance_mm is None and at == number(question, "close_focus") and number(question, "magnification"):
        return  # so near it comes by itself, and no subject stands there
    if tubes or not (open_tube or ahead is not None) or (at is None and room is None and ahead is None):
        return
    x: Measure = UNKNOWN
    words = ""
    if ahead is not None:
        words = f"{shown.distance(ahead)} before the front principal plane"
        x = closeup.extension_for_room_mm(lens.focal, lens.focal, Interval.exact(ahead))  # u = f + f*f/x
    elif room is not None:
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
        yield _beside_own(lens, x, question, shown, words)


def _is_any_ring(question: Question) -> bool:
    """'how long a ring for a 35 from 0.7 m down to 0.3': one of no mounts and no length stands for a tube."""
    return bool(question.adapters) and all(
        (thing.piece or RING) == RING and not (thing.front or thing.ids or thing.thickness_mm)
        for thing in question.adapters
    )


def _beside_own(lens: Distances, wanted: Interval, question: Question, shown: Shown, words: str) -> Told:
    """What of it the lens does by its own ring, at the nearest mark that is told, and what is left for a tube."""
    near = number(question, "close_focus")
    own = lens.extension_at(near) if near is not None else UNKNOWN
    if near is None or not is_known(own) or own.greatest >= wanted.least:
        return Told()
    left = wanted - own
    at = f"at its {shown.distance(near)} mark"
    text = f"{at} the lens does {small_mm(own.nominal)} of that by itself: {about(left, small_mm)} of tube is left"
    return Told((Line("fact", text, 1),), (Quantity("extension_mm", left, f"{words}, {at}"),))
