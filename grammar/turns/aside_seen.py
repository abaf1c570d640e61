"""What a follow-up asks beside the chain: how to check it, what else is like it, which part is the right one."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COMPARE,
    COVERAGE,
    DEFINITION,
    DIY_DIMENSION,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LIST_FITS,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    SEATED,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import Question
from grammar.turns.same_matter import goes_on_beside
from grammar.turns.turn_seen import Turn
from grammar.words.groups import LIGHT_SAID

STABILISATION: Final = "stabilisation"  # the topic of what the stabiliser is told
_IF: Final = "if"
_IDLE: Final = frozenset(["it-is", "ok", "right", "adding"])  # cues that ask nothing
_SLIGHTLY: Final = 0.7  # wording that leans less far one way
_ENOUGH: Final = 1.0  # evidence that speaks for a kind of question at all
_OF_OK: Final = 1.5  # what 'ok' alone says of a danger
_APART: Final = 0.5  # and by how much it is ahead of the next
# what may be asked in few words of a lens on a body, once it is told how it is put on
_BESIDE_CHAIN: Final = frozenset([HAZARD, MACRO_DISTANCE, COVERAGE, LIST_FITS, EXPOSURE_ND])
_MIRRORLESS: Final = "mirrorless"  # value of the words for such a body
_SEATED: Final = frozenset([CHAIN, FOCUS_VERDICT, WHY, SHIM_CALIBRATION, LOOK_ALIKE, HAZARD, DIY_DIMENSION])
_SUN: Final = "full-sun"
_OF_PART: Final = frozenset(
    ["will", "can", "what", "how", "ok", "right", "why-care", "is-it", "put-in", "looks", "what-if", "need-it", "trap",
     "worry", "thing", "sure", "how-bad"]
)  # fmt: skip
# cues that ask on of a fault seen in the picture: where it comes from, how that is seen, what helps
_OF_FAULT: Final = frozenset(
    ["is-it", "could-be", "how", "check-it", "which-stop", "stops-down", "f-stop", "remedy", "isnt-that",
     "ring-or-lens", "will", "can", "what", "ok", "thing", "sure", "better", "why", "what-if", "it-is"]
)  # fmt: skip
_AMISS: Final = frozenset([LOOK_ALIKE, HAZARD, WHY, GEAR_SETTING, CHAIN, FOCUS_VERDICT, DEFINITION])


def goes_on_by_the_way(turn: Turn) -> bool:
    """'how do i know' after a danger: asked of that, and of nothing of before it."""
    return goes_on_beside(turn.heard, turn.before) is not None


def by_the_way(turn: Turn) -> str:
    return goes_on_beside(turn.heard, turn.before) or turn.was


def wants_the_right_part(turn: Turn) -> bool:
    """'whats the proper part then' after two that do not go together, or a harm: the ring that does join them."""
    lens = any(one.ids for one in turn.before.lenses)
    return lens and turn.tells("proper-part") and turn.was in _AMISS and not turn.names_things


def checks_a_danger(turn: Turn) -> bool:
    """'how do i check that' after a danger: whether there is one."""
    return turn.was == HAZARD and turn.tells("check-it") and not _tells_more(turn)


def fears_a_danger(turn: Turn) -> bool:
    """'is the yellow tint dangerous', 'can it get mouldy': the words of a danger, and no other lens or body."""
    if turn.was == HAZARD and turn.tells("same") and turn.tells("harm-word"):
        return True  # 'same danger with ltm?'
    other = turn.tells("lens-mount", "body-mount", "focal", "ordinal")
    lit = turn.tells("shutter-said", "iso-said", "frame_rate-said")  # 'sun 1/50 filter' looks into none
    far = turn.tells("infinity") and not turn.tells("harm-word")  # 'do i lose infinity with two rings stacked'
    return turn.best == HAZARD and turn.tells("wholly-hazard") and not (other or lit or far)


def fears_for_focus(turn: Turn) -> bool:
    """'does it hurt focus' after a danger of a ring or a body, with no lens told: that danger still."""
    lens = turn.before.lenses or turn.heard.cast.lenses or turn.heard.cast.bodies or turn.heard.cast.pieces
    return turn.was == HAZARD and turn.best == FOCUS_VERDICT and turn.tells("short") and not lens


def asks_what_to_watch(turn: Turn) -> bool:
    """'what are the dangers', 'what could go wrong' after anything else: what is to be watched, and no way."""
    idle = turn.best in (None, HAZARD, CHAIN, LIST_FITS, FOCUS_VERDICT, BUY_PLAN, turn.was)
    return turn.tells("worry") and turn.tells("short") and idle and not _tells_more(turn)


def lights_another_frame(turn: Turn) -> bool:
    """'its a super 16 one, full frame sensor' after a lens on a body: whether it covers that."""
    cast, read = turn.heard.cast, turn.heard.readings
    lens = cast.lenses[0] if len(cast.lenses) == 1 else None
    told = lens is not None and bool(lens.formats) and not (lens.mounts or lens.focal or lens.zoom or lens.named)
    frame = any(part.formats for part in (*cast.frames, *cast.bodies)) and not any(part.mounts for part in cast.bodies)
    more = cast.pieces or read.values or read.f_number is not None or read.distance_mm is not None
    idle = all(cue.tells in _IDLE for cue in turn.heard.cues)
    return told and frame and idle and not more and bool(turn.before.lenses)


def sets_it_anew(heard: Heard, before: Question) -> bool:
    """'must i redo it at every lens change', 'does it remember that' after the number that the stabiliser wants."""
    cast = heard.cast
    other = any(part.mounts or part.focal or part.named for part in cast.lenses)
    more = other or cast.pieces or cast.frames or heard.readings.values or heard.readings.f_number is not None
    stabilised = before.intent == GEAR_SETTING and before.topic == STABILISATION
    return stabilised and heard.tells("set-anew") and not more


def tells_the_camera(turn: Turn) -> bool:
    """'how do i tell my camera its 58mm', 'where do i enter 135 in the camera': what is to be set, and no lens."""
    cast, told = turn.heard.cast, turn.heard.readings.values.keys() - {"numbers", "length"}
    body = bool(cast.bodies) and all(part.is_bare for part in cast.bodies)
    focal = all(not (part.mounts or part.named or part.kinds or part.f_number) for part in cast.lenses)
    asked = turn.tells("setting") and turn.tells("identify", "where", "how", "what", "which")
    return asked and body and focal and not (told or cast.pieces or cast.frames or turn.tells("infinity"))


def measures_by_hand(turn: Turn) -> bool:
    """'with just a ruler?', 'no calipers here' while a lens is identified: how it is measured."""
    asked = turn.tells("calipers", "check-it") and not turn.tells("why")  # 'why measure, can I not just try it'
    return turn.was == IDENTIFY_MOUNT and asked and not _tells_more(turn)


def asks_other_bodies(turn: Turn) -> bool:
    """'what body would be right', 'a mirrorless one for it then' after a lens on a body: which would take it."""
    cast, lens = turn.heard.cast, any(one.ids for one in turn.before.lenses)
    named = any(part.mounts or part.named or part.formats for part in cast.bodies) or cast.lenses or cast.pieces
    classed = any(one.kind == "BODY" and one.value == _MIRRORLESS for one in turn.heard.line.tokens)
    idle = turn.best in (None, CHAIN, LIST_FITS, FOCUS_VERDICT, BUY_PLAN, COMPARE) and turn.was in _SEATED
    asked = bool(cast.bodies) and (turn.tells("other-bodies") or classed)  # 'bin it?' asks of the ring
    return lens and idle and asked and not (named or turn.heard.readings.values)


def asks_by_evidence(turn: Turn) -> bool:
    """'on MFT how deep' after a cup to be made: wording leans a little elsewhere, what is said speaks for the same."""
    weighed, best = turn.heard.weighed, turn.best
    if best is None or best == turn.was or turn.was_aside:
        return False
    slight = weighed.likely.get(best, 0.0) < _SLIGHTLY and weighed.weight(best) <= 0
    return slight and weighed.weight(turn.was) > 0


def spoken_for(turn: Turn) -> str | None:
    """'mirror in the way?', 'ok for close ups?' after how it is put on: wording leans to that, words speak for else."""
    weighed = turn.heard.weighed
    ok = _OF_OK if turn.tells("ok") else 0.0  # 'ok for close ups?' fears nothing
    asked = {name: weight - (ok if name == HAZARD else 0.0) for name, weight in weighed.ranked}
    ranked = sorted(((name, asked[name]) for name in asked.keys() & (_BESIDE_CHAIN | SEATED)), key=lambda row: -row[1])
    first, second = (*ranked[:2], ("", 0.0), ("", 0.0))[:2]
    leant = turn.best == turn.was and turn.was in SEATED and weighed.weight(turn.was) <= 0
    plain = first[1] >= _ENOUGH and first[1] - second[1] >= _APART
    worked = turn.tells("autofocus", "iris")  # told with how it is put on
    far = first[0] == MACRO_DISTANCE and not turn.tells("macro")  # 'how far is the limit' asks of the far end
    worked = worked or (turn.was == FOCUS_VERDICT and (far or first[0] in (EXPOSURE_ND, LIST_FITS)))
    return first[0] if leant and plain and turn.tells("short") and not (worked or _tells_more(turn)) else None


def speaks_for_else(turn: Turn) -> bool:
    return spoken_for(turn) is not None


def names_a_piece_only(turn: Turn) -> bool:
    """'with a glass one?' after how a lens is put on: by that, and it is set beside nothing."""
    cast = turn.heard.cast
    alone = len(cast.pieces) == 1 and not (cast.lenses or cast.bodies or cast.frames or turn.heard.readings.values)
    leant = turn.best == COMPARE and turn.heard.weighed.weight(COMPARE) <= 0
    return turn.was in (CHAIN, FOCUS_VERDICT) and alone and leant and not turn.heard.cues


def moves_to_another_body(turn: Turn) -> bool:
    """'on a Z body?' after infinity at a mark, or after whether it gets there: by another ring, which is asked for.

    So it is after a number of the stabiliser or the stops of a filter, which no body changes, and where a danger was
    asked about since.
    """
    heard, cast = turn.heard, turn.heard.cast
    bodies = cast.bodies
    here = {id_ for body in turn.before.bodies for id_ in body.ids}
    there = {id_ for part in bodies for mount in part.mounts for id_ in mount.ids}
    other = len(bodies) == 1 and bool(here and there) and not here & there
    idle = turn.best in (None, CHAIN, turn.was) and turn.heard.weighed.weight(turn.was) <= 0
    lit = (
        turn.was == EXPOSURE_ND
        and turn.before.follows
        and not (turn.tells("same") or any(LIGHT_SAID in one.groups for one in heard.line.tokens))
    )
    moved = turn.was in (SHIM_CALIBRATION, GEAR_SETTING) or turn.before.beside == HAZARD or lit
    verdict = turn.was == FOCUS_VERDICT and turn.best in (None, CHAIN)
    more = cast.pieces or turn.heard.readings.values or any(not part.is_bare for part in cast.lenses)
    return (moved or verdict) and other and idle and not more


def keeps_the_sun_off(turn: Turn) -> bool:
    """'does nd help', 'cap between shots?' after the danger of the sun: whether that is safe, and no exposure."""
    sun = HAZARD in (turn.was, turn.before.beside) and turn.before.said("light") == _SUN
    set_so = turn.heard.readings.values.keys() & {"shutter", "iso", "frame_rate", "angle"}
    kept_off = turn.tells("sun-kept-off") or "factor" in turn.heard.readings.values
    return sun and kept_off and not (set_so or turn.heard.cast.lenses or turn.heard.cast.bodies)


def asks_the_stop_set(turn: Turn) -> bool:
    """'what f stop is it at then', 'does the ring click' after how a lens is put on: how that is told, and no view."""
    rings = all(part.is_bare for part in turn.heard.cast.pieces)
    told = turn.heard.readings
    more = turn.heard.cast.lenses or turn.heard.cast.frames or told.values or told.distance_mm or told.f_number
    glass = any(one.factor is not None for one in turn.before.adapters)
    lit = turn.tells("exposure") or turn.tells("nd") or turn.tells("dof") or turn.tells("infinity")
    off = turn.before.said("thickness") is not None  # 'at which stop is it ok': the one that forgives what is off
    return turn.was in SEATED and turn.tells("which-stop-set") and rings and not (more or glass or lit or off)


def asks_of_a_part(turn: Turn) -> bool:
    """'does it care about the pin', 'and the lever?' after how a lens is put on: what that part is for, and no way."""
    idle = turn.best in (None, CHAIN, FOCUS_VERDICT, WHY, turn.was)
    idle = idle and all(cue.tells in _OF_PART for cue in turn.heard.cues)
    cast, told = turn.heard.cast, turn.heard.readings
    named = any(not part.is_bare for part in (*cast.lenses, *cast.bodies, *cast.frames))  # 'the cam' is a camera too
    more = named or told.values or told.distance_mm is not None or any(not part.is_bare for part in cast.pieces)
    return turn.was in SEATED and turn.tells("part-named") and turn.tells("short") and idle and not more


def asks_on_of_a_fault(turn: Turn) -> bool:
    """'is it the ring', 'how would i see that', 'stop down to what' after why a picture is so: of that fault still."""
    cast, told = turn.heard.cast, turn.heard.readings
    named = any(not part.is_bare for part in (*cast.lenses, *cast.bodies, *cast.pieces, *cast.frames))
    idle = turn.best not in (SHIM_CALIBRATION, HAZARD, MACRO_DISTANCE, COVERAGE, BUY_PLAN, LIST_FITS) or turn.tells(
        "ring-or-lens"
    )
    asked = bool(turn.heard.cues) and all(cue.tells in _OF_FAULT for cue in turn.heard.cues)
    more = named or told.values or told.distance_mm is not None or told.f_number is not None
    return turn.before.beside == WHY and asked and idle and not more and turn.tells("short")


def doubts_the_name(turn: Turn) -> bool:
    """'isn't that M42', 'is that not just M42' after a T2 lens: whether the two are one, and no other lens."""
    parts, before = turn.heard.cast.lenses, turn.before.lens
    alone = len(parts) == 1 and len(parts[0].mounts) == 1 and not (parts[0].focal or parts[0].kinds)
    other = before is not None and bool(before.ids) and alone and not set(parts[0].mounts[0].ids) & set(before.ids)
    cast = turn.heard.cast
    supposed = any(one.text.casefold() == _IF for one in turn.heard.line.tokens)  # 'and if it is really a CS lens'
    could = turn.tells("could-be") and turn.was != IDENTIFY_MOUNT and not supposed  # 'could it be CS'
    asked = turn.tells("isnt-that") or could
    return other and asked and not (cast.bodies or cast.pieces or turn.heard.readings.values)


def asks_of_both_threads(turn: Turn) -> bool:
    """'pitch same?' after two that look alike: asked of the two, and no word to be told."""
    told = turn.tells("pitch") and turn.tells("same")
    return turn.was == LOOK_ALIKE and len(turn.before.lenses) > 1 and told and not _tells_more(turn)


def asks_what_else(turn: Turn) -> bool:
    """'what else is close to that' after which mount a lens has: what is easily taken for it."""
    found = turn.was in (CHAIN, FOCUS_VERDICT) and not turn.before.bodies  # how what was identified is gone on with
    asked = turn.was in (IDENTIFY_MOUNT, LOOK_ALIKE, DEFINITION) or found
    return asked and turn.tells("what-else") and not _tells_more(turn)


def _tells_more(turn: Turn) -> bool:
    return turn.names_things or bool(turn.heard.readings.values) or turn.heard.readings.distance_mm is not None
