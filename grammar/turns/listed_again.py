"""A fragment after a list of what fits: another body or lens to list for, or what the list must keep to."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.intents import Weighed
from grammar.kinds import LIST_FITS
from grammar.questions import Question
from grammar.things.casting import Part
from grammar.turns.one_of_two import is_likened

_IDLE: Final = frozenset(
    ["ok", "right", "will", "what-if", "what", "instead", "again", "same", "can", "how", "it-is", "adding"]
)
_KEPT_TO: Final = _IDLE | {"which", "reach", "infinity", "buy", "cheap", "rank:cheapest", "price", "get"}
_AT: Final = frozenset(["infinity"])


def listed_again(heard: Heard, before: Question) -> Heard:
    """The line as one that asks for the list anew; the same where it names the other side, or asks for more."""
    if before.intent != LIST_FITS or bool(before.lenses) == bool(before.bodies) or is_likened(heard, before):
        return heard
    cast, readings = heard.cast, heard.readings
    more = cast.pieces or cast.frames or cast.without or cast.using or readings.values or readings.f_number
    named = [part for part in (*cast.lenses, *cast.bodies) if not part.is_bare]
    if more or len(named) > 1:
        return heard
    if not named:
        return replace(_plain(heard), readings=replace(readings, number=None)) if _is_kept_to(heard) else heard
    part, idle = named[0], all(cue.tells in _IDLE for cue in heard.cues)
    alone = len(part.mounts) == 1 and not (part.focal or part.f_number or part.kinds or part.named)
    if not (alone and idle) or readings.limits:
        return heard
    sided = _on_side(heard, part, bool(before.bodies))
    return _plain(sided) if sided is not None else heard


def _on_side(heard: Heard, part: Part, of_bodies: bool) -> Heard | None:
    """The line with that mount on the side that the list is for; None where it is plainly of the other side."""
    is_body = part in heard.cast.bodies
    if of_bodies and not (is_body or (part.is_host and part.noun.heads != "LENS")):
        return None
    if not of_bodies and is_body:
        return None
    side = [replace(part, sort="body" if of_bodies else "lens")]
    return replace(heard, cast=replace(heard.cast, bodies=side if of_bodies else [], lenses=[] if of_bodies else side))


def _is_kept_to(heard: Heard) -> bool:
    """'under 20 dollars', 'and which reach infinity': what is listed keeps to that."""
    told = bool(heard.readings.limits) or (heard.tells("which") and any(heard.tells(cue) for cue in _AT))
    return told and all(cue.tells in _KEPT_TO for cue in heard.cues)


def _plain(heard: Heard) -> Heard:
    return replace(heard, weighed=Weighed((), {LIST_FITS: ()}, {LIST_FITS: 1.0}))
