"""Tubes and rings that are put behind a lens for a close-up: for how long they stay there."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import CLOSE_UPS, EXPOSURE_ND, MACRO_DISTANCE, WHY
from grammar.questions import RING, Question, Thing

PUT_CLOSE: Final = frozenset(["extension-tube", "bellows"])  # what is put behind a lens for a while
_FAR_AWAY: Final = "far-away-scene"  # cue of what no tube is put behind a lens for
_LIGHT: Final = "light"
_FAR_MM: Final = 1000.0


def as_put_behind(
    heard: Heard, pieces: tuple[Thing, ...], intent: str, stood: tuple[Thing, ...]
) -> tuple[Thing, ...]:  # fmt: skip
    """'would a 20 mm ring behind it do' close up: what is put there besides is so much of a tube, and no adapter.

    `stood`: what stood there before stays what it is.
    """
    behind = heard.tells("put-in") or any(token.value == "behind" for token in heard.line.tokens)
    if intent != MACRO_DISTANCE or not behind:
        return pieces
    return tuple(
        replace(one, piece="extension-tube") if _is_cut(one) and not (one.ids or one.front or one.rear or one in stood)
        else one
        for one in pieces
    )  # fmt: skip


def is_close_still(said: Question, before: Question) -> bool:
    """Whether what a tube does is asked still: not where since then, for another lens or body, a scene is exposed for.

    A tube that was put behind one lens for a flower is not behind the next one that is filmed with in the sun.
    """
    if (said.distance_mm or 0.0) >= _FAR_MM:
        return False  # 'and now a portrait with the 45, at 1.5 m'
    lit = said.said(_LIGHT) is not None or before.said(_LIGHT) is not None
    close = CLOSE_UPS - {EXPOSURE_ND} if lit else CLOSE_UPS
    return said.intent in close or before.intent in close


def without_tubes_far(heard: Heard, said: Question, kept: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """'night street, shutter?' after a tube for a stamp: no street is seen through one."""
    if not heard.tells(_FAR_AWAY) or said.adapters or said.intent in (MACRO_DISTANCE, WHY):
        return kept
    return tuple(one for one in kept if one.piece not in PUT_CLOSE or one.ids)


def _is_cut(piece: Thing) -> bool:
    return piece.piece == RING and piece.thickness_mm is not None
