"""What may be seen in a follow-up of a ring: how long it is, by how much it, or the seat, is off."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COMPARE,
    DIY_DIMENSION,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LIST_FITS,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    OF_PICTURE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import OFF
from grammar.turns.going_on import OF_RING, asks, is_by_tubes, sized
from grammar.turns.turn_seen import Turn
from grammar.words.groups import AS_DUE, SO_LONG

_TAKEN: Final = "take-off"  # the cue of filing, grinding and lapping
_ON, _IT = frozenset(["on", "with"]), frozenset(["it", "that", "this"])
_HOW: Final = "how"  # 'how much', 'how far'
_OF_DOING: Final = frozenset([HAZARD, GEAR_SETTING])
_OF_LENGTH: Final = OF_RING | {WHY, HAZARD, BUY_PLAN, COMPARE, IDENTIFY_MOUNT, LOOK_ALIKE, LIST_FITS}
_SEATING: Final = frozenset(["adapter", "recessed"])  # what stands between lens and body
_MINE: Final = frozenset(["my", "the", "that", "this"])
_NOMINAL: Final = frozenset(["nominal", "nominal-behind"])  # measures of what should be
_RING_SPOKEN_OF: Final = OF_RING | OF_PICTURE | {MACRO_DISTANCE, WHY}  # where the ring that was measured is there still
_UNSEATED: Final = OF_PICTURE | {HAZARD, BUY_PLAN, MACRO_DISTANCE, COMPARE, LIST_FITS}


def wants_the_right_length(turn: Turn) -> bool:
    """'what length would be right', 'the proper depth of that cup' after a lens on a body: how long its ring is."""
    tokens, before = turn.heard.line.tokens, turn.before
    due = any(AS_DUE in one.groups or one.value in _NOMINAL for one in tokens) or turn.tells("right")
    long = any(SO_LONG in one.groups for one in tokens)
    cast, told = turn.heard.cast, turn.heard.readings
    pair = any(one.ids for one in before.lenses) and any(one.ids for one in before.bodies)
    there = len(cast.pieces) == 1 and any(one.ids for one in before.lenses) and not before.bodies
    if there and turn.tells("short"):
        due = pair = bool(cast.pieces[0].mounts or cast.bodies)  # 'MFT adapter depth' after what a lens is
    named = not there and (cast.lenses or cast.bodies)
    others = named or cast.frames or any(one.piece not in _SEATING for one in cast.pieces)
    more = told.values or told.distance_mm is not None or told.f_number is not None
    else_asked = turn.tells("shim", "foil", "layer", "take-off", "how-close", "macro", "stock", "why", "will-do")
    return pair and due and long and turn.was in _OF_LENGTH and not (others or more or else_asked)


def asks_if_it_changes(turn: Turn) -> bool:
    """'does the ring change' after another body, whatever was asked of the lens there: the ring for that one."""
    pair = any(one.ids for one in turn.before.lenses) and any(one.ids for one in turn.before.bodies)
    named = turn.heard.cast.lenses or turn.heard.cast.bodies or turn.heard.readings.values
    return pair and turn.tells("ring-changes") and turn.tells("short") and not named


def asks_how_long(turn: Turn) -> bool:
    """'and if i skip it how thick is the bare ring' after what a reducer does: the ring that is without it."""
    tokens, cast, told = turn.heard.line.tokens, turn.heard.cast, turn.heard.readings
    pair = any(one.ids for one in turn.before.lenses) and any(one.ids for one in turn.before.bodies)
    long = any(one.text.casefold() == _HOW and SO_LONG in other.groups for one, other in pairwise(tokens))
    ring = len(cast.pieces) == 1 and cast.pieces[0].piece == "adapter" and not cast.pieces[0].thickness
    more = cast.lenses or cast.bodies or cast.frames or told.values or told.distance_mm is not None
    return pair and long and ring and turn.tells("what-if", "left-so", "plain-piece") and not more


def harms_another_lens(turn: Turn) -> bool:
    """'does that hurt a 100 as well' after how thick a shim: by how much the same seat is off for that lens."""
    lenses = [part for part in turn.heard.cast.lenses if part.focal]
    asked = turn.tells("harm-word", "left-so", "damage") and len(lenses) == 1
    return turn.was == SHIM_CALIBRATION and asked and not turn.heard.cast.bodies


def goes_by_rings(turn: Turn) -> bool:
    """'what if I go D to C and then C to Q' after what the picture is like: what those rings make of the seat."""
    rings = [part for part in turn.heard.cast.pieces if part.piece == "adapter" and len(part.mounts) > 1]
    asks = turn.tells("cover", "vignette", "equiv", "exposure", "nd", "dof", "image-circle")
    return turn.was in OF_PICTURE and len(rings) > 1 and rings == turn.heard.cast.pieces and not asks


def wants_foil(turn: Turn) -> bool:
    """'how thick a foil for that' after a ring that is off: what goes under it, and nothing that is to be cut."""
    wanted = turn.tells("foil") or (turn.tells("spacer") and turn.tells("remedy"))  # 'thickness of washer to fix'
    return wanted and sized(turn.before) and turn.was in OF_RING and turn.best == DIY_DIMENSION


def takes_off_a_measured_ring(turn: Turn) -> bool:
    """'so I take how much off' after a ring that was measured."""
    cut = (
        turn.tells("cut") and turn.tells("what", "which", "how-much") and turn.best in (None, DIY_DIMENSION)
    )  # 'what do i file'
    cut = (cut or (turn.tells(_TAKEN) and turn.tells("what"))) and not turn.names_things
    asked = cut or (turn.best == DIY_DIMENSION and turn.tells("how-much"))
    words = {one.text.casefold() for one in turn.heard.line.tokens}
    amount = (_HOW in words or {"what", "by"} <= words) and turn.best not in _OF_DOING  # 'what do i thin it by'
    asked = asked or (turn.tells(_TAKEN) and amount and _names_a_ring_at_most(turn))
    known = sized(turn.before) or (turn.was == SHIM_CALIBRATION and turn.before.distance_mm is not None)
    return asked and known and turn.was in _RING_SPOKEN_OF


def _names_a_ring_at_most(turn: Turn) -> bool:
    """'if I grind the ring down, how much off': the one that was measured, and nothing else."""
    cast = turn.heard.cast
    return not (cast.lenses or cast.bodies or cast.frames) and all(part.is_bare for part in cast.pieces)


def goes_by_tubes(turn: Turn) -> bool:
    return turn.best == SHIM_CALIBRATION and is_by_tubes(turn.heard, turn.before)


def measures_the_ring(turn: Turn) -> bool:
    """'the ring is 0.45 actually', 'what if the ring is 0.1 too thick' after what the picture is like."""
    rings = [part for part in turn.heard.cast.pieces if part.piece == "adapter"]
    measured = any(part.thickness for part in rings)
    told = turn.heard.readings.values.get("thickness") is not None
    off = (rings and told and turn.best == FOCUS_VERDICT) or tells_an_error(turn)
    return bool((turn.best is None and measured) or off) and turn.was in OF_PICTURE


def tells_an_error(turn: Turn) -> bool:
    """'say it sits 0.2 too high', 'half a mm too much under it' after anything but a seat: what it then still does."""
    told = turn.heard.readings.values.get("thickness") is not None and turn.was in _UNSEATED
    said = any(one.kind == "MEASURE" and one.value == "thickness" for one in turn.heard.line.tokens)
    pair = any(one.ids for one in turn.before.lenses) and bool(turn.before.bodies)
    asked = asks(turn.heard) or bool(turn.heard.readings.values.keys() - {"thickness"})
    return told and said and pair and not asked


def is_told_in_turns(turn: Turn) -> bool:
    """'in turns?' after a ring that is off: by how many of its thread's the lens is."""
    idle = not turn.names_things and not turn.heard.readings.values
    old, lens = turn.before, turn.before.lens
    ends = old.intent == FOCUS_VERDICT and old.distance_mm is not None  # 'stops at 3 m' tells by how much
    ends = ends and lens is not None and lens.focal_length_mm is not None
    off = ends or sized(old) or old.said(OFF) is not None
    turned = turn.tells("turns-q") and turn.tells("short") and idle and turn.was in OF_RING and off
    return turned or _asks_how_thick_it_is(turn)


def _asks_how_thick_it_is(turn: Turn) -> bool:
    """'so how thick is my ring in truth' after where on the scale infinity falls: that and the error tell."""
    tokens, cast, before = turn.heard.line.tokens, turn.heard.cast, turn.before
    pair = any(one.ids for one in before.lenses) and any(one.ids for one in before.bodies)
    long = any(SO_LONG in one.groups for one in tokens) or turn.tells("dimensions")
    ring = len(cast.pieces) == 1 and cast.pieces[0].piece in _SEATING and not cast.pieces[0].mounts
    more = cast.lenses or cast.bodies or cast.frames or turn.heard.readings.values
    mine = any(one.kind == "DET" and one.text.casefold() in _MINE for one in tokens)
    made = turn.tells("will-do", "make-it", "get") or any(one.value in _NOMINAL for one in tokens)
    marked = turn.was == SHIM_CALIBRATION and before.said("mark") is not None
    return marked and pair and long and ring and mine and not (more or made)


def asks_how_far(turn: Turn) -> bool:
    """'sharp up to?', 'ends where' after a ring that is off: how far the lens then still comes."""
    lens = turn.before.lens is not None and turn.before.lens.focal_length_mm is not None
    told = turn.names_things or turn.heard.readings.values or turn.heard.readings.distance_mm is not None
    return turn.tells("how-far") and turn.was in OF_RING and sized(turn.before) and lens and not told


def tries_a_lens_on_it(turn: Turn) -> bool:
    """'where on a 50', 'and a 28?' after a ring to be made came out so long: what that ring makes of the lens."""
    cast, told = turn.heard.cast, turn.heard.readings
    lens = cast.lenses[0] if len(cast.lenses) == 1 else None
    alone = lens is not None and bool(lens.focal) and not (lens.has_mount or cast.bodies or cast.frames or cast.pieces)
    asked = turn.best in (None, DIY_DIMENSION, CHAIN, MACRO_DISTANCE, FOCUS_VERDICT)
    there = turn.was == DIY_DIMENSION or _is_put_on_it(turn)
    return alone and asked and there and sized(turn.before) and not told.values


def _is_put_on_it(turn: Turn) -> bool:
    """'and until then, my 20 mm on it?' after what is to come off that ring: what it makes of that lens as it is."""
    words = [one.text.casefold() for one in turn.heard.line.tokens]
    placed = any(one in _ON and two in _IT for one, two in pairwise(words))
    return turn.was == SHIM_CALIBRATION and placed and any(one.ids for one in turn.before.bodies)


def tells_its_ring(turn: Turn) -> bool:
    """'24.6 is what i turned' after which ring is right: whether it does so, and not how near it comes.

    So is 'i have a Z ring too, 27.5' told after the shim of the ring on E.
    """
    pieces, weighed = turn.heard.cast.pieces, turn.heard.weighed
    if turn.was == SHIM_CALIBRATION and _is_for_another_body(turn):
        return True
    told = len(pieces) == 1 and pieces[0].piece == "adapter" and bool(pieces[0].thickness)
    return turn.was in OF_RING and told and turn.best == MACRO_DISTANCE and weighed.weight(MACRO_DISTANCE) <= 0


def _is_for_another_body(turn: Turn) -> bool:
    """Whether a ring of a told length is for another body than that of before."""
    cast, told = turn.heard.cast, turn.heard.readings.values.keys() & {"numbers", "length", "thickness"}
    here = {id_ for body in turn.before.bodies for id_ in body.ids}
    there = {id_ for part in cast.bodies for mount in part.mounts for id_ in mount.ids}
    ring = len(cast.pieces) == 1 and cast.pieces[0].piece in _SEATING
    sized_now = ring and (bool(told) or bool(cast.pieces[0].thickness))
    return sized_now and bool(here and there) and not here & there
