"""A time that is wanted after one that was metered: 'i want 1/8' asks what must be held back for it."""

from __future__ import annotations

from typing import Final

from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question

_SHUTTER: Final = "shutter"
_WANTED: Final = "time-wanted"  # a phrase that is mentioned
_FILTERS: Final = ("factor", "factor_taken")
_SCENE: Final = ("light", "iso", "frame_rate")


def with_time_wanted(said: Question, before: Question) -> Question:
    """Both times, and no filter yet; as it was where the scene is told, which the time is then set for."""
    metered, wanted = before.said(_SHUTTER), said.said(_SHUTTER)
    if not (said.intent == before.intent == EXPOSURE_ND and said.follows and said.places(_WANTED)):
        return said
    if metered is None or wanted is None or metered == wanted or "," in f"{metered}{wanted}":
        return said
    if any(before.said(key) or said.said(key) for key in _SCENE):
        return said
    return said.with_(topic=None, values=(*said.rest(_SHUTTER, *_FILTERS), (_SHUTTER, f"{metered}, {wanted}")))
