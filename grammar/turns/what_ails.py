"""What ails a lens that was spoken of, and which of two it is: 'stuck wide open', 'which of them is mine'."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from grammar.kinds import CHAIN, COMPARE, DEFINITION, FOCUS_VERDICT, IDENTIFY_MOUNT, LOOK_ALIKE, SHIM_CALIBRATION, WHY
from grammar.turns.turn_seen import Turn

IRIS_IDLE, WHICH_IS_MINE, TO_BLAME = "iris-idle", "which-is-mine", "which-to-blame"
_OF_SEAT: Final = frozenset([CHAIN, FOCUS_VERDICT, SHIM_CALIBRATION, WHY])
_SET_APART: Final = frozenset([LOOK_ALIKE, DEFINITION, IDENTIFY_MOUNT])
_TWO: Final = 2


def has_an_idle_iris(turn: Turn) -> bool:
    """'same lens, stuck wide open', 'aperture does nothing' after a lens on a body: the reason is asked for."""
    return bool(turn.before.lenses) and turn.tells(IRIS_IDLE) and not _tells_more(turn)


def asks_which_is_mine(turn: Turn) -> bool:
    """'and which one is my lens' after two that look alike: how they are told apart."""
    before = turn.before
    two = len(before.lenses) + len(before.bodies) >= _TWO
    apart = turn.was in _SET_APART or (turn.was == COMPARE and not (before.bodies or before.adapters))
    return apart and two and turn.tells(WHICH_IS_MINE) and not _tells_more(turn)


def looks_for_the_culprit(turn: Turn) -> bool:
    """'could be the lens tho', 'or is it the camera' after a seat: which of lens, ring and body is off."""
    return turn.was in _OF_SEAT and turn.tells(TO_BLAME) and not _tells_more(turn)


def _tells_more(turn: Turn) -> bool:
    told = turn.heard.readings
    named = any(part.mounts or part.focal or part.named for part in (*turn.heard.cast.lenses, *turn.heard.cast.bodies))
    return named or bool(told.values.keys() - {"numbers"}) or told.distance_mm is not None


# what is seen, and what is asked then
ROW: Final[tuple[tuple[Callable[[Turn], bool], str], ...]] = (
    (has_an_idle_iris, WHY),
    (asks_which_is_mine, IDENTIFY_MOUNT),
    (looks_for_the_culprit, WHY),
)
