"""What is told of a picture that was taken behind the filter of before: by how many stops it came out wrong."""

from __future__ import annotations

import re
from typing import Final

from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question
from grammar.turns.answer_told import FILTER_ON, told_as

CAME_OUT: Final = "came_out"  # the key of how far off the picture was: '1.2 stops too dark'
_STOP_SAID: Final = "stop-said"  # a phrase that is mentioned
_STOPS: Final = "stops"
_LIGHT: Final = "light"
_IN_EV: Final = re.compile(r"(\d+(?:\.\d+)?) ?evs?\b", re.IGNORECASE)


def with_filter_tried(said: Question, before: Question) -> Question:
    """'it is 1.2 stops too dark' after a filter that was told: so far off it came out, and no filter is of so many."""
    said = said.without(CAME_OUT)  # that was in the turn before
    over, under = bool(said.places("overexposed")), bool(said.places("underexposed"))
    tried = before.intent == EXPOSURE_ND and bool(told_as(before, FILTER_ON))
    if over == under or not tried or not said.follows:
        return said
    in_ev = _IN_EV.search(said.text)  # '1 ev too dark': off by so much, and no light
    stops = in_ev[1] if in_ev else said.said(_STOPS) if said.places(_STOP_SAID) else None
    if stops is None or "," in stops:
        return said
    light = said.said(_LIGHT) if in_ev is None else before.said(_LIGHT)
    rest = said.rest(_STOPS, _LIGHT)
    rest += ((_LIGHT, light),) if light is not None else ()
    way = "bright" if over else "dark"
    return said.with_(intent=EXPOSURE_ND, topic=None, values=(*rest, (CAME_OUT, f"{stops} stops too {way}")))
