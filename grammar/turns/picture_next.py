"""What a follow-up asks of the picture and its light, by a word of it and by what was asked before."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COMPARE,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    DRAW,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    LIST_FITS,
    MACRO_DISTANCE,
    OUT_OF_SCOPE,
    PICTURED,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.things.casting import DRAWN
from grammar.turns import odd_glass
from grammar.turns.body_picked import views_two_bodies
from grammar.turns.on_what import FULL, is_never_full
from grammar.turns.set_behind import is_behind
from grammar.turns.turn_seen import Turn
from grammar.words.groups import STACKED

_DOWN: Final = "stops-down"
_OF_ELSE: Final = ("infinity", "dof", "nd", "exposure", "shutter-said", "sharp", "diffraction", "how-close", "equiv")
# what small creatures and things may seem to ask, where only whether they can be photographed is asked
_NO_MATTER: Final = frozenset([None, CHAIN, FOCUS_VERDICT, BUY_PLAN, DRAW, LIST_FITS, GEAR_SETTING])
_ASKS_HOW: Final = frozenset(["how", "can", "will", "what", "get"])
_SEEN_ON: Final = frozenset([CHAIN, FOCUS_VERDICT, DIY_DIMENSION, BUY_PLAN, MACRO_DISTANCE])
_FULL_SUN: Final = "full-sun"
HARM_SAID: Final = "harm-word"
_DARK: Final = frozenset(["black", "vignette", "disc"])


def tells_another_body(turn: Turn) -> bool:
    """'the other cam is apsc E', 'other cam mft': a body with its mount, and no list of others is asked for."""
    cast, told = turn.heard.cast, turn.heard.readings
    mounted = [part for part in cast.bodies if part.mounts]
    more = cast.lenses or cast.pieces or told.values or told.f_number or told.distance_mm or told.limits
    lens = bool(turn.before.lenses) and bool(turn.before.bodies)
    return lens and turn.tells("other-bodies") and len(mounted) == 1 and not more and not turn.was_aside


def ranks_depths(turn: Turn) -> bool:
    """'which of the three has the most in focus' after several depths of field: those are put in an order."""
    prior, told = turn.before.prior, turn.heard.readings
    several = turn.was == DEPTH_OF_FIELD and turn.before.follows and prior is not None and prior.intent == turn.was
    more = turn.names_things or told.values or told.f_number or told.distance_mm
    return several and turn.tells("deepest-of") and not more


def sets_views_apart(turn: Turn) -> bool:
    """'on which of the two is it longer' after one lens on two bodies, one after the other: its view on both."""
    return views_two_bodies(turn.heard, turn.before)


def asks_the_stop_close(turn: Turn) -> bool:
    """'what aperture is that really' behind tubes: the f-number that counts there."""
    drawn = any(one.piece in DRAWN for one in turn.before.adapters) or turn.before.said("magnification") is not None
    told = turn.names_things or turn.heard.readings.values or turn.heard.readings.f_number is not None
    return drawn and turn.tells("effective-f") and not told


def asks_of_the_iris(turn: Turn) -> bool:
    """'does the iris still turn', 'who sets the aperture' after what a lens frames like on a body: who works it."""
    told, cast = turn.heard.readings, turn.heard.cast
    pair = any(one.ids for one in turn.before.lenses) and any(one.ids for one in turn.before.bodies)
    more = cast.lenses or cast.bodies or cast.pieces or told.values or told.f_number or told.distance_mm
    asked = turn.tells("iris-asked") or (turn.tells("iris") and turn.tells(*_ASKS_HOW))
    asked = asked and odd_glass.stop_topic(turn.heard, turn.before) is None  # an objective has none, whatever it is on
    other = turn.tells(
        "why", "why-not", "idle", "any-trick", "stuck", "cannot", "which-stop", "cover", "vignette", "dof", "hole-q"
    )  # fmt: skip
    other = other or (turn.was == FOCUS_VERDICT and turn.tells(_DOWN))  # whether a smaller stop forgives the seat
    idle = turn.best in _NO_MATTER | {CROP_EQUIVALENT, WHY, DEFINITION, turn.was}
    return pair and asked and idle and not (more or other)


def asks_what_a_size_is(turn: Turn) -> bool:
    """'whats 1:4', 'what does 0.4x mean' after what a tube gives: what so large is, and no lens drawn out so far."""
    told, cast = turn.heard.readings, turn.heard.cast
    others = cast.lenses or cast.bodies or cast.pieces or cast.frames or told.f_number or told.distance_mm
    alone = told.values.keys() == {"magnification"} and not others and turn.tells("short")
    return alone and turn.best in (None, DEFINITION, MACRO_DISTANCE) and turn.tells("what-is", "means")


def drops_the_filter(turn: Turn) -> bool:
    """'without the nd then', 'i forgot the filter' after which filter: the same light, taken up some other way."""
    cast = turn.heard.cast
    return turn.was == EXPOSURE_ND and turn.tells("no-filter") and not (cast.lenses or cast.bodies)


def blurs_behind(turn: Turn) -> bool:
    """'how soft is a tree 10 m behind her' after what is sharp at 3 m, 'how do i get everything blurry behind her'."""
    if turn.tells("wants-blur") and turn.best in _NO_MATTER | {MACRO_DISTANCE, WHY}:
        return bool(turn.before.lenses) and turn.heard.readings.distance_mm is None
    if turn.tells("back-blurred") and turn.best in _NO_MATTER | {MACRO_DISTANCE, WHY, SHIM_CALIBRATION}:
        return bool(turn.before.lenses)
    return turn.was == DEPTH_OF_FIELD and turn.before.distance_mm is not None and is_behind(turn.heard)


def films_in_the_sun(turn: Turn) -> bool:
    """'can i film my kid in the garden, sunny' after a lens on a body: how much light is held back, and no danger."""
    lit = turn.heard.readings.values.get("light") == _FULL_SUN and turn.tells("films")
    feared = (
        turn.tells("worry", "damage", "at-the-sun", "ok", "laid-in-sun", "hand-meter")
        or HARM_SAID in turn.heard.features
    )
    return lit and turn.best == HAZARD and not feared and bool(turn.before.lenses) and not turn.heard.cast.lenses


def steps_between_pictures(turn: Turn) -> bool:
    """'how far do i move the rail between shots' close up: the step, by how much one picture holds sharp."""
    return turn.tells("how-many-frames") and turn.was in (MACRO_DISTANCE, DEPTH_OF_FIELD) and bool(turn.before.lenses)


def asks_of_autofocus(turn: Turn) -> bool:
    """'and the autofocus' after a lens on a body: whether it works there."""
    pair = any(one.ids for one in turn.before.lenses) and bool(turn.before.bodies)
    return pair and turn.tells("autofocus") and turn.best == OUT_OF_SCOPE and not turn.heard.cast.lenses


def zooms_in(turn: Turn) -> bool:
    """'can i just zoom in the picture to get rid of the black' after a lens on a body: how far it must be cropped."""
    dark = any(spoken.id in _DARK for spoken in turn.heard.line.spoken) or turn.tells("vignette", "disc")
    return turn.tells("crop") and dark and turn.best in _NO_MATTER | {HAZARD} and bool(turn.before.lenses)


def shoots_small_things(turn: Turn) -> bool:
    """'can i shoot bugs with it' after a lens on a body: how near it comes, and what brings it nearer."""
    cast, motif = turn.heard.cast, any(one.kind == "MOTIF" for one in turn.heard.line.tokens)
    more = cast.lenses or cast.pieces or turn.heard.readings.distance_mm is not None
    asked = motif and turn.tells("macro") and any(turn.tells(one) for one in _ASKS_HOW)
    return asked and turn.best in _NO_MATTER and bool(turn.before.lenses) and not more


def stacks_them(turn: Turn) -> bool:
    """'can i stack them' after step rings for fronts: it is asked of those."""
    fronts = turn.was == BUY_PLAN and turn.before.said("filter_thread") is not None
    stacked = any(STACKED in one.groups for one in turn.heard.line.tokens)
    return fronts and stacked and turn.best in (None, CHAIN, HAZARD, BUY_PLAN) and not turn.heard.cast.lenses


def asks_of_a_hood(turn: Turn) -> bool:
    """'hood?' after a lens: how long one may be."""
    cast, lens = turn.heard.cast, turn.before.lens
    asked = turn.tells("hood") and turn.tells("short") and not (cast.lenses or cast.bodies or cast.pieces)
    known = lens is not None and lens.focal_length_mm is not None
    return asked and known and not turn.tells("vignette", "cover", "buy", "need-it", "why")


def asks_the_same_ring(turn: Turn) -> bool:
    """'same ring?' after a second lens was exposed or pictured: how that one is put on."""
    asked = turn.tells("one-ring") and turn.tells("short") and not (turn.heard.cast.lenses or turn.heard.cast.bodies)
    return asked and turn.was in PICTURED | {EXPOSURE_ND, GEAR_SETTING} and bool(turn.before.bodies)


def sets_a_crop(turn: Turn) -> bool:
    """'what if i set the camera to a tele mode of 2.4x' after a lens on a body: how that frames, and no other menu."""
    cropped = "crop" in turn.heard.readings.values and turn.best == GEAR_SETTING
    return cropped and bool(turn.before.lenses) and not (turn.heard.cast.lenses or turn.heard.cast.pieces)


def crops_the_picture(turn: Turn) -> bool:
    """'can i crop in the edit' after a lens on a body: what is left of the frame."""
    asked = turn.tells("crop") and turn.tells("can") and turn.best in (OUT_OF_SCOPE, HAZARD, CROP_EQUIVALENT, None)
    cast = turn.heard.cast
    return asked and bool(turn.before.lenses and turn.before.bodies) and not (cast.lenses or cast.pieces or cast.bodies)


def _as_pictured(turn: Turn) -> str:
    return turn.was if turn.was in PICTURED else CROP_EQUIVALENT


def stops_down_what_is_lit(turn: Turn) -> bool:
    """'wide open or stopped down, any difference' after whether a lens covers: it is asked of the corners."""
    cast = turn.heard.cast
    down = turn.tells(_DOWN) and not turn.tells(*_OF_ELSE)
    return turn.was == COVERAGE and down and not (cast.lenses or cast.bodies or cast.pieces)


def asks_of_diffraction(turn: Turn) -> bool:
    """'is that too soft by diffraction' after what a bellows costs in light."""
    of_picture = turn.was in PICTURED | {EXPOSURE_ND, MACRO_DISTANCE}
    return of_picture and turn.tells("diffraction") and turn.before.lens is not None


def wants_a_field(turn: Turn) -> bool:
    """'which focal length sees 4 m wide at 3 m' after a lens: what lens the view wants, and nothing close up."""
    told = turn.heard.readings
    field = told.values.keys() == {"field"} and told.distance_mm is not None
    return field and turn.tells("focal-asked") and turn.was in PICTURED | {CHAIN, MACRO_DISTANCE}


def likens_to_full_frame(turn: Turn) -> bool:
    """'full frame?' after a lens on MFT or X, whose bodies have no such frame: what it is like there."""
    cast, lens = turn.heard.cast, turn.before.lens
    full = len(cast.frames) == 1 and any(FULL in one.ids[:1] for one in cast.frames[0].formats)
    known = lens is not None and lens.focal_length_mm is not None and is_never_full(turn.heard, turn.before)
    asked = turn.tells("cover", "vignette", "which", "fits", "match", "why") or turn.heard.readings.values
    more = cast.lenses or cast.bodies or cast.pieces or asked
    return full and known and turn.was in _SEEN_ON and turn.tells("short") and not more


# what may be seen, and what is asked then; the first that is seen tells
ROW: Final[tuple[tuple[Callable[[Turn], bool], str | Callable[[Turn], str]], ...]] = (
    (tells_another_body, lambda turn: turn.was),
    (ranks_depths, COMPARE),
    (sets_views_apart, CROP_EQUIVALENT),
    (asks_what_a_size_is, DEFINITION),
    (asks_the_stop_close, MACRO_DISTANCE),
    (asks_of_the_iris, CHAIN),
    (drops_the_filter, EXPOSURE_ND),
    (blurs_behind, DEPTH_OF_FIELD),
    (films_in_the_sun, EXPOSURE_ND),
    (steps_between_pictures, DEPTH_OF_FIELD),
    (asks_of_autofocus, CHAIN),
    (zooms_in, COVERAGE),
    (shoots_small_things, MACRO_DISTANCE),
    (stacks_them, BUY_PLAN),
    (asks_of_a_hood, DIY_DIMENSION),
    (asks_the_same_ring, CHAIN),
    (sets_a_crop, _as_pictured),
    (crops_the_picture, COVERAGE),
    (stops_down_what_is_lit, COVERAGE),
    (asks_of_diffraction, DEPTH_OF_FIELD),
    (wants_a_field, CROP_EQUIVALENT),
    *odd_glass.ROW,
)
