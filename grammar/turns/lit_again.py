"""The exposure that was told before: light, shutter, ISO are the same still when, later on, light is asked of again."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question

SETTINGS: Final = frozenset(["light", "shutter", "iso", "frame_rate", "angle"])
_TIMES: Final = frozenset(["shutter", "frame_rate", "angle"])  # of these only what was told last holds
_FILTER: Final = "filter"
_LIGHT, _OTHER = "light", "other_light"  # keys of the light that is told first, and of that behind it
_CHANGED: Final = "light-changed"


def lit_so_far(got: Question, before: Question) -> tuple[tuple[str, str], ...]:
    """The settings of an exposure as they were told last in the talk."""
    told = {**dict(before.lit), **_settings(before)}
    new = _settings(got) if got.intent == EXPOSURE_ND else {}
    if not got.follows and not new:
        return ()
    if _TIMES & new.keys():
        told = {key: text for key, text in told.items() if key not in _TIMES}
    return tuple({**told, **new}.items())


def lit_again(heard: Heard, intent: str, before: Question) -> dict[str, str]:
    """The settings told before that hold where a filter, or an exposure, is asked for after something else."""
    told = heard.readings.values.keys()
    asked = heard.tells("nd") or told & SETTINGS or any(part.piece == _FILTER for part in heard.cast.pieces)
    if intent != EXPOSURE_ND or before.intent == EXPOSURE_ND or not asked:
        return {}
    timed = _TIMES if told & _TIMES else frozenset()
    return {key: text for key, text in before.lit if key not in timed}


def _settings(question: Question) -> dict[str, str]:
    if question.intent != EXPOSURE_ND:
        return {}
    return {key: text for key, text in question.values if key in SETTINGS}


def with_light_now(got: Question) -> Question:
    """'clouds broke, full sun now': the light that is told last, where the text says that it has changed."""
    later = got.said(_OTHER)
    if got.intent != EXPOSURE_ND or later is None or not got.follows or not got.places(_CHANGED):
        return got
    return got.with_(values=(*got.rest(_LIGHT, _OTHER), (_LIGHT, later)))
