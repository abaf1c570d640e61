"""What may be seen in a follow-up, by what is heard and by the question before it."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from engine.base.compact import compact
from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    BY_SEAT,
    CHAIN,
    CLOSE_UPS,
    COMPARE,
    CROP_EQUIVALENT,
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
    OF_FRAMES,
    OF_PICTURE,
    OUT_OF_SCOPE,
    PICTURED,
    SEATED,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import MODE, OFF, Question
from grammar.things.casting import OPTICAL
from grammar.turns.going_on import ASIDE, OF_STOPS, asks, is_to_be_seated, puts_tube, ranked_by, saved_by_stop, sized
from grammar.turns.of_another import is_of_another, is_one_more, only_frame, only_glass, only_swaps
from grammar.turns.only_told import only_tells
from grammar.turns.same_matter import same_matter
from grammar.turns.whom import Meant

_SEEN: Final = SEATED | PICTURED | {COMPARE, WHY, EXPOSURE_ND, GEAR_SETTING, OUT_OF_SCOPE, BUY_PLAN} | {
    SHIM_CALIBRATION, HAZARD, DIY_DIMENSION}  # fmt: skip
_TROUBLED: Final = frozenset([None, SHIM_CALIBRATION, OUT_OF_SCOPE, HAZARD, GEAR_SETTING])
_CLOSER: Final = ("closer", "nearer")  # how the words end that ask for more than there is
_SURELY_VIEWED: Final = 0.75  # wording that leans so far asks what a frame shows, and nothing of the stabiliser
_PLAIN: Final = 5.0  # the weight from which something else is plainly asked beside what is told
_BESIDE_SEAT: Final = PICTURED | {EXPOSURE_ND, GEAR_SETTING, HAZARD, BUY_PLAN, DIY_DIMENSION, WHY}
_SPEAKS: Final = 2.5  # and from which words speak for it at all
# what words that only tell of a lens may seem to ask
_IDLY_TOLD: Final = frozenset([
    None, CHAIN, IDENTIFY_MOUNT, WHY, LOOK_ALIKE, DEFINITION, CROP_EQUIVALENT, LIST_FITS, DIY_DIMENSION])  # fmt: skip
# what asks, beside a reducer or extender, whether it mends what was told before
_OF_CURE: Final = frozenset(
    ["remedy", "will", "can", "what-if", "ok", "right", "better", "put-in", "adding", "get", "instead", "what", "cover",
     "vignette", "disc", "spaced"])  # fmt: skip
_PLANNED: Final = SEATED | {BUY_PLAN}
_IDLE_THROUGH: Final = frozenset(["instead", "what-if", "ok", "what", "can", "will"])  # beside a mount gone through
_TELLING: Final = frozenset([CHAIN, IDENTIFY_MOUNT, LOOK_ALIKE, DEFINITION])


@compact
class Turn:
    """What was heard, the question before it, and which lens is meant. `best`: what its own words ask."""

    heard: Heard
    before: Question
    found: Meant | None
    best: str | None

    @property
    def was(self) -> str:
        """What was asked before."""
        return self.before.intent

    @property
    def was_aside(self) -> bool:
        """Whether that was only asked by the way: what it is, why it is so."""
        return self.was in ASIDE

    @property
    def names_things(self) -> bool:
        cast = self.heard.cast
        return bool(cast.lenses or cast.bodies or cast.pieces or cast.frames)

    def tells(self, *cues: str) -> bool:
        return any(map(self.heard.tells, cues))


def of(is_seen: Callable[[Heard, Question], bool]) -> Callable[[Turn], bool]:
    """Of what is heard, after the question before."""
    return lambda turn: is_seen(turn.heard, turn.before)


def weighs_too_much(turn: Turn) -> bool:
    """'its 1.5 kg together, hold by the camera?': a weight, with words of what is to carry it."""
    return "weight" in turn.heard.readings.values and turn.tells("weight")


def stops_short(turn: Turn) -> bool:
    """'it stops at 60 cm' after a lens on a body."""
    away, before = turn.heard.readings.distance_mm, turn.before
    pair = any(one.ids and one.focal_length_mm for one in before.lenses) and any(one.ids for one in before.bodies)
    seated = turn.was in SEATED or (pair and turn.was in _BESIDE_SEAT)
    return seated and turn.tells("stops-at") and away is not None and not asks(turn.heard)


def wants_it_closer(turn: Turn) -> bool:
    """'and if I want it closer', 'how do i get it closer': it shall come closer than it does."""
    cast, tells = turn.heard.cast, [cue for cue in turn.heard.cues if cue.tells == "how-close"]
    closer = any(turn.heard.text[cue.column - 1 : cue.end].casefold().endswith(_CLOSER) for cue in tells)
    alone = not (cast.lenses or cast.bodies or cast.pieces or turn.heard.readings.values)
    wanted = turn.best == MACRO_DISTANCE or (closer and alone)
    return turn.was in SEATED and bool(tells) and wanted and not cast.pieces


def picks_stock(turn: Turn) -> bool:
    """'which stock should i buy' after how thick a shim must be."""
    prior, off = turn.before.prior, turn.before.off_word == "too thin"  # a reason may have been asked for between
    return turn.tells("shim-stock") and (off or SHIM_CALIBRATION in (turn.was, prior and prior.intent))


def corrects(turn: Turn) -> bool:
    """'no, i meant the one with 1 mm pitch'."""
    return turn.tells("correct") and not asks(turn.heard) and not turn.was_aside


def doubts(turn: Turn) -> bool:
    return turn.tells("sure", "doubt")


def is_same_matter(turn: Turn) -> bool:
    return same_matter(turn.heard, turn.before, ASIDE) is not None


def wants_an_order(turn: Turn) -> bool:
    return ranked_by(turn.heard, turn.before) is not None


def tells_of_a_thing(turn: Turn) -> bool:
    """What was told of a thing puts the question of before anew."""
    heard, best, found = turn.heard, turn.best, turn.found
    told = any(part.subject is not None for part in (*heard.cast.lenses, *heard.cast.bodies))
    plainly = best is not None and best not in _TELLING and heard.weighed.weight(best) >= _PLAIN
    return (told or (found is not None and found.told)) and not asks(heard) and not plainly


def tells_of_the_unknown(turn: Turn) -> bool:
    """'the aperture ring is on the lens', 'it sits 12.3 from the paper' while a lens is identified: one thing more."""
    heard, cast = turn.heard, turn.heard.cast
    things = any(not part.is_bare for part in (*cast.bodies, *cast.pieces, *cast.frames))
    open_yet = turn.was == IDENTIFY_MOUNT and not turn.before.bodies
    asked = asks(heard) or "?" in heard.text or bool(heard.readings.limits) or _asks_else(turn)
    measured = turn.best == FOCUS_VERDICT and "flange_to_image" in heard.readings.values
    return open_yet and not asked and not things and (measured or turn.best in _IDLY_TOLD)


def _asks_else(turn: Turn) -> bool:
    """'how thick for EF', 'why not T2', 'any trap with old ones': nothing is measured, and another kind is asked."""
    weight = turn.heard.weighed.weight(turn.best) if turn.best is not None else 0.0
    others = turn.best not in (None, IDENTIFY_MOUNT, DEFINITION)
    told = turn.heard.readings.values or any(part.focal or part.f_number for part in turn.heard.cast.lenses)
    return others and weight >= _SPEAKS and not told


def turns_to_the_sun(turn: Turn) -> bool:
    """'and the sun?' after the moon: it is to be in the picture, and no light to expose by."""
    values = turn.heard.readings.values
    rest = values.keys() - {"light"} or turn.heard.readings.f_number is not None or turn.names_things
    return values.get("light") == "full-sun" and turn.before.said("target") == "moon" and not rest


def picks_one_compared(turn: Turn) -> bool:
    """The one of those that were set side by side."""
    found = turn.found
    return turn.was == COMPARE and found is not None and turn.best in (None, COMPARE) and len(found.lenses) == 1


def sets_a_limit(turn: Turn) -> bool:
    """'no glass' after a list of what fits, 'via M instead' after a plan."""
    heard, cast = turn.heard, turn.heard.cast
    others = cast.bodies or cast.pieces or cast.frames or len(cast.lenses) > 1
    through = not others and "using" in heard.readings.limits
    alone = not heard.cues and not turn.names_things
    idle = through and turn.was in _PLANNED and all(cue.tells in _IDLE_THROUGH for cue in heard.cues)
    return bool(heard.readings.limits) and (alone or idle) and not turn.was_aside


def wants_it_seated(turn: Turn) -> bool:
    return turn.best == IDENTIFY_MOUNT and is_to_be_seated(turn.heard)


def wants_it_mended(turn: Turn) -> bool:
    """'how do i fix it' after a lens on a body."""
    feared = turn.best == HAZARD and turn.heard.weighed.weight(HAZARD) >= _PLAIN  # 'can it be repaired if fungus'
    feared = feared or turn.tells("touch")  # 'it hit something, what now'
    troubled = turn.tells("remedy") and not feared and turn.was in BY_SEAT and turn.best in _TROUBLED
    return troubled and not (turn.names_things or sized(turn.before))


def wants_it_set_right(turn: Turn) -> bool:
    """'whats the fix' after a ring that was measured: what is to be taken off it, or put under it."""
    leant = turn.best == FOCUS_VERDICT and turn.heard.weighed.weight(FOCUS_VERDICT) <= 0  # by its wording alone
    asked = turn.tells("remedy") and turn.was in SEATED and (leant or turn.best in (*_TROUBLED, CHAIN, DEFINITION))
    plain = not (turn.names_things or turn.tells("instead", "stops-down") or turn.heard.readings.limits)
    # where no ring is told but how thick one is, the chain told before is asked what would lift it
    return asked and plain and sized(turn.before) and bool(turn.before.adapters)


def takes_it_off(turn: Turn) -> bool:
    """'so i file how much' after by how much a ring is off, or where a lens ends on it."""
    before = turn.before
    ends = (before.mentions("stops-at") and before.distance_mm is not None) or before.said(OFF) is not None
    off = turn.was == SHIM_CALIBRATION or (turn.was in SEATED and (ends or sized(before)))
    return off and turn.tells("take-off") and not turn.names_things


def puts_a_tube(turn: Turn) -> bool:
    after_shim = turn.was == SHIM_CALIBRATION and turn.best in (None, turn.was, MACRO_DISTANCE)
    weighed = turn.heard.weighed  # 'tube of 7, size': wording may lean to a ring to be made
    leant = turn.best == DIY_DIMENSION and weighed.weight(DIY_DIMENSION) <= 0 < weighed.weight(MACRO_DISTANCE)
    return (after_shim or (leant and turn.was not in CLOSE_UPS)) and puts_tube(turn.heard)


def rather_stops_down(turn: Turn) -> bool:
    """'or stop down to what' after an exposure."""
    return turn.was == EXPOSURE_ND and turn.tells("which-stop") and turn.best in OF_STOPS and not turn.names_things


def sets_one_more_beside(turn: Turn) -> bool:
    return turn.best == COMPARE and is_one_more(turn.heard, turn.before)


def asks_of_another(turn: Turn) -> bool:
    return is_of_another(turn.heard, turn.before) or (not turn.was_aside and only_swaps(turn.heard, turn.before))


def asks_the_view(turn: Turn) -> bool:
    """'how wide is that', 'how does it look beside a phone' after a lens on a body: what it frames like there."""
    heard, lens = turn.heard, turn.before.lens
    asked = turn.tells("how-wide", "view-asked", "view-across")
    asked = asked or (turn.tells("phone") and turn.tells("better", "set-beside"))
    if any(one.piece in OPTICAL for one in turn.before.adapters):
        asked = asked or (turn.tells("comparative") and heard.tells("how-much"))  # 'how much wider'
    measured = heard.readings.distance_mm is not None or heard.readings.values or turn.tells("why")
    of_else = any(one.kind in ("MEASURE", "FRAME", "PIECE", "MOTIF", "THREAD") for one in heard.line.tokens)
    return turn.was in _SEEN and asked and bool(lens and lens.focal_length_mm) and not (measured or of_else)


def tells_a_shape(turn: Turn) -> bool:
    """'and at 16:9' after what a lens frames like: the same is asked of that shape."""
    readings = turn.heard.readings
    alone = not (turn.names_things or readings.limits) and readings.values.keys() == {"crop"}
    return turn.was == CROP_EQUIVALENT and alone and not turn.tells("cover", "vignette", "crop", "pixels", "recording")


def wants_that_view(turn: Turn) -> bool:
    """'what do I need on MFT to see the same' after what a lens frames like: which lens does on that frame."""
    cast, readings = turn.heard.cast, turn.heard.readings
    lenses = [part for part in cast.lenses if not part.is_bare]
    else_told = lenses or cast.pieces or readings.values or readings.f_number or readings.distance_mm
    framed = bool(cast.bodies or cast.frames) and turn.before.lens is not None
    return turn.was in OF_PICTURE and turn.tells("match") and framed and not (else_told or turn.tells("dof"))


def asks_pixels_left(turn: Turn) -> bool:
    """'pixels from 42 MP', 'is UHD still possible' after a way: what is left of its picture."""
    asked = turn.was in SEATED and turn.tells("recording", "pixels")
    return asked and not (turn.names_things or turn.tells("exposure", "nd", "sharp-enough", "blur", "why"))


def leaves_the_crop(turn: Turn) -> bool:
    """'and with the whole sensor' after a crop that was told: the same is asked without it."""
    idle = turn.was in CLOSE_UPS and all(cue.tells in {*_IDLE_THROUGH, "uncropped"} for cue in turn.heard.cues)
    cropped = (idle or turn.was in OF_FRAMES) and (turn.before.said("crop") or turn.before.said(MODE)) is not None
    return cropped and turn.tells("uncropped") and not turn.heard.cast.lenses


def sets_for_another(turn: Turn) -> bool:
    """'with a 2x doubler' after the number that the stabiliser wants."""
    framed = only_frame(turn.heard, turn.before)
    viewed = turn.best == CROP_EQUIVALENT and turn.heard.weighed.likely.get(CROP_EQUIVALENT, 0.0) >= _SURELY_VIEWED
    return turn.was == GEAR_SETTING and (only_glass(turn.heard) or (framed and not viewed))


def is_lit_by_glass(turn: Turn) -> bool:
    """'would a 0.5x reducer fix that' after what a lens lights or frames like: what it does so behind that glass."""
    idle = all(cue.tells in _OF_CURE for cue in turn.heard.cues)
    return turn.was in OF_FRAMES and only_glass(turn.heard) and idle and not turn.heard.readings.values


def is_saved_by_stop(turn: Turn) -> bool:
    return saved_by_stop(turn.heard, turn.best, turn.before)


def tells_only(turn: Turn) -> bool:
    before, placed = turn.before, turn.was == OUT_OF_SCOPE and bool(turn.heard.cast.bodies)  # 'it's C/Y, on E?'
    told = only_tells(turn.heard, turn.best) and bool(before.lenses or before.bodies)
    return told and not (turn.was_aside or placed)
