"""Where each of several lenses ends, in the order of the lenses: 'my 35 ends at 6 m and the 50 at 12 m'."""

from __future__ import annotations

import re
from typing import Final

from engine.base.units import MM_PER_FOOT
from grammar.questions import Question

_DISTANCE: Final = "distance"
_TOLD: Final = re.compile(r"\d+(?:\.\d+)?")


def with_ends_in_order(question: Question) -> Question:
    """The question with its distances as the text tells them, one for each lens that is named; else as it was."""
    lenses = [one for one in question.lenses if one.focal_length_mm is not None]
    more = [float(one) for one in _TOLD.findall(question.said(_DISTANCE) or "")]
    if question.distance_mm is None or not more or len(lenses) != 1 + len(more):
        return question
    spans = [(one.column - 1, one.column - 1 + len(one.words)) for one in lenses]
    places = {end: place_of(end, question.text, spans) for end in (question.distance_mm, *more)}
    if len(places) != len(lenses) or any(place is None for place in places.values()):
        return question  # not told in this turn
    first, *rest = sorted(places, key=lambda end: places[end] or 0)
    values = tuple((key, ", ".join(f"{one:g} mm" for one in rest) if key == _DISTANCE else text)
                   for key, text in question.values)  # fmt: skip
    return question if first == question.distance_mm else question.with_(distance_mm=first, values=values)


def place_of(end: float, text: str, lenses: list[tuple[int, int]]) -> int | None:
    """Where in the text a distance in mm stands, by its figures in metres, feet, cm or mm; outside any lens's name."""
    for size in (end / 1000, end / MM_PER_FOOT, end / 10, end):
        for found in re.finditer(rf"(?<![\d.]){re.escape(f'{size:.4g}')}(?!\d|\.\d)", text):
            if not any(start <= found.start() < stop for start, stop in lenses):
                return found.start()
    return None
