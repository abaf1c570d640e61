"""Whether a fragment only puts another lens, body, frame or glass in the place of that of before."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    CHAIN,
    COMPARE,
    CROP_EQUIVALENT,
    DEPTH_OF_FIELD,
    EXPOSURE_ND,
    HAZARD,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    PICTURED,
    SEATED,
)
from grammar.questions import Question
from grammar.things.casting import OPTICAL
from grammar.turns.on_what import LIKENED
from grammar.words.groups import LIGHT_SAID

_STEADY: Final = "stabilisation"  # topic of a setting
_OF_VIEW: Final = frozenset(["equiv", "equals", "match", "vignette", "disc", "image-circle", "crop", "release"])
_OF_LIGHT: Final = ("exposure", "nd", "f-stop")  # cues of what is asked of light
_EXTENDER: Final = "teleconverter"
_OF_SEAT: Final = frozenset(["infinity", "focus", "need-adapter", "which", "buy", "fit-q", "fits", "stack", "cover"])
_SHARP: Final = frozenset([DEPTH_OF_FIELD, MACRO_DISTANCE])
# cues beside a length told again that ask no more than whether it stays so
_OF_STAYING: Final = frozenset(
    ["is-it", "it-is", "still", "will", "what", "how", "instead", "ok", "right", "can", "sure"]
)
_ON_FRAME: Final = frozenset(
    ["ok", "right", "will", "what-if", "what", "again", "same", "crop", "body-crop", "drawn-frame", "wide-open"]
)  # idle there
_IDLE: Final = _ON_FRAME | {"instead", "can", "it-is", "adding"}
_SWAPPING: Final = _IDLE | {"how"}  # 'how about'
_PLACES: Final = frozenset(["in", "for", "on", "with"])  # prepositions of what is swapped
_SURE: Final = 0.9  # how likely something else must be, to be asked by so few words
_ASKED: Final = 2.0  # evidence from this weight up asks for something


def is_of_another(heard: Heard, before: Question) -> bool:
    """'what about m43', 'ok and the 25' after what a lens lights or frames: the same is asked of that one."""
    cast, best = heard.cast, heard.weighed.ranked[:1]
    named = [part for part in (*cast.lenses, *cast.bodies, *cast.frames) if not part.is_bare]
    more = cast.pieces or cast.without or cast.using or heard.readings.values or heard.readings.limits
    idle = all(cue.tells in _IDLE for cue in heard.cues) and not (best and best[0][1] >= _ASKED)
    likened = any(part.noun.role in LIKENED for part in cast.frames)
    surely = max(heard.weighed.likely.values(), default=0.0) >= _SURE and heard.weighed.best != before.intent
    return before.intent in PICTURED and len(named) == 1 and idle and not (more or likened or surely)


def asks_how_long_it_is(heard: Heard, before: Question) -> bool:
    """Whether a lens stays as long as it is on that frame, or what it becomes behind glass."""
    return asks_if_it_stays(heard, before) or becomes_behind_glass(heard, before)


def asks_if_it_stays(heard: Heard, before: Question) -> bool:
    """'is it a 55 or something else there', 'still a 55?': the same length again, and whether it stays that."""
    cast, lens = heard.cast, before.lens
    parts, read = cast.lenses, heard.readings
    focal = lens.focal_length_mm if lens is not None else None
    same = len(parts) == 1 and parts[0].focal is not None and parts[0].focal == focal
    bare = same and not (parts[0].mounts or parts[0].f_number or parts[0].kinds or parts[0].traits)
    more = cast.bodies or cast.pieces or read.values.keys() - {"numbers"} or read.distance_mm or read.limits
    asked = heard.tells("still") or heard.tells("is-it")
    idle = all(cue.tells in _OF_STAYING for cue in heard.cues)
    return bare and asked and idle and not more and before.intent in SEATED | PICTURED | {HAZARD}


def doubts_by_crop(heard: Heard, before: Question) -> bool:
    """'even though my sensor is crop?', 'why not 170?' after the number that the stabiliser wants."""
    denied = any(one.text == "not" for one in heard.line.tokens)
    named = heard.cast.bodies or heard.cast.pieces or any(part.mounts for part in heard.cast.lenses)
    why = (heard.tells("why") or heard.tells("why-not")) and heard.tells("short")
    number = why and not named and any(one.numbers for one in heard.line.tokens)
    doubted = heard.tells("crop") or number or (heard.tells("equiv") and denied)
    other = any(heard.tells(cue) for cue in ("cover", "vignette", "pixels", "what-is", "better"))
    return before.topic == _STEADY and doubted and not other


def only_swaps(heard: Heard, before: Question) -> bool:
    """'how about an X body', 'the FD one instead': nothing but another lens or body, of which the same is asked."""
    cast, best = heard.cast, heard.weighed.best
    named = [part for part in (*cast.lenses, *cast.bodies) if not (part.is_bare or part.is_stop_alone)]
    more = cast.pieces or cast.frames or cast.without or cast.using or heard.readings.values or heard.readings.limits
    placed = len(named) == 1 and named[0].noun.role in _PLACES
    again = placed and heard.tells("same") and best == LOOK_ALIKE  # 'same in FD?' asks not whether it is the same
    asks = any(weight >= _ASKED for intent, weight in heard.weighed.ranked if not (again and intent == LOOK_ALIKE))
    idle = all(cue.tells in _SWAPPING for cue in heard.cues) and not asks
    pair = bool(before.lenses) and bool(before.bodies or before.frames)
    unasked = again or not heard.weighed.ranked or best in (None, CHAIN, before.intent)
    return len(named) == 1 and idle and not more and pair and unasked


def is_on_another_frame(heard: Heard, before: Question) -> bool:
    """'on a 2/3 chip', 'the crop body' after what is sharp: the same is asked, on that frame."""
    cast = heard.cast
    framed = bool(cast.frames) or any(part.formats or part.crop for part in cast.bodies)
    framed = framed or (bool(cast.bodies) and heard.tells("crop"))  # 'same thing with my crop camera'
    others = (
        cast.lenses
        or cast.pieces
        or any(part.mounts for part in cast.bodies)
        or heard.readings.values.keys() - {"crop"}
    )
    return before.intent in _SHARP and framed and not others and all(cue.tells in _ON_FRAME for cue in heard.cues)


def extends(heard: Heard, before: Question) -> bool:
    """'if I add a 1.4x behind' after a lens on a body: what the lens becomes, where nothing else is asked."""
    cast = heard.cast
    glass = len(cast.pieces) == 1 and cast.pieces[0].piece == _EXTENDER and cast.pieces[0].factor is not None
    others = cast.lenses or cast.bodies or cast.frames
    lens = before.lens is not None and before.lens.focal_length_mm is not None
    asks = any(cue.tells in _OF_SEAT for cue in heard.cues)
    return glass and lens and not others and not asks and before.intent in SEATED


def becomes_behind_glass(heard: Heard, before: Question) -> bool:
    """'what lens is that now', 'what focal with my 600' after an extender or reducer: what it becomes behind it."""
    glass = any(one.piece in OPTICAL and one.factor is not None for one in before.adapters)
    more = heard.cast.bodies or heard.cast.pieces or heard.readings.values
    told = any(not part.is_bare for part in heard.cast.lenses)
    now = heard.tells("what-lens-now") and not told
    long = heard.tells("focal-asked") and heard.weighed.best in (None, CROP_EQUIVALENT)
    return glass and (now or long) and before.intent in SEATED | {COMPARE} and not more


def only_glass(heard: Heard) -> bool:
    """Whether a reducer or extender, put in or left away, is all that is told."""
    cast = heard.cast
    others = cast.lenses or cast.bodies or cast.frames or any(cue.tells in _OF_SEAT for cue in heard.cues)
    pieces = (*cast.pieces, *cast.without)
    return bool(pieces) and not others and all(piece.piece in OPTICAL for piece in pieces)


def only_frame(heard: Heard, before: Question) -> bool:
    """'on APS-C does it change' after the number that the stabiliser wants: another frame, and nothing asked of it."""
    cast = heard.cast
    others = cast.lenses or cast.pieces or any(cue.tells in _OF_SEAT or cue.tells in _OF_VIEW for cue in heard.cues)
    return before.topic == _STEADY and bool(cast.frames or cast.bodies) and not others


def is_one_more(heard: Heard, before: Question) -> bool:
    """'would the Q body be better', 'would a 50 be better' after a lens on a body: the same is asked of that one."""
    told = [part for part in (*heard.cast.lenses, *heard.cast.bodies) if part.has_mount or part.focal]
    pair = any(lens.ids for lens in before.lenses) and any(body.ids for body in before.bodies)
    return len(told) == 1 and pair and before.intent != COMPARE and not heard.tells("which")


def views_other_glass(heard: Heard, before: Question) -> bool:
    """'and with a 0.64' after what a reducer makes of a lens, and then its light: the same is asked of that glass."""
    glass = [one for one in before.adapters if one.piece in OPTICAL and one.factor is not None]
    seen = before.prior is not None and before.prior.intent == CROP_EQUIVALENT and before.intent == EXPOSURE_ND
    told = heard.readings.values or heard.readings.f_number is not None or before.values
    light = any(LIGHT_SAID in one.groups for one in heard.line.tokens) or any(map(heard.tells, _OF_LIGHT))
    return seen and bool(glass) and only_glass(heard) and not (told or light)
