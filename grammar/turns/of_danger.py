"""What goes on from a danger: whether something makes it safe, and how near the rear stands to the sensor."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import HAZARD
from grammar.questions import Question
from grammar.turns.going_on import asks

# what is asked of no danger, whatever stands there now
_NO_DANGER: Final = frozenset(
    ["how-big", "infinity", "cover", "vignette", "equiv", "dof", "how-close", "macro", "how-far", "buy"]
)


_RING: Final = "adapter"  # 'ring length' asks of the ring, and offers none


_EXPOSED: Final = ("shutter", "iso", "frame_rate")  # keys of the values of an exposure


def is_remedy(heard: Heard, before: Question) -> bool:
    """'ok, a dark ND on it then' after a danger: whether that makes it safe, told as if it did."""
    told = any(not part.is_bare for part in (*heard.cast.lenses, *heard.cast.bodies))
    lit = any(key in heard.readings.values for key in _EXPOSED)  # 'what nd for a sunny day, 1/50'
    remedied = (
        any(not (part.piece == _RING and part.is_bare) for part in heard.cast.pieces)
        or "factor" in heard.readings.values
        or heard.tells("nd")
    )
    other = any(heard.tells(cue) for cue in _NO_DANGER)
    return before.intent == HAZARD and remedied and not (told or lit or other) and not asks(heard)


def is_of_reach(heard: Heard, before: Question) -> bool:
    """'how far off the sensor is that' after how far the rear stands out: what is left before the sensor."""
    things = (*heard.cast.lenses, *heard.cast.bodies, *heard.cast.pieces)
    to_sensor = any(token.kind == "FRAME" for token in heard.line.tokens) and not heard.tells("coverage")
    asked = any(heard.tells(cue) for cue in ("held-at", "how-far", "how-close", "how-much"))
    return before.said("rear_reach") is not None and to_sensor and asked and not things
