"""What the lens spoken of is worth: 'what's it worth like that', 'what could I get for it': told of no lens."""

from __future__ import annotations

from typing import Final

from grammar.turns.turn_seen import Turn

_WORTH: Final = "its-worth"


def asks_its_worth(turn: Turn) -> bool:
    """Whether that is asked of what the talk is about, and not what a ring costs."""
    cast = turn.heard.cast
    return bool(turn.heard.places(_WORTH)) and not (cast.pieces or cast.bodies or turn.tells("price-said"))
