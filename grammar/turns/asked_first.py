"""What is seen in a follow-up before most else: what a stop becomes, what a lens is worth, a piece taken off."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from grammar.kinds import COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, EXPOSURE_ND, HAZARD, MACRO_DISTANCE, OUT_OF_SCOPE
from grammar.turns.stop_becomes import becomes_when_drawn_out
from grammar.turns.taking_back import OFF_AGAIN
from grammar.turns.turn_seen import Turn
from grammar.turns.worth_asked import asks_its_worth

_GOES_ON: Final = frozenset([COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, EXPOSURE_ND, MACRO_DISTANCE])
_LIGHTS: Final = frozenset(["light", "other_light"])
_OF_SUN: Final = ("at-the-sun", "laid-in-sun", "stuck", "harm-asked")
_IDLE: Final = frozenset([OFF_AGAIN, "spaced", "what-if", "can", "will", "ok", "instead", "it-is"])


def takes_a_piece_off(turn: Turn) -> bool:
    """'lose the reducer', 'and with it taken off' after what the picture is: the same is asked without it."""
    cast, told = turn.heard.cast, turn.heard.readings
    named = cast.lenses or cast.bodies or cast.frames or told.values or told.f_number or told.distance_mm
    held = {one.piece for one in turn.before.adapters if one.piece is not None}
    idle = all(cue.tells in _IDLE for cue in turn.heard.cues)
    left = any(told.limits == {"without": (one,)} for one in held)
    off = left or (bool(held) and turn.tells(OFF_AGAIN))
    return turn.was in _GOES_ON and off and idle and not named


def tells_the_light(turn: Turn) -> bool:
    """'clouds broke, full sun now' after an exposure: in that light, and no harm that anything might come to."""
    told, cast = turn.heard.readings, turn.heard.cast
    named = cast.lenses or cast.bodies or cast.pieces or not told.values or told.values.keys() - _LIGHTS
    feared = turn.tells(*_OF_SUN) or "?" in turn.heard.text
    return turn.was == EXPOSURE_ND and turn.best == HAZARD and not named and not feared


ROW: Final[tuple[tuple[Callable[[Turn], bool], str | Callable[[Turn], str]], ...]] = (
    (becomes_when_drawn_out, EXPOSURE_ND),
    (asks_its_worth, OUT_OF_SCOPE),
    (tells_the_light, EXPOSURE_ND),
    (takes_a_piece_off, lambda turn: turn.was),
)
