"""What a follow-up asks of glass that has no iris, thread or focusing of its own: projector, enlarger, objective."""

from __future__ import annotations

from collections.abc import Callable
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COVERAGE,
    DIY_DIMENSION,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    IDENTIFY_MOUNT,
    MACRO_DISTANCE,
    SEATED,
    WHY,
)
from grammar.numbers.motifs import MOTIF
from grammar.questions import (
    BEST_CLOSE,
    BY_CABLE,
    C_OR_CS,
    ONLY_NEAR,
    PROJECTOR_IRIS,
    RELEASE,
    Question,
)
from grammar.telling import built
from grammar.things.casting import DRAWN, MOUNTLESS
from grammar.turns.spans import RANGED
from grammar.turns.turn_seen import Turn

_PROJECTOR, _OBJECTIVE = "projector", "objective"
_RING: Final = "adapter"  # as 'no focusing ring' is read
_UNFOCUSED: Final = "no focusing"  # trait of a lens
BY_APPARATUS: Final = "no-focusing-why"  # on lenses that have no focusing of their own
CLOSE_UP: Final = "focused-close-up"  # and on doing so close up
BY_HAND: Final = "magnify"  # the advice on focusing by hand
# cues beside 'how' and 'focus' that ask nothing more
_OF_FOCUS: Final = frozenset(
    ["how", "focus", "manual-focus", "again", "ok", "right", "good", "frame-size", "macro", "what", "can", "magnify",
     "it-is"]
)  # fmt: skip
_OF_FINDER: Final = frozenset([GEAR_SETTING, WHY])
_DRAWN: Final = ("magnification", "extension", "field")
# the advice on the iris that a kind of lens lacks
_NO_IRIS: Final = {_PROJECTOR: PROJECTOR_IRIS, _OBJECTIVE: "objective-iris"}
_FAR, _CLOSE = ("infinity", "end-far"), ("end-near", "how-close", "macro")
_ASKED: Final = ("how", "which", "will", "can", "what-if", "asked")
_OF_SEAT: Final = frozenset([FOCUS_VERDICT, CHAIN, WHY])
_NO_SEAT: Final = ("dimensions", "how-big", "how-close", "macro", "motif-said", "exposure", "cover")
_OF_MAKING: Final = frozenset([DIY_DIMENSION, GEAR_SETTING, IDENTIFY_MOUNT])
_COVER_GLASS: Final = "0.17"  # mm, as it is engraved
_EXTENDER: Final = "teleconverter"
_SUN: Final = "full-sun"
_PORTRAIT: Final = "head-and-shoulders"
_CABLED: Final = "iris-by-cable"  # trait of mounts
_OF_LIGHT: Final = ("shutter-said", "iso-said", "nd", "diffraction", "dof", "which-stop-set")


def stop_topic(heard: Heard, before: Question) -> str | None:
    """The advice on the iris of the lens spoken of, where it is asked or told that none can be worked."""
    lens = before.lens
    cabled = heard.tells("on-a-cable") and lens is not None and bool(heard.cast.having(_CABLED) & set(lens.ids))
    if cabled:
        return BY_CABLE
    told = heard.readings.f_number is not None or any(map(heard.tells, _OF_LIGHT)) or heard.cast.lenses
    by_cable = before.beside == GEAR_SETTING and lens is not None and bool(heard.cast.having(_CABLED) & set(lens.ids))
    if heard.tells("stop-asked") and by_cable and not told:
        return BY_CABLE  # 'can i get the opening to work' of the lens with a cable
    if not heard.tells("stop-asked") or told or lens is None:
        return None
    if lens.lens_kind == _PROJECTOR and heard.tells("can") and before.intent in SEATED:
        return None  # what was told of its iris is told again
    return _NO_IRIS.get(lens.lens_kind or "")


def best_stop_topic(heard: Heard, before: Question) -> str | None:
    """The advice on which stop is best close up; None where it is told what is to be sharp, or no close up is."""
    sized = before.said("magnification") is not None
    close = before.intent == MACRO_DISTANCE or sized or any(one.piece in DRAWN for one in before.adapters)
    told = heard.readings.values or heard.readings.distance_mm is not None or heard.readings.f_number is not None
    more = (
        any(not part.is_bare for part in heard.cast.lenses)
        or heard.cast.bodies
        or heard.cast.pieces
        or any(map(heard.tells, _OF_LIGHT))
    )
    return BEST_CLOSE if close and heard.tells("best-stop") and not (told or more) else None


def near_topic(heard: Heard, before: Question) -> str | None:
    """'far things are not sharp, near ones are' after a lens on a body: the advice on that, and no plain verdict."""
    cast, readings = heard.cast, heard.readings
    seen = heard.tells("blurry") and any(map(heard.tells, _FAR)) and any(map(heard.tells, _CLOSE))
    told = (
        readings.values or readings.distance_mm is not None or any(part.mounts for part in cast.lenses) or cast.pieces
    )
    asked = any(map(heard.tells, _ASKED)) or "?" in heard.text
    pair = any(one.ids for one in before.lenses) and bool(before.bodies)
    return ONLY_NEAR if seen and pair and heard.weighed.best in _OF_SEAT and not (told or asked) else None


def twin_topic(heard: Heard, before: Question) -> str | None:
    """'could it be that its a CS lens then' after a C lens that is sharp near alone: what sets apart these twins."""
    parts = heard.cast.lenses
    alone = len(parts) == 1 and bool(parts[0].mounts) and not (parts[0].focal or heard.cast.bodies or heard.cast.pieces)
    lens = before.lens
    if not alone or lens is None or before.beside != GEAR_SETTING or not heard.tells("could-be"):
        return None
    cabled = heard.cast.having(_CABLED)
    both = {*parts[0].mounts[0].ids[:1], *lens.ids[:1]}
    return C_OR_CS if cabled and both >= cabled else None


def release_topic(heard: Heard, before: Question) -> str | None:
    """'does the camera even shoot with that on' after a lens on a body: what it must be told for that."""
    more = heard.cast.lenses or heard.cast.pieces or heard.readings.values
    return RELEASE if heard.tells("shoots-at-all") and before.lenses and before.bodies and not more else None


def objective_topic(heard: Heard, before: Question) -> str | None:
    """'how deep is it sharp', 'does the 0.17 matter' of a microscope objective: the advice on that."""
    lens, told = before.lens, heard.readings.values
    if lens is None or lens.lens_kind != _OBJECTIVE or heard.cast.lenses or heard.cast.bodies or heard.cast.pieces:
        return None
    if told.get("numbers") == _COVER_GLASS:
        return "objective-cover"
    return "objective-depth" if heard.tells("dof") and not told and heard.readings.f_number is None else None


def topic_of(heard: Heard, before: Question) -> str | None:
    """The advice that answers it."""
    row = (stop_topic, best_stop_topic, near_topic, twin_topic, release_topic, objective_topic, focusing)
    return next((found for one in row if (found := one(heard, before)) is not None), None)


def _is_advised(turn: Turn) -> bool:
    return topic_of(turn.heard, turn.before) is not None


def holds_it(turn: Turn) -> bool:
    """'what do i need to hold it in front', 'how would that one be held' after anything of a lens: how it goes on."""
    cast, readings = turn.heard.cast, turn.heard.readings
    others = any(not part.is_bare for part in cast.lenses) or cast.frames
    told = readings.values or readings.distance_mm is not None or readings.f_number is not None
    asked = turn.tells("how-held") and not turn.tells("damage", "harm-word", "stuck", "why", "cover")
    pair = bool(turn.before.lenses) and bool(turn.before.bodies or any(part.has_mount for part in cast.bodies))
    return asked and pair and not (others or told)


def shares_the_tubes(turn: Turn) -> bool:
    """'will the same tubes do for that one' after another lens, with none of a told length: how long hers must be."""
    cast, before = turn.heard.cast, turn.before
    tubes = bool(cast.pieces) and all(part.piece in DRAWN and part.is_bare for part in cast.pieces)
    sized = any(one.piece in DRAWN and (one.thickness_mm or one.ids) for one in before.adapters)
    told = turn.heard.readings.values or cast.bodies or any(not part.is_bare and not part.focal for part in cast.lenses)
    return tubes and turn.tells("same") and bool(before.lenses and before.bodies) and not (sized or told)


def goes_in_a_helicoid(turn: Turn) -> bool:
    """'could i put it in a helicoid, 17 to 31 mm' after what is to be made: whether it reaches far on that."""
    pieces = turn.heard.cast.pieces
    ranged = len(pieces) == 1 and pieces[0].piece in RANGED and pieces[0].thickness is not None
    asked = turn.tells("can", "will", "ok", "get", "put-in", "what-if", "is-a") and not turn.tells(*_NO_SEAT)
    plain = turn.before.lens is not None and turn.before.lens.lens_kind == _PROJECTOR
    was = (turn.was in _OF_MAKING or plain) and turn.best in (DIY_DIMENSION, None, CHAIN, FOCUS_VERDICT, BUY_PLAN)
    return was and ranged and asked and bool(turn.before.lenses and turn.before.bodies)


def asks_length_for_far(turn: Turn) -> bool:
    """'how long a tube for far with the 80': what stands between so that far things are sharp, and nothing close up."""
    tubes = any(part.piece in DRAWN and part.is_bare for part in turn.heard.cast.pieces)
    far = turn.tells("infinity", "end-far", "far-asked") and not turn.tells("how-close", "macro", "how-big")
    pair = any(one.ids for one in turn.before.lenses) and bool(turn.before.bodies)
    return tubes and far and pair and turn.tells("dimensions") and not turn.heard.readings.values


def focusing(heard: Heard, before: Question) -> str | None:
    """'so how do i focus' after a lens on a body: the advice on that; None where it asks else."""
    asked = heard.tells("how") and heard.tells("focus") and all(cue.tells in _OF_FOCUS for cue in heard.cues)
    asked = asked or (heard.tells("no-focusing") and not any(map(heard.tells, _ASKED)))
    told = any(part.mounts or part.thickness or part.piece != _RING for part in heard.cast.pieces)  # 'no focusing ring'
    named = heard.cast.lenses or heard.cast.bodies or told or heard.cast.frames
    more = heard.readings.values or heard.readings.distance_mm is not None or heard.readings.f_number is not None
    spoken_of = before.lenses or before.bodies or before.intent in _OF_FINDER
    if not asked or named or more or not spoken_of:
        return None
    close = before.intent == MACRO_DISTANCE or any(before.said(key) is not None for key in _DRAWN)
    lens = before.lens
    still = lens is not None and (lens.lens_kind in MOUNTLESS or _UNFOCUSED in lens.traits)
    still = still or heard.tells("no-focusing")
    ranged = any(one.piece in RANGED for one in before.adapters)
    return CLOSE_UP if close else BY_APPARATUS if still and not ranged else BY_HAND


def with_power(heard: Heard, before: Question) -> Heard:
    """'and a 4x 0.10 too' after a microscope objective: what such a one magnifies by, and no extender."""
    cast, lens = heard.cast, before.lens
    powers = [part for part in cast.pieces if part.piece == _EXTENDER and part.noun.head is None and part.factor]
    if lens is None or lens.lens_kind != _OBJECTIVE or len(powers) != 1:
        return heard
    values = dict(heard.readings.values)
    values["magnification"] = f"{powers[0].factor:g}"
    if values.get("numbers", "").startswith("0."):
        values["na"] = values.pop("numbers")
    pieces = [part for part in cast.pieces if part is not powers[0]]
    return replace(heard, cast=replace(cast, pieces=pieces), readings=replace(heard.readings, values=values))


def lit_by_the_sun(turn: Turn) -> bool:
    """'sun outside, video, what do i do' after what a lens lights: how much light is held back there."""
    told = turn.heard.readings.values.get("light") == _SUN and turn.tells("what", "how", "films", "remedy", "exposure")
    feared = turn.tells("damage", "worry", "harm-word", "at-the-sun", "laid-in-sun", "ok", "dof", "flare")
    lens = turn.before.lens is not None and turn.heard.readings.distance_mm is None
    return (
        told and lens and not feared and turn.best in (None, turn.was, COVERAGE, CHAIN) and not turn.heard.cast.lenses
    )


def takes_portraits(turn: Turn) -> bool:
    """'can i do portraits with it' after a lens on a body: how far away one stands for head and shoulders."""
    cast, lens = turn.heard.cast, turn.before.lens
    more = cast.lenses or cast.bodies or cast.pieces or turn.heard.readings.values
    far = turn.heard.readings.distance_mm is not None or turn.tells("dof", "better", "back-blurred", "wants-blur")
    asked = turn.tells("can", "how-far", "how", "ok", "will", "good", "usable")
    return turn.tells("portraits") and asked and lens is not None and bool(lens.focal_length_mm) and not (more or far)


def with_portrait(heard: Heard, intent: str) -> Question:
    """The question by its own words, with head and shoulders as what is to be photographed where portraits are."""
    said = built(heard, intent)
    if said.intent != MACRO_DISTANCE or not heard.tells("portraits") or said.said(MOTIF) is not None:
        return said
    return said.with_(values=(*said.values, (MOTIF, _PORTRAIT)))


# what may be seen, and what is asked then; the first that is seen tells
ROW: Final[tuple[tuple[Callable[[Turn], bool], str], ...]] = (
    (_is_advised, GEAR_SETTING),
    (holds_it, CHAIN),
    (lit_by_the_sun, EXPOSURE_ND),
    (takes_portraits, MACRO_DISTANCE),
    (shares_the_tubes, DIY_DIMENSION),
    (goes_in_a_helicoid, FOCUS_VERDICT),
    (asks_length_for_far, DIY_DIMENSION),
)
