"""Whether a ring that is off leaves another lens better or worse off: that lens, or both, on the same ring."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import SHIM_CALIBRATION
from grammar.questions import RING, Question
from grammar.turns.going_on import OF_RING, sized
from grammar.words.groups import OFF_WORSE

_ELSE: Final = ("exposure", "dof", "cover", "vignette", "price-q", "how-close", "equiv", "why", "why-not")
_TWO: Final = 2


def others_on_ring(heard: Heard, before: Question) -> str | None:
    """'would the 58 be better off', 'which suffers more, the 35 or a 24' after a ring that came out too long."""
    cast, told = heard.cast, heard.readings
    worse = any(OFF_WORSE in one.groups for one in heard.line.tokens)
    lenses = [part for part in cast.lenses if part.focal is not None and not (part.mounts or part.kinds)]
    pieces = [part for part in cast.pieces if not (part.is_bare and part.piece == RING)]
    more = cast.bodies or cast.frames or pieces or told.values or told.f_number or told.distance_mm
    marked = before.intent == SHIM_CALIBRATION and before.said("mark") is not None
    seated = before.intent in OF_RING and sized(before) and bool(before.bodies)
    off = bool(before.lenses) and (marked or seated)
    if not off or not worse or more or not 0 < len(lenses) <= _TWO or len(lenses) != len(cast.lenses):
        return None
    if any(map(heard.tells, _ELSE)):
        return None
    return " ".join(f"and a {part.focal:g} mm lens" for part in lenses) + " on it"
