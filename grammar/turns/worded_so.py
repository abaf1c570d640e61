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
from grammar.questions import RING, Question
from grammar.things.casting import DRAWN, OPTICAL
from grammar.turns.lit_again import SETTINGS
from grammar.turns.turn_seen import Turn
from grammar.words.groups import DEPTH_SAID, MADE_SURE, PROVING, SIZE_ASKED, VIEWED

_SEEN_THROUGH: Final = frozenset([CHAIN, FOCUS_VERDICT, COVERAGE, CROP_EQUIVALENT])  # glass is spoken of there
_SEATED: Final = frozenset([SHIM_CALIBRATION, FOCUS_VERDICT, IDENTIFY_MOUNT])
_NAMING: Final = frozenset([DEFINITION, LOOK_ALIKE, IDENTIFY_MOUNT])
_PLAIN: Final = 4.0  # evidence from this weight up asks so much by itself
_STRONGLY: Final = 0.9  # wording that leans so far leaves no doubt
_NO_REASON: Final = 1.0  # and so little speaks for no reason
_OF_ITSELF: Final = "own"  # what 'mine is' measures
_OF_RING: Final = _SEATED | {CHAIN, DIY_DIMENSION, BUY_PLAN, WHY}  # here the ring is spoken of already
_OF_SEAT: Final = "quantity:seat_mm"  # the cue of how thick a ring is
_FILTER: Final = "filter"
_CLOSE_UP: Final = "close-up-lens"
_IF: Final = "if"
_PLACED: Final = frozenset([CHAIN, FOCUS_VERDICT, WHY])
# cues that ask nothing beside 'it screws in'
_OF_FIT: Final = frozenset(
    ["sure", "doubt", "why", "fit-q", "ok", "right", "same", "thread-said", "mount-only", "drawn-out", "drawn-shut",
     "can"]
)  # fmt: skip
_FRAMED: Final = frozenset([COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, MACRO_DISTANCE])
_MOON: Final = "moon"
_BORE: Final = "bore"  # the measure of a hole
_FIELD: Final = "field"
_THICKNESS: Final = "thickness"
_PLANES: Final = frozenset(["flange-to-image", "front-glass"])
_TOLD_FAR: Final = frozenset([MACRO_DISTANCE, DEPTH_OF_FIELD, FOCUS_VERDICT, SHIM_CALIBRATION])


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


def doubts_by_fit(turn: Turn) -> bool:
    """'really? it screws in all the way' after a lens that does not focus there: why not, though it fits."""
    named = turn.names_things or turn.heard.readings.values or turn.heard.readings.distance_mm is not None
    pair = any(one.ids for one in turn.before.lenses) and any(one.ids for one in turn.before.bodies)
    idle = all(cue.tells in _OF_FIT for cue in turn.heard.cues)
    return pair and turn.was in _PLACED and turn.tells("fits-so") and idle and not named


def asks_what_proves_it(turn: Turn) -> bool:
    """'how would i tell its really AR', 'what says its exakta' after such a lens: by what its mount is known."""
    cast, lens = turn.heard.cast, turn.before.lens
    parts = (*cast.lenses, *cast.bodies)
    same = lens is not None and len(parts) == 1 and bool(parts[0].mounts) and set(parts[0].mounts[0].ids) & {*lens.ids}
    alone = bool(same) and not (parts[0].focal or cast.pieces or cast.frames or turn.heard.readings.values)
    proof = any(PROVING in one.groups for one in turn.heard.line.tokens)
    return alone and proof and turn.tells("how", "what", "identify") and turn.tells("it-is", "is-it", "could-be")


def turns_a_thread(turn: Turn) -> bool:
    """'quarter turn of the thread enough?' after a shim: by how much that moves the lens, and no danger."""
    told = turn.heard.readings.values.keys() & {"turns", "angle"}
    return turn.was == SHIM_CALIBRATION and bool(told) and not turn.tells("force", "stuck", "wont-go", "damage")


def exposes_for_a_target(turn: Turn) -> bool:
    """'moon at f6.3' after a lens on a body: which shutter that wants."""
    values, cast = turn.heard.readings.values, turn.heard.cast
    stop = turn.heard.readings.f_number is not None or any(part.is_stop_alone for part in cast.lenses)
    alone = not (cast.bodies or cast.pieces or cast.frames or turn.tells("infinity", "dof", "focus"))
    return (
        values.keys() <= {"target", "iso"}
        and values.get("target") == _MOON
        and stop
        and alone
        and turn.was != DEPTH_OF_FIELD
    )


def sets_an_exposure(turn: Turn) -> bool:
    """'sun 1/50 filter' after a danger: a shutter is told, so it is exposed, and nobody looks into the sun."""
    ranked = turn.heard.weighed.ranked
    first = bool(ranked) and ranked[0][0] == EXPOSURE_ND
    return first and turn.best == HAZARD and turn.tells("shutter-said", "iso-said", "frame_rate-said")


def names_a_view(turn: Turn) -> bool:
    """'aps-c view' after anything of a lens of a known length: what it frames like there."""
    cast, lens = turn.heard.cast, turn.before.lens
    framed = len(cast.frames) == 1 and not (cast.lenses or cast.bodies or cast.pieces or turn.heard.readings.values)
    viewed = any(VIEWED in one.groups for one in turn.heard.line.tokens)
    length = lens is not None and lens.focal_length_mm is not None
    return framed and viewed and length and turn.tells("brief") and turn.best in (None, turn.was, CROP_EQUIVALENT)


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
    bare = len(pieces) == 1 and pieces[0].piece == RING and pieces[0].is_bare
    bare = bare or (not pieces and turn.tells(_OF_SEAT))  # 'seat?'
    told = turn.tells("it-is") and [part.focal for part in cast.lenses if part.mounts] == [None]  # 'its an M42, ring?'
    idle = {_OF_SEAT, "ok", "pick:both", *(["it-is"] if told else [])}
    pair = any(one.ids for one in turn.before.bodies) and (told or any(one.ids for one in turn.before.lenses))
    asked = any(cue.tells not in idle for cue in turn.heard.cues)  # 'seat of the adapter'
    alone = not ((cast.lenses and not told) or cast.bodies or cast.frames or turn.heard.readings.values or asked)
    short = turn.tells("short" if told or turn.tells("pick:both") else "brief")
    return bare and pair and alone and short and turn.was not in _OF_RING


def goes_back_to_light(turn: Turn) -> bool:
    """'ok and with ISO 100 instead', 'filter at f5.6' after something else: the exposure told before, so changed."""
    cast, told = turn.heard.cast, turn.heard.readings.values.keys()
    filters = bool(cast.pieces) and all(part.piece == _FILTER and part.is_bare for part in cast.pieces)
    things = cast.bodies or cast.frames or any(not part.is_stop_alone for part in cast.lenses)
    more = (cast.pieces and not filters) or things or told - SETTINGS
    lit = bool(turn.before.lit) and turn.was != EXPOSURE_ND and not turn.tells("dof", "how-close", "infinity", "equiv")
    return lit and (filters or bool(told & SETTINGS)) and not more


def asks_how_large(turn: Turn) -> bool:
    """'and the scale?', 'how big is it then' after what a tube costs in light, or how deep it is sharp: how large."""
    old, cast = turn.before, turn.heard.cast
    close = any(one.piece in (*DRAWN, _CLOSE_UP) for one in old.adapters)
    close = close or old.said("extension") is not None or old.said("image_distance") is not None
    tokens = turn.heard.line.tokens
    scale = any(SIZE_ASKED in one.groups for one in tokens) and not turn.heard.readings.values
    sized = turn.tells("how-big") or scale or (turn.tells("frame-size") and any(one.value == "it" for one in tokens))
    things = cast.bodies or cast.pieces or cast.frames or cast.lenses
    return close and sized and not things and turn.was in (EXPOSURE_ND, DEPTH_OF_FIELD)


def wants_it_lit(turn: Turn) -> bool:
    """'what fixes it' after dark corners: what of the frame is clean, and no ring."""
    return turn.was == COVERAGE and turn.tells("remedy") and not turn.names_things and turn.best in (None, CHAIN)


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
    by_hand = turn.before.topic is not None  # the slowest shutter goes by the frame
    return turn.was == EXPOSURE_ND and framed and lens and turn.best == CROP_EQUIVALENT and not by_hand


def asks_the_hole(turn: Turn) -> bool:
    """'hole for f8' after a lens of a told length: how wide the opening of a stop is."""
    tokens = turn.heard.line.tokens
    hole = any(one.kind == "MEASURE" and one.value == _BORE for one in tokens)
    stop = any(one.kind == "FNUM" for one in tokens)
    lens = turn.before.lens is not None and turn.before.lens.focal_length_mm is not None
    lens = lens or any(part.focal for part in turn.heard.cast.lenses)
    return hole and stop and lens and not (turn.heard.cast.bodies or turn.heard.cast.pieces)


def asks_from_where(turn: Turn) -> bool:
    """'from the sensor or the glass?' after distances: they are told again, with the plane that they count from."""
    ends = [one for one in turn.heard.line.tokens if one.kind == "MEASURE" and one.value in _PLANES]
    asked = turn.tells("counts-from") or len(ends) > 1
    far = turn.heard.readings.distance_mm in (None, turn.before.distance_mm)
    more = turn.heard.cast.bodies or turn.heard.cast.pieces or turn.heard.readings.values or not far
    return turn.was in _TOLD_FAR and asked and not more


def asks_depth_at_tubes(turn: Turn) -> bool:
    """'with 10 of tube how deep': how much is sharp so close, and nothing that is to be made."""
    deep = any(DEPTH_SAID in one.groups for one in turn.heard.line.tokens)
    drawn = any(part.piece in DRAWN and part.thickness for part in turn.heard.cast.pieces)
    drawn = drawn or "extension" in turn.heard.readings.values
    lens = turn.before.lens is not None and turn.before.lens.focal_length_mm is not None
    return deep and drawn and lens and turn.best in (None, DIY_DIMENSION, DEPTH_OF_FIELD, MACRO_DISTANCE)


def asks_what_mount(turn: Turn) -> bool:
    """'what is an altix mount like' after a lens on a body: what that mount is, and no view."""
    named = any(one.kind == "MOUNT" and one.text.casefold().endswith(" mount") for one in turn.heard.line.tokens)
    cast = turn.heard.cast
    more = cast.frames or cast.pieces or turn.heard.readings.values or len(cast.lenses) + len(cast.bodies) != 1
    asked = turn.tells("what-is") and not turn.tells("looks-like", "equiv", "same", "could-be")
    return named and asked and not more


def asks_stop_behind_glass(turn: Turn) -> bool:
    """'f number then' after the stabiliser's number with a 2x, 'effective stop?' after a way through it."""
    cast, put = turn.heard.cast, [part.piece in OPTICAL for part in turn.heard.cast.pieces]
    glass = any(one.piece in OPTICAL for one in turn.before.adapters) or bool(
        put
    )  # 'with a 2x behind it what aperture'
    named = bool(cast.lenses or cast.bodies or cast.frames) or not all(put)
    told = named or turn.heard.readings.values or turn.heard.readings.f_number is not None
    asked = turn.was == GEAR_SETTING and turn.tells("f-stop", "which-stop") and turn.tells("short")
    asked = asked or (turn.was in _SEEN_THROUGH and turn.tells("effective-f"))
    drawn = any(one.piece in DRAWN for one in turn.before.adapters)  # close up light is lost by extension as well
    return asked and glass and not (told or drawn)


def asks_field_at(turn: Turn) -> bool:
    """'field at 1 m' after a lens: how wide it sees there."""
    field = any(one.kind == "MEASURE" and one.value == _FIELD for one in turn.heard.line.tokens)
    lens = turn.before.lens is not None and turn.before.lens.focal_length_mm is not None
    far = turn.heard.readings.distance_mm is not None and not turn.heard.readings.values
    return field and lens and far and turn.tells("short") and not turn.tells("dof") and not turn.names_things


def takes_another_mount(turn: Turn) -> bool:
    """'will an RE lens do as well' after a depth or a filter, of which the mount changes nothing: its way there."""
    cast, parts = turn.heard.cast, turn.heard.cast.lenses
    alone = len(parts) == 1 and len(parts[0].mounts) == 1 and not (parts[0].focal or parts[0].f_number)
    told = cast.bodies or cast.pieces or cast.frames or cast.lengths or turn.heard.readings.values
    of_talk = turn.found is not None and turn.best != CHAIN  # 'can the exakta one go close'
    asked = turn.tells("will", "can") and turn.best not in (EXPOSURE_ND, DEPTH_OF_FIELD, WHY) and not of_talk
    return turn.was in (EXPOSURE_ND, DEPTH_OF_FIELD) and alone and asked and bool(turn.before.bodies) and not told


def mends_its_error(turn: Turn) -> bool:
    """'0.2 too thin, what do i do' in one breath: what is to be put under the ring, or taken off it."""
    cast, told = turn.heard.cast, turn.heard.readings.values.keys()
    named = cast.lenses or cast.bodies or any(not part.is_bare for part in cast.pieces)
    pair = any(one.ids for one in turn.before.lenses) and bool(turn.before.bodies)
    return pair and turn.tells("remedy") and told == {_THICKNESS} and turn.tells("too-thin", "too-thick") and not named


def plainest(turn: Turn) -> str | None:
    """What its words ask; a reason only where something speaks for one, else what plainly speaks.

    Wording that leans to what was asked before, where nothing told speaks for that, yields to what plainly speaks.
    """
    ranked = turn.heard.weighed.ranked
    read = turn.heard.readings
    told = read.values or read.distance_mm is not None or read.f_number is not None or turn.heard.cast.pieces
    idle = turn.best == turn.was and turn.heard.weighed.weight(turn.was) <= 0 and not told
    if idle and turn.heard.weighed.likely.get(turn.was, 0.0) < _STRONGLY and ranked and ranked[0][1] >= _PLAIN:
        return ranked[0][0]
    if turn.best != WHY or not ranked or turn.heard.weighed.weight(WHY) > _NO_REASON:
        return turn.best
    return ranked[0][0] if ranked[0][1] >= _PLAIN else turn.best
