"""What a follow-up asks beside the chain: how to check it, what else is like it, which part is the right one."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    CHAIN,
    DEFINITION,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    WHY,
)
from grammar.questions import Question
from grammar.turns.flanges_told import MOUNTLESS
from grammar.turns.sticking import RANGED
from grammar.turns.turn_seen import Turn

BY_HAND: Final = "magnify"  # the advice on focusing by hand
_UNFOCUSED: Final = "no focusing"  # trait of a lens
BY_APPARATUS: Final = "no-focusing-why"  # on lenses that have no focusing of their own
CLOSE_UP: Final = "focused-close-up"  # and on doing so close up
# cues beside 'how' and 'focus' that ask nothing more
_OF_FOCUS: Final = frozenset(
    ["how", "focus", "manual-focus", "again", "ok", "right", "good", "frame-size", "macro", "what", "can", "magnify"]
)
_OF_FINDER: Final = frozenset([GEAR_SETTING, WHY])
_DRAWN: Final = ("magnification", "extension", "field")
_AMISS: Final = frozenset([LOOK_ALIKE, HAZARD, WHY, GEAR_SETTING, CHAIN, FOCUS_VERDICT, DEFINITION])


def wants_the_right_part(turn: Turn) -> bool:
    """'whats the proper part then' after two that do not go together, or a harm: the ring that does join them."""
    lens = any(one.ids for one in turn.before.lenses)
    return lens and turn.tells("proper-part") and turn.was in _AMISS and not turn.names_things


def checks_a_danger(turn: Turn) -> bool:
    """'how do i check that' after a danger: whether there is one."""
    return turn.was == HAZARD and turn.tells("check-it") and not _tells_more(turn)


def fears_a_danger(turn: Turn) -> bool:
    """'is the yellow tint dangerous', 'can it get mouldy': the words of a danger, and no other lens or body."""
    other = turn.tells("lens-mount", "body-mount", "focal", "ordinal")
    return turn.best == HAZARD and turn.tells("wholly-hazard") and not other


def measures_by_hand(turn: Turn) -> bool:
    """'with just a ruler?', 'no calipers here' while a lens is identified: how it is measured."""
    return turn.was == IDENTIFY_MOUNT and turn.tells("calipers", "check-it") and not _tells_more(turn)


def asks_what_else(turn: Turn) -> bool:
    """'what else is close to that' after which mount a lens has: what is easily taken for it."""
    found = turn.was in (CHAIN, FOCUS_VERDICT) and not turn.before.bodies  # how what was identified is gone on with
    asked = turn.was in (IDENTIFY_MOUNT, LOOK_ALIKE, DEFINITION) or found
    return asked and turn.tells("what-else") and not _tells_more(turn)


def focusing(heard: Heard, before: Question) -> str | None:
    """'so how do i focus' after a lens on a body: the advice on that; None where it asks else."""
    asked = heard.tells("how") and heard.tells("focus") and all(cue.tells in _OF_FOCUS for cue in heard.cues)
    named = heard.cast.lenses or heard.cast.bodies or heard.cast.pieces or heard.cast.frames
    more = heard.readings.values or heard.readings.distance_mm is not None or heard.readings.f_number is not None
    spoken_of = before.lenses or before.bodies or before.intent in _OF_FINDER
    if not asked or named or more or not spoken_of:
        return None
    close = before.intent == MACRO_DISTANCE or any(before.said(key) is not None for key in _DRAWN)
    lens = before.lens
    still = lens is not None and (lens.lens_kind in MOUNTLESS or _UNFOCUSED in lens.traits)
    ranged = any(one.piece in RANGED for one in before.adapters)
    return CLOSE_UP if close else BY_APPARATUS if still and not ranged else BY_HAND


def asks_how_to_focus(turn: Turn) -> bool:
    return focusing(turn.heard, turn.before) is not None


def _tells_more(turn: Turn) -> bool:
    return turn.names_things or bool(turn.heard.readings.values) or turn.heard.readings.distance_mm is not None
