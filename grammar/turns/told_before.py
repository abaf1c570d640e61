"""A number typed that the answer before has told: what it was of there it is of here too."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import (
    CHAIN,
    CROP_EQUIVALENT,
    DIY_DIMENSION,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    MACRO_DISTANCE,
    OF_FRAMES,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import Question, Thing
from grammar.things.casting import SPACER, Part
from grammar.things.standins import stands_in
from grammar.turns.answer_told import (
    CIRCLE,
    LACKING,
    LIKENED,
    MADE_WITHIN_MM,
    RIGHT,
    SEAT,
    SHIFT,
    SOLD_WITHIN_MM,
    VIEW,
    told_as,
)
from grammar.turns.put_between import tube_for_gap
from grammar.words.groups import AMOUNT, LIGHT_SAID, TURNS_SAID
from grammar.words.mentioned import mentioned
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_TYPED_IN: Final = "stabilisation"  # the cue of a number that the body is told
_GAUGED: Final = "flange_to_image"
_ON: Final = " on "
_INSTEAD: Final = "instead"  # the cue of what stands in a thing's place
_LIKE: Final = 0.1  # share by which a stop told is off the one that was worked out
_SO: Final = ("so ", "really ", "then ")
_NEAR: Final = 0.04  # share by which a ring at hand may differ from the right one, where it is long
_ROUNDED: Final = 0.015  # of a view, as a share: told without its decimals
_MADE_NEAR: Final = 0.35  # mm, by which a ring may come out other than it should be
_SHORTEST_LENS: Final = 3.0  # mm
_SEATED: Final = frozenset([CHAIN, FOCUS_VERDICT, WHY, DIY_DIMENSION])
_COME_OUT: Final = _SEATED | {HAZARD, MACRO_DISTANCE}  # what may come out alike for two
_LEAST_LENS: Final = 12.0  # mm, from which a whole length is rather that of a lens
_NUMBERS: Final = frozenset(["NUMBER", "LENGTH", "FOCAL", "RANGE"])
_ELSEWHERE: Final = "other-source"  # what a text mentions that tells what is printed elsewhere
_LEAST_REGISTER, _MOST_REGISTER = 5.0, 130.0  # mm


def likens_stop(heard: Heard, before: Question) -> bool:
    """'so f4 exposure?' after f/2 that has the depth of f/4 on full frame, 'is it darker?': whether light changes."""
    cast, stop = heard.cast, heard.readings.f_number
    stops = [part.f_number for part in cast.lenses if part.is_stop_alone]
    stop = stops[0] if stop is None and stops else stop
    named = len(cast.lenses) > len(stops) or cast.bodies or cast.pieces or cast.frames or heard.readings.values
    glass = any(one.factor is not None for one in before.adapters)
    if named or glass or before.intent != CROP_EQUIVALENT or heard.tells("dof"):
        return False
    lit = any(LIGHT_SAID in token.groups for token in heard.line.tokens) or heard.tells("exposure")
    if stop is None:
        return lit and heard.tells("short")
    own = before.lens.f_number if before.lens is not None else None
    alike = any(abs(stop / value - 1) <= _LIKE for value in told_as(before, LIKENED))
    doubted = lit or heard.tells("metering") or heard.tells("it-is") or heard.text.casefold().startswith(_SO)
    return doubted and (alike or (lit and stop == own))


def by_number_told(heard: Heard, before: Question, phrases: Mapping[str, tuple[str, ...]]) -> Question | None:
    """What is asked of a number that the answer told, or that is set against one; None where it is neither."""
    return _in_turns(heard, before) or _rivalled(heard, before, phrases)


def _in_turns(heard: Heard, before: Question) -> Question | None:
    """'turns of the thread?' after how far glass moves the image: so far is what the thread is to move."""
    shift = next(iter(told_as(before, SHIFT)), None)
    asked = heard.tells("turns-q") or any(TURNS_SAID in token.groups for token in heard.line.tokens)
    cast = heard.cast
    told = any(not part.is_bare for part in (*cast.lenses, *cast.bodies, *cast.pieces)) or heard.readings.values
    if shift is None or not asked or told:
        return None
    way = (("travel", f"{abs(shift):.4g} mm"),)
    return before.with_(text=heard.text, intent=SHIM_CALIBRATION, values=way, adapters=(), things=(), follows=True,
                        wants="", number=None, instead=())  # fmt: skip


def _rivalled(heard: Heard, before: Question, phrases: Mapping[str, tuple[str, ...]]) -> Question | None:
    """'sure? another list says 45.5' after a lens on a body: what is printed elsewhere of their registers.

    Not what is near to the ring that was told: that is a length of the ring. `phrases`: those listened for, by key.
    """
    numbers = [token for token in heard.line.tokens if token.kind in _NUMBERS and not token.text.isalpha()]
    told = numbers[0].numbers[0] if len(numbers) == 1 and numbers[0].unit in ("", "mm") else 0.0
    pair = any(one.ids for one in before.lenses) and any(one.ids for one in before.bodies)
    if not pair or before.intent not in _SEATED or not _LEAST_REGISTER <= told <= _MOST_REGISTER:
        return None
    if heard.cast.pieces or not any(one.key == _ELSEWHERE for one in mentioned(heard.text, phrases)):
        return None
    if any(abs(told - value) <= SOLD_WITHIN_MM for value in told_as(before, RIGHT, LACKING)):
        return None
    return before.with_(text=heard.text, intent=CHAIN, follows=True, wants="", number=None, instead=())


def without_view(heard: Heard, before: Question) -> Heard:
    """'so the stabiliser gets 77' after 'frames like 76.3 mm': the view told, which is no other lens."""
    typed_in = heard.tells(_TYPED_IN) or before.intent == GEAR_SETTING
    views = told_as(before, VIEW) if typed_in else []
    lens, cast = before.lens, heard.cast
    if lens is None or lens.focal_length_mm is None or len(cast.lenses) != 1 or not _is_length(cast.lenses[0]):
        return heard
    told = cast.lenses[0].focal or 0.0
    is_view = any(abs(told - one) <= max(0.6, _ROUNDED * one) for one in views) and told != lens.focal_length_mm
    return replace(heard, cast=replace(cast, lenses=[])) if is_view else heard


def asks_whence(heard: Heard, before: Question) -> bool:
    """'why is the circle 13', 'where does the 13 come from' after whether a lens covers: a number of that answer."""
    if not (heard.tells("why") or heard.tells("whence")):
        return False
    seated = before.intent in _SEATED
    ends = told_as(before, RIGHT if seated else CIRCLE)
    said = [number for token in heard.line.tokens if token.kind in _NUMBERS for number in token.numbers]
    rough = _NEAR if seated else MADE_WITHIN_MM  # 'where does a 28 end' beside a ring of 27.76 mm asks of a lens
    near = all(any(abs(one - end) <= (rough if one == int(one) else _NEAR) for end in ends) for one in said)
    return bool(said and ends) and near and (before.intent in OF_FRAMES or (seated and heard.tells("whence")))


def wonders_why_same(heard: Heard, before: Question) -> bool:
    """'same number? how come', 'again 24, is that a mistake' after a lens on two bodies, or two lenses on one."""
    cast, said = heard.cast, [token for token in heard.line.tokens if token.kind in _NUMBERS]
    parts = (*cast.lenses, *cast.bodies, *cast.pieces)
    named = any(part.has_mount_or_kind or part.named for part in parts) or len(said) > 1
    near = [one for one in told_as(before, RIGHT) if said and abs(one - said[0].numbers[0]) <= MADE_WITHIN_MM]
    two = bool(before.elsewhere) or len({one.ids for one in before.known}) > 1
    wondered = heard.tells("same-said") and heard.tells("wondered-at")
    return wondered and two and not named and (not said or bool(near)) and before.intent in _COME_OUT


def without_number_told(heard: Heard, before: Question) -> Heard:
    """What is heard without the number whose reason is asked for: it is no other lens, and no circle measured."""
    if not (asks_whence(heard, before) or _judges_ring(heard, before) or wonders_why_same(heard, before)):
        return heard
    rest = {
        key: text
        for key, text in heard.readings.values.items()
        if key not in ("circle", "numbers", "length", "thickness")
    }
    cast = replace(heard.cast, lenses=[part for part in heard.cast.lenses if part.has_mount_or_kind], lengths=[])
    return replace(heard, cast=cast, readings=replace(heard.readings, values=rest))


def _judges_ring(heard: Heard, before: Question) -> bool:
    """'8 mm is plenty, why not', 'isn't 2 mm very thin' after the rings of that length that were told."""
    said = [token for token in heard.line.tokens if token.kind in _NUMBERS and _is_in_mm(token)]
    rings = told_as(before, RIGHT, LACKING, SEAT)
    judged = heard.tells("why") or any(AMOUNT in token.groups for token in heard.line.tokens)
    one = len(said) == 1 and len(said[0].numbers) == 1 and judged and not heard.cast.pieces
    return one and any(abs(abs(value) - said[0].numbers[0]) <= _NEAR for value in rings)


def _is_in_mm(token: Token) -> bool:
    """Whether it is told in mm, or with decimals and no unit as lengths of rings are."""
    return token.unit == "mm" or (token.unit == "" and token.numbers[:1] != (float(int(token.numbers[0])),))


def fills_gap(heard: Heard, before: Question) -> bool:
    """Whether the tube that is told is as long as what was lacking: then it is asked what the seat is."""
    return tube_for_gap(heard, before) is not None


def piece_offered(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """'a 15 is what they sell' after '15.2 mm more would set it right': that piece, added to those of before."""
    cast, told = heard.cast, tube_for_gap(heard, before)
    parts = [*cast.lenses, *cast.lengths]
    if told is None and len(parts) == 1 and _is_length(parts[0]) and not (cast.pieces or cast.bodies):
        told = _told(parts[0])
    if told is None or not any(abs(told - value) <= SOLD_WITHIN_MM for value in told_as(before, LACKING)):
        return None
    return (*before.adapters, Thing(words=f"{told:g} mm tube", thickness_mm=(told, told), piece=SPACER))


def with_ring_offered(heard: Heard, before: Question) -> Heard:
    """'if I use a 3.5 mm one instead' after a ring of 3.09 mm: nearly as long, so it is that ring's length."""
    cast = heard.cast
    parts = [*cast.lenses, *cast.lengths]
    if len(parts) != 1 or cast.pieces or cast.bodies:
        return heard
    if _is_of_ring_held(parts[0], before):
        return _as_ring(heard, parts[0], _told(parts[0]) or 0.0)  # 'and with a bought 23.5' after a ring of 23.9 mm
    if before.adapters:
        return heard
    zoom = parts[0].zoom
    if zoom and _is_standing_in(parts[0]) and before.said(_GAUGED) is not None:
        # 'i have a 25-55 one' of a lens without focusing, whose flange to image was told
        drawn = replace(parts[0], sort="piece", piece="helicoid", zoom=None, focal=None, kinds=[], thickness=zoom)
        rest = {key: text for key, text in heard.readings.values.items() if key not in ("zoom", "numbers", "length")}
        cast = replace(cast, lenses=[], lengths=[], pieces=[drawn])
        return replace(heard, cast=cast, readings=replace(heard.readings, values=rest))
    token, told = parts[0].noun.first("LENGTH", "FOCAL", "NUMBER"), _told(parts[0])
    if told is not None and told < _SHORTEST_LENS and _is_standing_in(parts[0]) and before.intent in _SEATED:
        return _as_ring(heard, parts[0], told)  # 'a 1 mm one?' of rings: no lens is so short
    known = before.lens is not None and before.lens.focal_length_mm is not None
    if told is not None and known and told != int(told) and _is_right(told, before, _MADE_NEAR):
        return _as_ring(heard, parts[0], told)  # 'and with 27.6' of a ring of 27.46 mm
    if not heard.tells(_INSTEAD):
        return heard
    if told is None or not (_is_length(parts[0]) or _is_standing_in(parts[0])):
        return heard
    long = told >= _LEAST_LENS and not _is_standing_in(parts[0])
    if token is not None and told == int(told) and (token.kind != "LENGTH" or long):
        return heard  # 'a 28' is a lens, and '28 mm instead' is too
    if not any(abs(told - value) <= max(MADE_WITHIN_MM, _NEAR * value) for value in told_as(before, RIGHT)):
        return heard
    return _as_ring(heard, parts[0], told)


def _told(part: Part) -> float | None:
    token = part.noun.first("LENGTH", "FOCAL", "NUMBER")
    return part.focal or (token.numbers[0] if token is not None else None)


def _is_of_ring_held(part: Part, before: Question) -> bool:
    """Whether a bare decimal can only be how long a ring is, of a lens and a body that are known.

    It is nearly as long as the one that stands there, or no lens is so long and no stop so wide.
    """
    told, pieces = _told(part), before.adapters
    pair = any(one.ids and one.focal_length_mm for one in before.lenses) and any(one.ids for one in before.bodies)
    bare = _is_length(part) or _is_standing_in(part)
    if told is None or not (pair and bare) or before.intent == EXPOSURE_ND:
        return False
    if not pieces:
        halves = told * 2 == int(told * 2)  # of lenses there are 12.5 and 7.5
        return not halves and told not in STOPS and told > _SHORTEST_LENS and before.intent not in OF_FRAMES
    held = pieces[0].thickness_mm if len(pieces) == 1 and pieces[0].piece == "adapter" else None
    if held is None or told == int(told) or told == before.lenses[0].focal_length_mm:
        return False
    return _is_right(told, before, MADE_WITHIN_MM) or abs(told - held[0]) <= max(MADE_WITHIN_MM, _NEAR * held[0])


def _is_right(told: float, before: Question, within: float) -> bool:
    return any(abs(told - value) <= within for value in told_as(before, RIGHT))


def _as_ring(heard: Heard, part: Part, told: float) -> Heard:
    ring = replace(part, sort="piece", piece="adapter", focal=None, thickness=(told, told))
    rest = {key: text for key, text in heard.readings.values.items() if key not in ("numbers", "length")}
    cast = replace(heard.cast, lenses=[], lengths=[], pieces=[ring])
    return replace(heard, cast=cast, readings=replace(heard.readings, values=rest))


def _is_standing_in(part: Part) -> bool:
    kind = part.has_mount_or_kind and part.kinds != ["zoom"]
    return part.noun.head is not None and stands_in(part.noun.head) and not kind


def _is_length(part: Part) -> bool:
    """Whether it is a length and nothing else."""
    rest = (part.mounts, part.kinds, part.traits, part.formats, part.zoom, part.f_number, part.named, part.strange)
    return not any(rest) and not part.count and part.noun.head is None


def ring_case(cases: Iterable[str | None]) -> str | None:
    """The case of the one ring that an answer tells as 'om-mount on e-mount'; None where it tells of none, or more."""
    pairs = {one for one in cases if one is not None and _ON in one}
    return next(iter(pairs)) if len(pairs) == 1 else None


def still_right(now: Question, before: Question | None) -> tuple[tuple[str, float], ...]:
    """The ring that was told to be right for a lens on a body, as long as those two are spoken of."""
    if before is None or [one.ids for one in now.lenses] != [one.ids for one in before.lenses]:
        return ()
    same = [one.ids for one in now.bodies] == [one.ids for one in before.bodies]
    return tuple(row for row in before.told if row[0] == RIGHT) if same else ()
