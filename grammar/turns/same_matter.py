"""What a fragment goes on with by what it names of before: a plan by a hub, one of two compared, a piece off or on."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    BY_SEAT,
    COMPARE,
    COVERAGE,
    CROP_EQUIVALENT,
    DEPTH_OF_FIELD,
    EXPOSURE_ND,
    HAZARD,
    IDENTIFY_MOUNT,
    MACRO_DISTANCE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import OFF, Question
from grammar.turns.number_roles import ON_AGAIN
from grammar.turns.taking_back import OFF_AGAIN
from grammar.words.groups import MADE_SURE

_PICKED: Final = "pick:"  # cues of which of several is meant
_MEASURED: Final = frozenset(["flange_to_image", "throat", "pitch", "thread"])  # what a mount is known by
_CHECKED: Final = frozenset(
    [HAZARD, COVERAGE, SHIM_CALIBRATION, DEPTH_OF_FIELD, MACRO_DISTANCE, CROP_EQUIVALENT, EXPOSURE_ND]
)
_ELSE: Final = ("pick:", "rank:")  # how cues begin that point at another lens, or set ways apart
_LEANING: Final = 0.3  # how likely by wording alone
_OF_ELSE: Final = frozenset(
    ["which", "buy", "price", "why", "infinity", "how-far", "how-close", "how-many", "take-off"]
)
_TAKEN: Final = "take-off"
# idle where a piece is taken off or put on
_MOVED: Final = frozenset(
    ["off-again", "on-again", "stuck", "takes", "get", "put-in", "what-if", "ok", "what", "again"]
)


def same_matter(heard: Heard, before: Question, aside: frozenset[str]) -> str | None:
    """The intent that such a fragment has; None where it is none. `aside`: of what is only told by the way."""
    best, things = heard.weighed.best, (*heard.cast.lenses, *heard.cast.bodies, *heard.cast.pieces, *heard.cast.frames)
    if _is_off_or_on(heard, before) and before.intent not in aside:
        return before.intent
    if _is_one_of_ways(heard, before):
        return COMPARE
    if before.intent == BUY_PLAN and _is_by_hub(heard) and best not in (COMPARE, COVERAGE):
        return BUY_PLAN
    asked = any(not cue.tells.startswith(_PICKED) for cue in heard.cues)
    if before.intent == IDENTIFY_MOUNT and not (before.bodies or things or asked):
        # 'flange measures 45.5', '10 mm over ten of them'
        return IDENTIFY_MOUNT if heard.readings.values.keys() & _MEASURED else None
    return None


def makes_sure(heard: Heard, before: Question) -> bool:
    """'how do i check that', 'how would i measure it' after a danger, or what a lens lights: it is asked of that."""
    cast, asked = heard.cast, any(heard.tells(cue) for cue in ("how", "identify", "measure-how"))
    sure = asked and any(MADE_SURE in token.groups for token in heard.line.tokens) and heard.tells("short")
    told = cast.lenses or cast.bodies or cast.pieces or cast.frames or heard.readings.values
    if heard.weighed.best == HAZARD and before.intent != HAZARD and heard.tells("radioactive"):
        return False  # 'how do i know if its radioactive' after how close it comes
    mount = any(token.kind == "MOUNTWORD" for token in heard.line.tokens)  # 'how can i tell which mount it has'
    return before.intent in _CHECKED and sure and not (told or mount or heard.tells("which") or heard.tells("thing"))


def goes_on_beside(heard: Heard, before: Question) -> str | None:
    """'how do i know', 'what could that be', 'how would i check that before' after a danger, or what something comes
    from, that was asked about by the way: the same is asked of that, and nothing of before it. None where it is not."""
    cast, read = heard.cast, heard.readings
    told = cast.lenses or cast.bodies or cast.pieces or cast.frames or read.values or read.distance_mm is not None
    other = read.number is not None or any(cue.tells.startswith(_ELSE) or cue.tells in _OF_ELSE for cue in heard.cues)
    nothing = heard.tells("of-nothing")
    mount = any(token.kind == "MOUNTWORD" for token in heard.line.tokens)
    if told or other or mount or heard.tells("thing"):
        return None
    if HAZARD in (before.intent, before.beside):
        checked = heard.tells("short") and heard.tells("check-it")
        return HAZARD if nothing or checked or _leans_to_harm(heard) else None
    reason = before.beside_text and before.beside in ("", WHY)
    mended = heard.tells("remedy") and before.beside != WHY  # of what the seat makes it, the ring is asked for
    return WHY if reason and nothing and not mended else None


def with_aside_asked(heard: Heard, followed: Question, before: Question) -> Question:
    """The question with the words that were asked by the way, where it goes on with those."""
    if goes_on_beside(heard, before) != followed.intent:
        return followed
    return followed.with_(asked=before.beside_text or before.text, topic=None)


def _leans_to_harm(heard: Heard) -> bool:
    """'can i push it in' after a lens that collapses: nothing speaks for another kind, and wording leans to harm."""
    return heard.tells("short") and not heard.weighed.ranked and heard.weighed.likely.get(HAZARD, 0.0) >= _LEANING


def laps_it_off(heard: Heard, before: Question) -> bool:
    """'how do i take that off evenly' after a ring that is too thick: no piece goes, but so much of it."""
    thick = before.said("thickness") is not None and (before.off_word or before.said(OFF)) is not None
    cast = heard.cast
    told = cast.lenses or cast.bodies or cast.pieces or heard.readings.values
    return thick and heard.tells("how") and (heard.tells(OFF_AGAIN) or heard.tells(_TAKEN)) and not told


def is_one_compared(heard: Heard, before: Question) -> bool:
    """'so the OM, how' after two lenses: the one of them, and how it is put on."""
    named = [part for part in heard.cast.lenses if part.mounts]
    others = heard.cast.bodies or heard.cast.pieces or heard.cast.frames
    ids = {id_ for lens in before.lenses for id_ in lens.ids}
    of_them = len(named) == 1 and not others and bool(ids & set(named[0].mounts[0].ids))
    return before.intent == COMPARE and of_them and heard.tells("how")


def _is_off_or_on(heard: Heard, before: Question) -> bool:
    """'take it off', 'put it back': the same is asked without the piece, or with it again."""
    prior = before.prior.adapters if before.prior is not None else ()
    moved = (heard.tells(OFF_AGAIN) and before.adapters) or (heard.tells(ON_AGAIN) and prior)
    return bool(moved) and all(cue.tells in _MOVED for cue in heard.cues)


def _is_one_of_ways(heard: Heard, before: Question) -> bool:
    """'first or second', 'which of the two' after the ways of one lens: what sets them apart."""
    numbered = heard.readings.number is not None and "and_number" in heard.readings.values
    either = any(token.kind == "JOIN" and token.value == "or" for token in heard.line.tokens)
    chosen = heard.tells("which") or heard.tells("list-all")
    among = chosen and (heard.tells("pick:all") or heard.tells("pick:both")) and heard.tells("brief")
    cast = heard.cast
    others = cast.lenses or cast.bodies or cast.pieces or cast.frames or heard.weighed.best == COVERAGE
    return before.intent in BY_SEAT and len(before.lenses) == 1 and not others and ((numbered and either) or among)


def _is_by_hub(heard: Heard) -> bool:
    """'and if I use a hub' in a plan: how many rings that makes, and no word that is to be told."""
    pieces = heard.cast.pieces
    hub = bool(pieces) and all(piece.piece == "hub" for piece in pieces)
    return hub and not (heard.tells("what-is") or heard.tells("downside") or heard.tells("means"))
