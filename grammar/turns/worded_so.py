"""What a fragment asks by a few words of its own, that evidence and wording together would read otherwise."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import Question
from grammar.turns.lit_again import SETTINGS
from grammar.turns.turn_seen import Turn
from grammar.words.groups import MADE_SURE

_SEATED: Final = frozenset([SHIM_CALIBRATION, FOCUS_VERDICT, IDENTIFY_MOUNT])
_NAMING: Final = frozenset([DEFINITION, LOOK_ALIKE, IDENTIFY_MOUNT])
_PLAIN: Final = 4.0  # evidence from this weight up asks so much by itself
_NO_REASON: Final = 1.0  # and so little speaks for no reason
_OF_ITSELF: Final = "own"  # what 'mine is' measures
_RING: Final = "adapter"
_OF_RING: Final = _SEATED | {CHAIN, DIY_DIMENSION, BUY_PLAN, WHY}  # here the ring is spoken of already
_FILTER: Final = "filter"
_IF: Final = "if"
_FRAMED: Final = frozenset([COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, MACRO_DISTANCE])
_BORE: Final = "bore"  # the measure of a hole


def asks_of_infinity(turn: Turn) -> bool:
    """'does infinity come', with no mark told: whether the lens on that body reaches it."""
    told = turn.heard.readings.values or turn.heard.readings.distance_mm is not None or turn.tells("where", "why")
    pair = any(one.ids for one in turn.before.lenses) and bool(turn.before.bodies)
    return pair and turn.was not in _SEATED and turn.tells("infinity-at") and not (told or turn.names_things)


def asks_if_it_is(turn: Turn) -> bool:
    """'how do i see if mine is one' after what a mount is: how a lens is told to be of it."""
    tokens = turn.heard.line.tokens
    sure = any(MADE_SURE in one.groups for one in tokens) and turn.tells("how")
    own = any(one.kind == "MEASURE" and one.value == _OF_ITSELF for one in tokens)
    return turn.was in _NAMING and sure and own and not turn.names_things


def forces_it_in(turn: Turn) -> bool:
    """'if i force it in m42?' after what a mount is: whether the one goes into the other, and what comes of it."""
    cast = turn.heard.cast
    into = len(cast.lenses) == 1 and turn.tells("mount-only") and not (cast.bodies or cast.pieces)
    return turn.was in _NAMING and turn.best == HAZARD and turn.tells("force") and into


def sets_mounts_apart(turn: Turn) -> bool:
    """'longer than K?' after the register of one mount: what the two differ by."""
    cast = turn.heard.cast
    named = len(cast.lenses) + len(cast.bodies) == 1 and not cast.pieces
    return turn.was == DEFINITION and named and turn.tells("comparative") and turn.best in (None, DEFINITION)


def asks_what_it_costs(heard: Heard, before: Question) -> bool:
    """'what do they go for' after a piece that was told: the price of that, and no lens is valued."""
    piece = any(one.piece is not None for one in before.adapters) or before.intent == BUY_PLAN
    pair = any(one.ids for one in before.lenses) and any(one.ids for one in before.bodies)
    piece = piece or (pair and heard.tells("paying"))  # of the ring of a pair, which is what has a price here
    named = heard.cast.lenses or heard.cast.bodies
    return piece and heard.tells("valuation") and heard.tells("short") and not named


def asks_for_the_ring(turn: Turn) -> bool:
    """'adapter?', 'the ring then?' after anything else of a lens on a body: which one joins the two, and no word."""
    pieces, cast = turn.heard.cast.pieces, turn.heard.cast
    bare = len(pieces) == 1 and pieces[0].piece == _RING and pieces[0].is_bare
    pair = any(one.ids for one in turn.before.lenses) and any(one.ids for one in turn.before.bodies)
    alone = not (cast.lenses or cast.bodies or cast.frames or turn.heard.readings.values or turn.heard.cues)
    return bare and pair and alone and turn.tells("brief") and turn.was not in _OF_RING


def goes_back_to_light(turn: Turn) -> bool:
    """'ok and with ISO 100 instead', 'filter at f5.6' after something else: the exposure told before, so changed."""
    cast, told = turn.heard.cast, turn.heard.readings.values.keys()
    filters = bool(cast.pieces) and all(part.piece == _FILTER and part.is_bare for part in cast.pieces)
    things = cast.bodies or cast.frames or any(not part.is_stop_alone for part in cast.lenses)
    more = (cast.pieces and not filters) or things or told - SETTINGS
    lit = bool(turn.before.lit) and turn.was != EXPOSURE_ND and not turn.tells("dof", "how-close", "infinity", "equiv")
    return lit and (filters or bool(told & SETTINGS)) and not more


def supposes_a_mode(turn: Turn) -> bool:
    """'if i switch the body to crop' after a view, or what is lit: the same is asked of that mode, and no menu."""
    cast = turn.heard.cast
    framed = bool(cast.frames) and not (cast.lenses or cast.pieces or turn.heard.readings.values)
    supposed = any(one.text.casefold() == _IF for one in turn.heard.line.tokens[:2])
    return turn.was in _FRAMED and turn.best == GEAR_SETTING and framed and supposed


def views_a_frame(turn: Turn) -> bool:
    """'view in APS-C' after an exposure, which no frame changes: what the lens frames like there."""
    cast = turn.heard.cast
    framed = bool(cast.frames) and not (cast.lenses or cast.bodies or cast.pieces or turn.heard.readings.values)
    lens = turn.before.lens is not None and turn.before.lens.focal_length_mm is not None
    return turn.was == EXPOSURE_ND and framed and lens and turn.best == CROP_EQUIVALENT


def asks_the_hole(turn: Turn) -> bool:
    """'hole for f8' after a lens of a told length: how wide the opening of a stop is."""
    tokens = turn.heard.line.tokens
    hole = any(one.kind == "MEASURE" and one.value == _BORE for one in tokens)
    stop = any(one.kind == "FNUM" for one in tokens)
    lens = turn.before.lens is not None and turn.before.lens.focal_length_mm is not None
    return hole and stop and lens and not (turn.heard.cast.bodies or turn.heard.cast.pieces)


def tells_the_camera(turn: Turn) -> bool:
    """'how do i tell my camera its 58mm', 'where do i enter 135 in the camera': what is to be set, and no lens."""
    cast, told = turn.heard.cast, turn.heard.readings.values.keys() - {"numbers", "length"}
    body = bool(cast.bodies) and all(part.is_bare for part in cast.bodies)
    focal = all(not (part.mounts or part.named or part.kinds or part.f_number) for part in cast.lenses)
    asked = turn.tells("setting") and turn.tells("identify", "where", "how", "what", "which")
    return asked and body and focal and not (told or cast.pieces or cast.frames or turn.tells("infinity"))


def plainest(turn: Turn) -> str | None:
    """What its words ask; a reason only where something speaks for one, else what plainly speaks."""
    ranked = turn.heard.weighed.ranked
    if turn.best != WHY or not ranked or turn.heard.weighed.weight(WHY) > _NO_REASON:
        return turn.best
    return ranked[0][0] if ranked[0][1] >= _PLAIN else turn.best
