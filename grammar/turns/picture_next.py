"""What a follow-up asks of the picture and its light, by a word of it and by what was asked before."""

from __future__ import annotations

from grammar.kinds import EXPOSURE_ND
from grammar.turns.turn_seen import Turn


def drops_the_filter(turn: Turn) -> bool:
    """'without the nd then', 'i forgot the filter' after which filter: the same light, taken up some other way."""
    cast = turn.heard.cast
    return turn.was == EXPOSURE_ND and turn.tells("no-filter") and not (cast.lenses or cast.bodies)
