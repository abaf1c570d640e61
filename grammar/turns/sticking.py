"""What a question leaves for the one after it: values, pieces and limits stay while the same matter is pursued."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CARD,
    CHAIN,
    CLOSE_UPS,
    COMPARE,
    COVERAGE,
    CROP_EQUIVALENT,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    DRAW,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    LIST_FITS,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    PICTURED,
    SEATED,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.numbers.motifs import MOTIF, SIDES
from grammar.questions import ALL, BODY_REGISTER, FILTER, OFF, RING, Limits, Question, Thing
from grammar.readings.bench_work import SHEETS
from grammar.readings.kept_readings import mm
from grammar.things.casting import DRAWN, OPTICAL, SPACER
from grammar.turns.glass_joined import glass_joined, is_behind_ring
from grammar.turns.measured_anew import BRIGHTER
from grammar.turns.put_close import PUT_CLOSE, is_close_still, without_tubes_far
from grammar.turns.spans import RANGED
from grammar.turns.tubes_added import sized_last, with_tube_told

# what a chain does: here the pieces of before still stand between lens and body
PLACED: Final = frozenset(
    [CHAIN, FOCUS_VERDICT, MACRO_DISTANCE, EXPOSURE_ND, DEPTH_OF_FIELD, DRAW, CARD, WHY, HAZARD,
     SHIM_CALIBRATION, COMPARE]
)  # fmt: skip
_LENS_SEEN: Final = frozenset([COVERAGE, CROP_EQUIVALENT, GEAR_SETTING])  # here only those with glass matter
_BOUGHT: Final = frozenset([*OPTICAL, "electronic-adapter", "helicoid"])  # kinds of ring that cost what others do not
_STANDING: Final = CLOSE_UPS | {FOCUS_VERDICT, CHAIN}  # here glass and tubes stand one behind the other
_CORRECTIVE: Final = "corrective-glass"
_INSTEAD: Final = "instead"  # the cue of what stands in a thing's place
# what was measured of a lens
_TARGET, _LIGHT = "target", "light"
_LIT: Final = {"moon": "moon", "stars": "starry-sky"}  # what is far off -> the light it is exposed for by
_OF_LENS: Final = frozenset(["flange_to_image", "rear_reach", "barrel", "circle", "thread", "pitch", "zoom", "squeeze"])
_ZOOM: Final = "zoom"  # kind of a lens, and the key of its range
_OBJECTIVE: Final = "objective"
_ENGRAVED: Final = frozenset(["magnification", "na"])  # on the barrel of a microscope objective
# what a ring that is off by so much goes on to decide
_OF_SEAT: Final = frozenset([CHAIN, FOCUS_VERDICT, SHIM_CALIBRATION, WHY, MACRO_DISTANCE, DEPTH_OF_FIELD])
_OF_RING: Final = frozenset(["thickness", OFF, "nominal", "glass"])
_FULL: Final = "35mm-full-frame"
_FRAME: Final = frozenset(["crop", "area"])
_MODE: Final = frozenset(["mode", BODY_REGISTER])  # true of the body, as long as that is talked of
_BY_HAND: Final = frozenset(["circle", "rear_reach", "barrel"])  # measured of one lens, and of no other
FILLED: Final = frozenset(["magnification", "field", MOTIF, SIDES])  # of these only what was told last holds
_OF_CLOSE: Final = FILLED | {"extension", "image_distance", "close_focus", "front_glass", "travel"}
_TURNED: Final = frozenset(["frame_rate", "angle"])
_CHOSEN: Final = frozenset([CHAIN, LIST_FITS, BUY_PLAN, COMPARE])  # here ways are picked that still reach so far
CHOICE: Final = "ring_choice"  # key of the rings told, of which one is to be chosen
_TAPED, _AT = "front_glass", " at "
_COUNTED: Final = frozenset([BUY_PLAN, SHIM_CALIBRATION, EXPOSURE_ND, DIY_DIMENSION, DEPTH_OF_FIELD])


def lasting(question: Question) -> Question:
    """The question as it is leant on: without the ring that was only asked for, and numbers that meant nothing."""
    off, cut = question.said("thickness") is not None, question.intent == DIY_DIMENSION
    # the ring that is too thick is no ring asked for; 'how long must the tube be': none of that length stands there
    gone = [one for one in question.adapters if _is_asked_for(one) or (cut and one.piece == SPACER and is_open(one))]
    pieces = tuple(one for one in question.adapters if off or one not in gone)
    values = question.rest(SHEETS, *(() if question.intent in _COUNTED else ("numbers",)))
    chosen = question.intent == COMPARE and question.said(CHOICE) is not None  # which of two rings holds infinity
    question = question.with_(intent=FOCUS_VERDICT if chosen else question.intent, adapters=pieces, values=values)
    return with_tube_told(question)


def _is_asked_for(piece: Thing) -> bool:
    """Whether nothing is told of it: 'which ring', 'do I need an adapter'."""
    return piece.piece == "adapter" and is_open(piece)


def is_open(piece: Thing) -> bool:
    """Whether it is told by its kind alone: 'which tube', 'a helicoid'."""
    told = (piece.ids, piece.thickness_mm, piece.factor, piece.steps, piece.front, piece.rear)
    return not any(told)


def kept_pieces(
    said: Question, same_lens: bool, same_mount: bool, same_body: bool, before: Question
) -> tuple[Thing, ...]:
    """The pieces of before: a ring stays with the lens that it was named for, tubes while they stand between."""
    pieces, intent = before.adapters, said.intent
    if not (same_lens and same_body) and not is_close_still(said, before):
        pieces = tuple(one for one in pieces if one.piece not in PUT_CLOSE or one.ids or one.front or one.rear)
    if before.intent == LOOK_ALIKE:
        # 'can I use my M42 ring, both are 42': what was only set against the lens has not been put on it
        prior = before.prior
        pieces = prior.adapters if prior is not None and prior.lenses == before.lenses else ()
    if not same_mount and intent != before.intent:  # what was only tried behind another lens
        pieces = tuple(one for one in pieces if one.piece not in OPTICAL or one.ids or one.front or one.rear)
    if not same_lens:
        pieces = tuple(one for one in pieces if one.piece in DRAWN or not (is_open(one) and before.follows))
    if not same_mount:
        cut = _is_named(before.lenses)
        pieces = tuple(
            one for one in pieces if is_behind_ring(one, before) or not (one.front or (cut and _is_cut(one)))
        )
    if not same_body:
        pieces = tuple(
            one for one in pieces
            if not (one.front or one.rear or (_is_cut(one) and _is_named(before.lenses) and _is_named(before.bodies)))
        )  # fmt: skip
    if intent in PLACED:  # glass that makes up for the register of one body does so on no other
        return tuple(one for one in pieces if same_body or intent not in SEATED or one.piece != _CORRECTIVE)
    matter = OPTICAL | DRAWN if intent in _LENS_SEEN else _BOUGHT if intent == BUY_PLAN else frozenset()
    return tuple(one for one in pieces if one.ids or one.front or one.piece in matter)


def set_against(heard: Heard, said: Question, before: Question) -> tuple[Thing, ...]:
    """'if it did screw in, would infinity be right' after a ring that was only set against the lens: it is put on."""
    aside = before.prior if before.intent == HAZARD and before.prior is not None else before
    return aside.adapters if aside.intent == LOOK_ALIKE and heard.tells("put-so") and not said.adapters else ()


def without_close_rings(heard: Heard, said: Question, kept: tuple[Thing, ...], before: Question) -> tuple[Thing, ...]:
    """'25 mm of ring then' after a 10 mm ring behind a lens on no body: so much extension takes that ring's place."""
    kept = without_tubes_far(heard, said, kept)
    sized = said.said("magnification") is not None or (not said.adapters and sized_last(before))
    if sized and said.intent in (EXPOSURE_ND, DEPTH_OF_FIELD):
        return tuple(one for one in kept if one.piece not in DRAWN)  # 'and at 1:1' after what a tube costs in light
    if said.said("extension") is None or heard.tells("adding") or before.intent != MACRO_DISTANCE or before.bodies:
        return kept
    return tuple(one for one in kept if one.piece != RING or one.ids or one.front or one.rear)


def _is_cut(piece: Thing) -> bool:
    """Whether it is a ring of a told length, which joins the mounts that it was told with and no others."""
    return piece.piece == RING and piece.thickness_mm is not None


def _is_named(things: tuple[Thing, ...]) -> bool:
    return any(thing.ids for thing in things)


def pieces_now(heard: Heard, kept: tuple[Thing, ...], said: tuple[Thing, ...], intent: str) -> tuple[Thing, ...]:
    """The pieces that stand now: what is told takes the place of its own sort alone.

    A filter goes before the lens; 'with a 1.4x' after a tube leaves the tube, 'a 36 mm tube' the reducer.
    """
    if all(piece.piece == FILTER for piece in said):
        return (*kept, *said)
    joined = glass_joined(heard, said, kept)
    if joined:
        return joined
    if heard.tells(_INSTEAD) or intent not in _STANDING:
        return said
    if intent in CLOSE_UPS and all(map(_is_asked_for, said)) and "thickness" in heard.readings.values:
        return (*(one for one in kept if one.piece in DRAWN), *said)  # 'the ring is 0.1 too thick' behind a tube
    if all(piece.piece in OPTICAL for piece in said):
        return (*(one for one in kept if one.piece in DRAWN and one.thickness_mm is not None), *said)
    tubes = [n for n, one in enumerate(kept) if one.piece == SPACER and one.thickness_mm is not None]
    drawn = any(one.piece in RANGED and one.thickness_mm is not None for one in kept)
    if drawn and len(said) == len(tubes) == 1 and said[0].piece == SPACER and said[0].thickness_mm is not None:
        return (*kept[: tubes[0]], said[0], *kept[tubes[0] + 1 :])  # 'the tube is 15' beside a helicoid
    if all(piece.piece in DRAWN for piece in said):
        stay = [one for one in kept if one.piece in OPTICAL or (one.piece == RING and one.front and one.rear)]
        return (*(one for one in stay if one not in said), *said)  # the ring between the two mounts stays too
    return said


def set_against_plain(said: Question, before: Question) -> Question:
    """'is it worth it against a plain ring' after a reducer: that is what the ring is set against."""
    glass = tuple(piece for piece in before.adapters if piece.piece in OPTICAL)
    plain = said.adapters and all(_is_asked_for(piece) for piece in said.adapters)
    if not glass or not (plain or not said.adapters):
        return said
    limits = replace(said.limits, without_glass=False)  # it is what is asked about, and no condition
    return said.with_(adapters=(*glass, *said.adapters), limits=limits)


def kept_values(intent: str, lenses: tuple[Thing, ...], before: Question, said: Question) -> dict[str, str]:
    """What was told before: all of it while the same is asked, else what was measured of the lens, while it is that."""
    values = dict(before.values)
    if intent == CARD:  # it tells of light and shutter too, so it keeps those of every kind of question
        gone = {"file", ALL} if said.lenses or said.bodies else {"file"}
        return {key: text for key, text in values.items() if key not in gone}
    if "thickness" in values and before.off_word:
        values[OFF] = before.off_word
    if said.said("thickness"):
        values.pop(OFF, None)
    values = {key: text for key, text in values.items() if key not in _overtaken(said)}
    if _TAPED in values and _AT not in values[_TAPED]:
        # what was taped holds for the pieces it was taped with, whatever stands there now
        stood = sum(thing.thickness_mm[1] for thing in before.adapters[:1] if thing.thickness_mm is not None)
        values[_TAPED] += f"{_AT}{mm(stood)}" if stood else ""
    aim = said.said(_TARGET) or values.get(_TARGET)
    lit = {_LIGHT: _LIT[aim]} if intent == EXPOSURE_ND and aim in _LIT else {}
    alike = [one.ids for one in lenses] == [one.ids for one in before.lenses]
    if not alike and any(one.lens_kind == _OBJECTIVE for one in before.lenses):
        values = {key: text for key, text in values.items() if key not in _ENGRAVED}
    zooms = [any(one.lens_kind == _ZOOM for one in row) for row in (before.lenses, lenses)]
    if not zooms[1] and ((zooms[0] and _focals(lenses) != [None]) or not alike):
        values.pop(_ZOOM, None)  # 'and the 16?' after a zoom
    if intent == before.intent:
        held = _BY_HAND if _is_another(lenses, before) else frozenset()
        return lit | {key: text for key, text in values.items() if key not in held}
    same = alike and not _is_another(lenses, before)
    # a lens whose mount was not known is still that lens when a ring tells it
    same = same or _focals(lenses) == _focals(thing for thing in before.lenses if not thing.ids) != [None]
    framed = {intent, before.intent} <= PICTURED | {EXPOSURE_ND, MACRO_DISTANCE} and not said.bodies
    framed = framed and all(thing.id == _FULL for thing in said.things if thing.kind == "format")  # 'in ff' likens it
    objective = same and any(one.lens_kind == _OBJECTIVE for one in lenses)
    by = (
        (framed, _FRAME),
        (same, _OF_LENS),
        (objective, _ENGRAVED),
        (intent in CLOSE_UPS, _OF_CLOSE),
        (intent in _OF_SEAT, _OF_RING),
    )
    kept = _MODE.union(*(keys for holds, keys in by if holds))
    return lit | {key: text for key, text in values.items() if key in kept}


def _is_another(lenses: tuple[Thing, ...], before: Question) -> bool:
    """Whether one lens is told of now, and another was before: what was measured of that is not measured of this."""
    new, old = _focals(lenses), _focals(before.lenses)
    zoom = any(thing.lens_kind == "zoom" for thing in before.lenses)
    return len(new) == len(old) == 1 and None not in (*new, *old) and new != old and not zoom


def _focals(things: Iterable[Thing]) -> list[float | None]:
    return [thing.focal_length_mm for thing in things]


def _overtaken(said: Question) -> frozenset[str]:
    """What no longer holds: another tube makes another magnification, another field too."""
    if any(thing.thickness_mm is not None for thing in said.adapters):
        ring = any(one.piece in (RING, "recessed") and one.thickness_mm for one in said.adapters)
        return FILLED | {"extension"} | ({"thickness", OFF} if ring else frozenset())
    keys = {key for key, _ in said.values}
    if said.limits.without_glass and said.adapters and all(map(_is_asked_for, said.adapters)):
        return FILLED | {"extension", "travel"}  # 'back to the plain ring': nothing is drawn out behind it
    timed = frozenset(["shutter"]) if keys >= _TURNED else frozenset()  # the angle at a rate is the time
    if said.distance_mm is not None:  # 'and 150 mm away' after so much before the front glass, 'stops at 12 m' now
        timed |= {_TAPED, "mark"} if said.intent == SHIM_CALIBRATION else {_TAPED}
    timed |= frozenset([BRIGHTER]) if "light" in keys else frozenset()
    timed |= frozenset(["filter_size"]) if "filter_thread" in keys else frozenset()
    timed |= frozenset(["extension", "na"]) if "magnification" in keys else frozenset()  # so much makes another size
    return timed | (FILLED if (FILLED | {"close_focus"}) & keys else frozenset())


def kept_limits(new: Limits, said: Question, before: Question, intent: str) -> Limits:
    """Where another thing is asked neither the order nor the count of what was shown goes on."""
    glazed = any(one.piece in OPTICAL for one in said.adapters)  # what was to be without glass is so no more
    on = [one for one in said.adapters if one.ids or not is_open(one)]  # what was taken off is on again
    now = {name for one in on for name in (one.piece, *one.ids)}
    most = None if on and before.limits.pieces == 0 else before.limits.pieces  # 'nothing between', and now that ring
    old = before.limits if intent == before.intent else replace(before.limits, best=None, cheapest=False)
    measured = said.said("thickness") is not None or any(one.thickness_mm for one in said.adapters)
    moved = bool(said.bodies) and [one.ids for one in said.bodies] != [one.ids for one in before.bodies]
    moved = moved or intent == LIST_FITS != before.intent  # 'so whats a better body for them'
    old = replace(old, with_glass=False) if moved else old  # what one body is too deep for, another has room for
    return Limits(
        new.pieces if new.pieces is not None else most,
        new.without_glass or (old.without_glass and not (new.with_glass or glazed)),
        new.with_glass or (old.with_glass and not new.without_glass),
        new.owned_only or old.owned_only,
        new.price_usd if new.price_usd is not None else old.price_usd,
        tuple(dict.fromkeys((*(name for name in old.without if name not in now), *new.without))),
        tuple(name for name in dict.fromkeys((*old.using, *new.using)) if name not in new.without),
        new.at_least or (old.at_least if intent in _CHOSEN and not measured else None),
        new.best or old.best,
        new.cheapest or old.cheapest,
    )
