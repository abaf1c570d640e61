"""What may be seen in a follow-up of what it asks, and what goes on from the question before where nothing is."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import (
    BY_SEAT,
    CHAIN,
    COMPARE,
    COVERAGE,
    DEFINITION,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    IDENTIFY_MOUNT,
    LIST_FITS,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.numbers.motifs import MOTIF, SIDES
from grammar.questions import CLOSE_UP_LENS, Question, Thing
from grammar.things.casting import DRAWN, SPACER
from grammar.turns.answer_told import ERROR, told_as
from grammar.words.groups import DARK_SAID, DEPTH_SAID, EDGES_SAID, LIGHT_SAID, SET_SO, STOP_NAMED

LEFT: Final = "left so"  # the topic of a reason that asks what comes of leaving an error in
_RANK: Final = "rank:"  # before the topic of an order that is asked for
ASIDE: Final = frozenset([WHY, IDENTIFY_MOUNT, LOOK_ALIKE, DEFINITION, GEAR_SETTING])
OF_RING: Final = frozenset([CHAIN, FOCUS_VERDICT, SHIM_CALIBRATION, DIY_DIMENSION])
OF_STOPS: Final = frozenset([None, DEFINITION, DEPTH_OF_FIELD, FOCUS_VERDICT, CHAIN, COVERAGE, EXPOSURE_ND, COMPARE])
_CLOSES: Final = "stops-down"
_OF_SHIM: Final = frozenset(["shim-calibration"])
_NEAREST: Final = "nearest"  # the measure of where a lens ends, near or far
_FAR_MM: Final = 3000.0  # no lens that focuses closer only ends nearer
_ENDS: Final = frozenset([MACRO_DISTANCE, FOCUS_VERDICT])
_THICKEST_SHIM: Final = 3.0  # mm
_OF_HARM: Final = frozenset(["harm-word", "damage", "ok", "can", "will", "is-it", "it-is", "worry"])
_SHIMMED: Final = frozenset(["shim-calibration"])  # what closing down may save one from

_OF_DEPTH: Final = frozenset([None, DIY_DIMENSION, MACRO_DISTANCE, DEPTH_OF_FIELD])
_OF_ZONE: Final = frozenset(
    [None, FOCUS_VERDICT, SHIM_CALIBRATION, GEAR_SETTING, WHY, MACRO_DISTANCE, CHAIN, DEPTH_OF_FIELD, DEFINITION]
)
_OF_SIZE: Final = frozenset(["frame-size", "instead", "ok", "what", "what-if", "can", "will", "adding", "again"])
_ENDS_ASKED: Final = ("end-near", "end-far")  # cues of the near and the far end of what is sharp
MOST_SAID: Final = 2  # words
_OF_LIGHT: Final = frozenset([None, EXPOSURE_ND, MACRO_DISTANCE])
_DRAWN_OUT: Final = frozenset([EXPOSURE_ND, DEPTH_OF_FIELD, CHAIN, FOCUS_VERDICT])  # where tubes or a helicoid stand

_ASKING: Final = (
    "how",
    "which",
    "what",
    "can",
    "will",
    "why",
    "where",
    "how-many",
    "takes",
    "other-bodies",
    "how-much",
    "how-close",
    "need-adapter",
)

WANTED: Final = frozenset(["magnification", "field", MOTIF, SIDES])  # what pieces are chosen for


def asks_remedy(heard: Heard, before: Question) -> bool:
    """'how do i get infinity', 'what can go in between' after a lens on a body: what would put that chain right."""
    cast, between = heard.cast, heard.tells("between-asked")
    pieces = any(part.thickness or part.mounts or not between for part in cast.pieces)  # 'which spacer goes under it'
    named = cast.lenses or cast.bodies or pieces or heard.readings.values
    asked = heard.tells("how") and heard.tells("infinity") and heard.tells("get") and not heard.tells("how-far")
    pair = any(lens.ids for lens in before.lenses) and any(body.ids for body in before.bodies)
    return (asked or between) and pair and not named and before.intent in BY_SEAT


def sized(before: Question) -> bool:
    """Whether a ring of before is told by its length, or by what it is off: that is to be shimmed or taken off."""
    # behind a lens measured from flange to image a tube is what seats it
    kinds = ("adapter", SPACER) if before.said("flange_to_image") is not None else ("adapter",)
    return before.said("thickness") is not None or any(
        one.piece in kinds and one.thickness_mm is not None and any(one.thickness_mm) for one in before.adapters
    )


def ends_at(heard: Heard, before: Question) -> bool:
    """'mine stops at 40 m' after a lens on a body: far away that is no near end, but how far short infinity lies."""
    said = any(token.kind == "MEASURE" and token.value == _NEAREST for token in heard.line.tokens)
    far = (heard.readings.distance_mm or 0.0) >= _FAR_MM
    cast = heard.cast
    others = cast.lenses or cast.bodies or cast.pieces or heard.readings.f_number is not None
    focal = before.lens is not None and before.lens.focal_length_mm is not None
    asks = heard.tells("how-close") or heard.tells("macro") or heard.tells("dof")
    return said and far and focal and not others and not asks and before.intent in OF_RING


def asks_depth(heard: Heard, before: Question) -> bool:
    """'depth?', 'how deep is it' after how close it comes, or past a ring asked for on the way: how much is sharp."""
    cast, told = heard.cast, heard.readings.values or heard.readings.distance_mm is not None
    said = any(DEPTH_SAID in token.groups for token in heard.line.tokens) and not (cast.lenses or cast.pieces or told)
    again = before.away is not None and before.intent in OF_RING and said and heard.tells("short")
    return (again or _of_close(heard, before, DEPTH_SAID)) and heard.weighed.best in _OF_DEPTH | {CHAIN}


def is_worn(before: Question) -> bool:
    """Whether a close-up lens of a told strength is before the lens."""
    return any(one.piece == CLOSE_UP_LENS and one.factor is not None for one in before.adapters)


def tubes_named(heard: Heard) -> bool:
    """Whether tubes are named, and nothing is told of them."""
    pieces = heard.cast.pieces
    return bool(pieces) and all(part.piece in DRAWN and part.thickness is None and not part.named for part in pieces)


def likened_to_tubes(heard: Heard, before: Question) -> bool:
    """'how long a tube would match it' after a close-up lens: what the answer of how close tells beside it."""
    asks_so = heard.weighed.best in (None, DIY_DIMENSION, CHAIN, MACRO_DISTANCE)
    return is_worn(before) and tubes_named(heard) and not (heard.cast.lenses or heard.cast.bodies) and asks_so


def asks_zone(heard: Heard, before: Question) -> bool:
    """'what do I set it to for the horizon', 'the nearest sharp thing then' after what is sharp: asked of that still.

    Where a lens stands on a body, 'does it reach infinity' asks of the two.
    """
    cast, readings = heard.cast, heard.readings
    named = any(not part.is_bare for part in (*cast.lenses, *cast.bodies, *cast.pieces, *cast.frames))
    told = readings.values.keys() - {"light"} or readings.f_number is not None or readings.distance_mm is not None
    if before.intent != DEPTH_OF_FIELD or named or told or heard.weighed.best not in _OF_ZONE or heard.tells("why"):
        return False
    pair = any(lens.ids for lens in before.lenses) and any(body.ids for body in before.bodies)
    sharp = heard.tells("focus") or any(SET_SO in token.groups for token in heard.line.tokens)
    set_where = heard.tells("where") and any(SET_SO in token.groups for token in heard.line.tokens)
    return any(map(heard.tells, _ENDS_ASKED)) or set_where or (heard.tells("infinity") and (sharp or not pair))


def asks_light(heard: Heard, before: Question) -> bool:
    """'f8, what happens to light' after how close a lens comes: what the extension costs in light."""
    if heard.weighed.best == COVERAGE:
        edges = any(EDGES_SAID in token.groups for token in heard.line.tokens)
        return not edges and _of_close(heard, before, DARK_SAID)  # 'how dark does that get'
    few = len([one for one in heard.line.tokens if one.kind not in ("JOIN", "DET", "STOP", "FILLER")]) <= MOST_SAID
    stop = before.f_number is not None and few and _of_close(heard, before, STOP_NAMED)  # 'and the stop?'
    return stop or (_of_close(heard, before, LIGHT_SAID) and heard.weighed.best in _OF_LIGHT)


def sizes_anew(heard: Heard, before: Question) -> bool:
    """'1:1', 'at half life size', '+1 instead' after the depth or the light there: the same is asked of that size."""
    cast, told = heard.cast, heard.readings.values.keys()
    pieces = bool(cast.pieces) and is_worn(before) and all(part.piece == CLOSE_UP_LENS for part in cast.pieces)
    close = before.said("magnification") is not None or any(one.piece in DRAWN for one in before.adapters)
    size = told == {"magnification"} and not cast.pieces and close
    others = cast.lenses or cast.bodies or cast.frames or heard.readings.distance_mm is not None
    idle = all(cue.tells in _OF_SIZE for cue in heard.cues) and not others
    return before.intent in (DEPTH_OF_FIELD, EXPOSURE_ND) and idle and (size or (pieces and not told))


def asks_field(heard: Heard, before: Question) -> bool:
    """'how wide is the patch I see on full frame' after how close a lens comes: the field there."""
    cast, tubes = heard.cast, any(one.piece in DRAWN for one in before.adapters)
    named = any(part.focal or part.mounts for part in cast.lenses) or cast.pieces or heard.readings.values
    asked = heard.tells("how-wide") or heard.tells("view-across")
    close = before.intent == MACRO_DISTANCE or (tubes and before.intent in (EXPOSURE_ND, DEPTH_OF_FIELD))
    return close and asked and not named and heard.readings.distance_mm is None and bool(before.lenses)


def _of_close(heard: Heard, before: Question, group: str) -> bool:
    """Whether a few words after how close a lens comes have a word of the group, and tell of no other thing."""
    cast, readings = heard.cast, heard.readings
    named = any(not part.is_bare for part in (*cast.bodies, *cast.pieces)) or any(
        part.focal or part.mounts for part in cast.lenses
    )
    said = any(group in token.groups for token in heard.line.tokens)
    told = readings.values or readings.distance_mm is not None
    drawn = before.said("extension") is not None or any(one.piece in DRAWN for one in before.adapters)
    close = before.intent == MACRO_DISTANCE or (before.intent in _DRAWN_OUT and drawn)
    return close and heard.tells("short") and said and not (named or told)


def puts_tube(heard: Heard) -> bool:
    """'and close up with a 20 mm tube' after a shim: what is so long sets nothing right, it brings the lens closer."""
    lengths = [part.thickness for part in heard.cast.pieces if part.piece in DRAWN and part.thickness is not None]
    return any(length[1] > _THICKEST_SHIM for length in lengths)


def is_to_be_seated(heard: Heard) -> bool:
    """'61 mm to the image, what goes between it and an E': a distance told beside a body is to be filled, not named."""
    told = "flange_to_image" in heard.readings.values
    return told and any(part.has_mount for part in heard.cast.bodies) and not heard.tells("identify")


def ranked_by(heard: Heard, before: Question) -> str | None:
    """'which is thinner', 'cheapest of the three', after a list 'thinnest first': by what the ways just told are
    ordered; None where it asks else."""
    ranks = [cue.tells.removeprefix(_RANK) for cue in heard.cues if cue.tells.startswith(_RANK)]
    cast = heard.cast
    named = (*cast.lenses, *cast.bodies, *(one for one in cast.pieces if not one.is_bare))
    several = (
        heard.tells("which")
        or heard.tells("better")
        or heard.tells("pick:all")
        or heard.tells("pick:both")
        or heard.tells("what-is")
        or heard.tells("how-much")
        or before.intent == LIST_FITS
    )
    told = heard.readings.values.keys() - {"numbers"} or heard.readings.distance_mm is not None
    return ranks[0] if ranks and several and not (named or told) else None


def is_left_so(heard: Heard, before: Question) -> bool:
    """'does it matter if I leave it' after by how much a ring is off: what comes of it, where no more is told."""
    others = any(part.mounts for part in heard.cast.lenses) if heard.tells("seat-shows") else heard.cast.lenses
    told = heard.readings.f_number is not None or heard.readings.values or others or heard.cast.pieces
    left = heard.tells("left-so") or (heard.tells("good") and heard.tells("brief"))  # 'is that worth it'
    # 'is that harmful to anything', of the seat; 'is that safe for the camera' is of what is put there
    harm = (heard.tells("harm-word") or heard.tells("damage")) and not heard.cast.bodies
    left = left or (harm and before.intent in _SHIMMED and all(cue.tells in _OF_HARM for cue in heard.cues))
    left = left or heard.tells("seat-shows")
    still = heard.tells("left-so") or heard.tells("seat-shows")
    off = before.intent in _SHIMMED or (before.intent in OF_RING and sized(before) and still)
    return off and bool(left) and not told and not heard.tells("which-stop")


def asks(heard: Heard) -> bool:
    return heard.tells("asked") or any(heard.tells(cue) for cue in _ASKING)


def is_by_tubes(heard: Heard, before: Question) -> bool:
    """Whether tubes stand between and no word is said of a shim: 'same tubes with the 45'."""
    tubes = any(one.piece in DRAWN and one.thickness_mm is not None for one in before.adapters)
    return tubes and before.intent not in _OF_SHIM and heard.weighed.weight("shim-calibration") <= 0


def saved_by_stop(heard: Heard, best: str | None, before: Question) -> bool:
    """'f4 enough?', 'from what stop' after a ring that is not as long as it should be: whether that forgives it."""
    if any(part.focal for part in heard.cast.lenses) and not (heard.tells("which-stop") or heard.tells(_CLOSES)):
        return False  # 'and a 135 f/2.8?' is another lens, and asks of no stop
    if best == DEPTH_OF_FIELD and heard.readings.distance_mm is not None:
        return False  # 'zone if i set 1.5m f5.6'
    off = sized(before)
    measured = before.distance_mm is not None or before.said("mark") is not None  # where it ends tells by how much
    ended = before.intent == FOCUS_VERDICT and measured
    off = off or ended or (before.intent in _SHIMMED and (measured or bool(told_as(before, ERROR))))
    told = heard.readings.f_number is not None or any(part.f_number and not part.focal for part in heard.cast.lenses)
    asked = heard.tells("which-stop") or heard.tells("f-stop") or told
    leant = best in _OF_SHIM and heard.weighed.weight("shim-calibration") <= 0
    other = heard.tells("dof") or heard.tells("exposure") or heard.tells("nd")
    asked, leant = asked or heard.tells(_CLOSES), leant or heard.tells(_CLOSES)  # 'would stopping down do instead'
    of_ring = before.intent in OF_RING or (before.intent == WHY and before.said("off") is not None)
    return off and of_ring and asked and not other and (best in OF_STOPS or leant)


def is_close(said: Question, before: Question, pieces: tuple[Thing, ...]) -> bool:
    """Whether a magnification that is wanted makes it a matter of how close: 'and if I want 1:1', then 'which tube'."""
    if said.said("magnification") is not None:
        return True
    return before.said("magnification") is not None and any(piece.piece in DRAWN for piece in pieces)


def went_on(heard: Heard, before: Question) -> str:
    """What a fragment without an intent of its own goes on with: after a reason or a name, the chain it was about."""
    if before.sought is not None:
        return "chain"  # 'and the knot?' after all of one's lenses asks of that one
    amount = heard.tells("how-much") or heard.tells("how-many")
    if (
        before.intent in _SHIMMED
        and heard.readings.f_number is not None
        and before.lenses
        and before.bodies
        and not amount
    ):
        return "focus-verdict"  # 'or just shoot at f8' after how much to take off
    if heard.tells("remedy") and before.intent in _ENDS and before.lenses and before.bodies:
        return "chain"  # 'would 18.9 fix it' after what a ring makes of the near end
    changed = heard.cast.bodies or heard.cast.pieces or heard.cast.without or heard.readings.limits
    return "chain" if before.intent in ASIDE and changed else before.intent


def doubted(text: str, before: Question, topic: str | None) -> Question:
    """The answer before is asked for its certainty, or for its reasons where `topic` is None."""
    return before.with_(text=text, intent=WHY, topic=topic, number=before.number, values=(), things=(), follows=True)


def mends_the_seat(heard: Heard, before: Question) -> bool:
    """'can i fix it myself' after infinity at a mark of the scale: by how much is known, so a shim is asked for."""
    told = before.said("mark") is not None or before.distance_mm is not None
    named = heard.cast.lenses or heard.cast.bodies or heard.cast.pieces or heard.readings.values
    plain = not (named or heard.tells("instead") or heard.readings.f_number or heard.readings.limits)
    return before.intent == SHIM_CALIBRATION and told and plain and heard.tells("remedy")
