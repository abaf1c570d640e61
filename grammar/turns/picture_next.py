"""What a follow-up asks of the picture and its light, by a word of it and by what was asked before."""

from __future__ import annotations

from grammar.kinds import DEPTH_OF_FIELD, EXPOSURE_ND
from grammar.turns.set_behind import is_behind
from grammar.turns.turn_seen import Turn


def drops_the_filter(turn: Turn) -> bool:
    """'without the nd then', 'i forgot the filter' after which filter: the same light, taken up some other way."""
    cast = turn.heard.cast
    return turn.was == EXPOSURE_ND and turn.tells("no-filter") and not (cast.lenses or cast.bodies)


def blurs_behind(turn: Turn) -> bool:
    """'how soft is a tree 10 m behind her' after what is sharp at 3 m: how far it is blurred."""
    return turn.was == DEPTH_OF_FIELD and turn.before.distance_mm is not None and is_behind(turn.heard)
