"""What a follow-up asks of the picture and its light, by a word of it and by what was asked before."""

from __future__ import annotations

from grammar.kinds import BUY_PLAN, CHAIN, DEPTH_OF_FIELD, EXPOSURE_ND, HAZARD, PICTURED
from grammar.turns.set_behind import is_behind
from grammar.turns.turn_seen import Turn


def drops_the_filter(turn: Turn) -> bool:
    """'without the nd then', 'i forgot the filter' after which filter: the same light, taken up some other way."""
    cast = turn.heard.cast
    return turn.was == EXPOSURE_ND and turn.tells("no-filter") and not (cast.lenses or cast.bodies)


def blurs_behind(turn: Turn) -> bool:
    """'how soft is a tree 10 m behind her' after what is sharp at 3 m: how far it is blurred."""
    return turn.was == DEPTH_OF_FIELD and turn.before.distance_mm is not None and is_behind(turn.heard)


def stacks_them(turn: Turn) -> bool:
    """'can i stack them' after step rings for fronts: it is asked of those."""
    fronts = turn.was == BUY_PLAN and turn.before.said("filter_thread") is not None
    stacked = any(one.text.casefold().startswith("stack") for one in turn.heard.line.tokens)
    return fronts and stacked and turn.best in (None, CHAIN, HAZARD, BUY_PLAN) and not turn.heard.cast.lenses


def asks_of_a_hood(turn: Turn) -> bool:
    """'hood?' after what is lit or exposed: how long one may be."""
    cast = turn.heard.cast
    asked = turn.tells("hood") and turn.tells("short") and not (cast.lenses or cast.bodies or cast.pieces)
    return asked and turn.was in PICTURED | {EXPOSURE_ND} and not turn.tells("vignette", "cover", "buy", "need-it")
