"""A frame told after what is soft at small stops: from which stop on light that bends is seen there."""

from __future__ import annotations

from typing import Final

from grammar.kinds import CHAIN, COVERAGE, DEPTH_OF_FIELD, FOCUS_VERDICT
from grammar.questions import Question

_SOFT: Final = "soft-said"
_ASKED: Final = "diffraction"  # the word that asks of it
_SMALL: Final = 8.0  # f-numbers from here up
_MOST: Final = 6  # words of such a turn
_AFTER: Final = frozenset([CHAIN, FOCUS_VERDICT, COVERAGE])  # what a frame alone seems to ask


def with_frame_of_blur(got: Question, before: Question) -> Question:
    """'on apsc' after 'everything past f/11 is soft': what the stop does on that frame, and no way onto a body."""
    stops = [before.f_number, *(lens.f_number for lens in before.lenses)]
    small = any(stop is not None and stop >= _SMALL for stop in stops)
    frame = got.bodies != before.bodies or got.things != before.things
    soft = before.mentions(_SOFT) or before.topic == _ASKED
    alone = got.follows and len(got.text.split()) <= _MOST and not got.adapters and got.lenses == before.lenses
    if not (soft and small and frame and alone and got.intent in _AFTER and (got.bodies or got.things)):
        return got
    lenses = tuple(lens for lens in got.lenses if lens.focal_length_mm is not None)
    stop = next((one for one in stops if one is not None and one >= _SMALL), None)
    return got.with_(intent=DEPTH_OF_FIELD, topic=_ASKED, asked=_ASKED, lenses=lenses, f_number=stop)
