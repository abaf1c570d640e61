"""The stop, the distance and the topic that a question leaves for the one after it."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    COVERAGE,
    CROP_EQUIVALENT,
    DEPTH_OF_FIELD,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    MACRO_DISTANCE,
)
from grammar.questions import HOOD, Question, Thing
from grammar.things.casting import DRAWN
from grammar.turns.sticking import PLACED

_STOPPED: Final = frozenset([DEPTH_OF_FIELD, EXPOSURE_ND])  # here the widest stop of a lens is the one set
_FAR_MM: Final = 1000.0  # from here on it is a distance of a subject, and nothing close up
_RELEASE: Final = "release"  # the topic of a camera that takes no picture
_DENSITY: Final = "nd"  # the topic of a filter that is asked for
_CLOSE: Final = ("extension", "magnification")
_AT_A_STOP: Final = PLACED | {COVERAGE, CROP_EQUIVALENT}


def kept_stop(intent: str, lenses: tuple[Thing, ...], same_lens: bool, before: Question) -> float | None:
    """The stop that was set; the widest of a lens is not that of another."""
    widest = before.lens is not None and before.f_number == before.lens.f_number
    own = (before.f_number is None or widest) and all(one.f_number is not None for one in lenses)  # each its own
    if own and not same_lens:
        return None
    if intent == before.intent == DEPTH_OF_FIELD and not same_lens and before.lens is not None:
        return before.f_number if before.f_number is not None else before.lens.f_number  # the stop was what mattered
    if widest and not same_lens:
        return None
    return before.f_number if intent in _AT_A_STOP or intent == before.intent else None


def stop_held(heard: Heard, intent: str, lenses: tuple[Thing, ...], before: Question) -> float | None:
    """'and a 135 f/2.8' after what is sharp at f/4: the stop that was set, as far as the new lens opens."""
    held, old = before.f_number, before.lens
    set_so = held is not None and (old is None or old.f_number != held)
    told = heard.readings.f_number is not None or heard.tells("wide-open") or len(lenses) != 1
    told = told or any(part.is_stop_alone for part in heard.cast.lenses)  # 'f11' names no other lens
    if held is None or not set_so or told or intent != before.intent or intent not in _STOPPED:
        return None
    return max(held, lenses[0].f_number or held)


def kept_distance(intent: str, before: Question, said: Question) -> float | None:
    """How far away was told before; not where a tube told now brings what is sharp to where it is."""
    drawn = any(one.piece in DRAWN and one.thickness_mm for one in said.adapters)
    if intent == DEPTH_OF_FIELD and (drawn or any(map(said.said, _CLOSE))):
        return None
    if intent == FOCUS_VERDICT == before.intent and _is_ring_gone(before):
        return None  # 'it only focuses at 20 cm' with a ring between, which was left off since
    far = before.distance_mm is not None and before.distance_mm >= _FAR_MM and not before.adapters
    if intent == before.intent or (intent == DEPTH_OF_FIELD and before.intent == MACRO_DISTANCE and far):
        return before.distance_mm
    return before.away if intent == DEPTH_OF_FIELD else None


def _is_ring_gone(before: Question) -> bool:
    return before.prior is not None and bool(before.prior.adapters) and not before.adapters


def kept_topic(heard: Heard, intent: str, before: Question) -> str | None:
    """What was asked by its topic is asked still where the next turn only changes something: a setting, a filter."""
    filtered = before.intent == EXPOSURE_ND and before.topic == _DENSITY
    # 'its too dark to see' after a camera that does not release: a matter of its own
    own = heard.weighed.best == GEAR_SETTING and before.topic == _RELEASE
    kept = filtered or (before.intent == GEAR_SETTING and not own) or before.topic == HOOD
    return before.topic if intent == before.intent and kept else None
