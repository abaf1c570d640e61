"""What a follow-up measures or sets anew of what was told before: the ring, a tube, the circle, the stop, the light."""

from __future__ import annotations

import re
from math import log
from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CARD,
    CHAIN,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    DRAW,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    MACRO_DISTANCE,
    SHIM_CALIBRATION,
)
from grammar.numbers.depths_wanted import wants_length
from grammar.questions import Question, Thing
from grammar.readings.kept_readings import mm
from grammar.things.casting import DRAWN, Part
from grammar.things.standins import stands_in
from grammar.turns.closed_again import closed_again
from grammar.turns.lip_told import lip_told
from grammar.turns.number_roles import ON_AGAIN, length_of, put_on_it, tubes_off
from grammar.turns.set_behind import set_behind
from grammar.turns.spans import span_of
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_STOPS: Final = "stops"
BRIGHTER: Final = "brighter"  # the key of the stops by which the scene is lighter than the light that is named
_LIGHTER, _DARKER = "stops-lighter", "stops-darker"
_EARLY: Final = "infinity-early"
_STOPPING: Final = frozenset(["cant-focus", "stops-at"])  # cues of how far a lens focuses
_MARK: Final = "mark"
_SHIM: Final = "shim"  # the key of a shim that another lens asked for, by which infinity falls at a mark of this one
_THREAD: Final = "thread"
_ACROSS: Final = "diameter"  # of 'mine measures', whatever it is that was measured
_LENGTH: Final = re.compile(r"(\d+(?:\.\d+)?) mm")
_SEATED: Final = frozenset([CHAIN, FOCUS_VERDICT, DRAW, CARD, DIY_DIMENSION])
_SUPPOSING: Final = frozenset(["what-if", "what", "ok", "again", "same", "will", "can"])  # 'what if it says 4 m'
_REWORKED_MM: Final = 1.0  # so much is taken off a ring at most, or put on it
_MOST_METRES: Final = 100.0
_THE, _INSTEAD, _PUT_IN = "the", "instead", "put-in"
_THAT: Final = frozenset(["the", "that", "this"])
_TURNED: Final = ("turns", "angle")
_OF_THREADS: Final = frozenset(["identify", "look-alike", "which", "fits", "thing", "sharp", "get"])
_CUP: Final = "recessed"  # the kind of piece that is told by its depth
DEPTH: Final = "depth"
_TOO: Final = "too"
_DOUBTS: Final = ("sure", "whence", "isnt-that")
_FEW: Final = 8  # words of a line that tells one number


def piece_measured(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """'and with 20' after a 10 mm tube, 'will 17-31 do' after a helicoid: how long that piece is now."""
    cast = heard.cast
    counted = _counted_piece(heard, before)
    if counted is not None:
        return counted
    if cast.pieces or cast.bodies or len(cast.lenses) + len(cast.lengths) != 1:
        return None
    part = (*cast.lenses, *cast.lengths)[0]
    standing = stands_in(part.noun.head)  # 'with the 20 mm one'
    token = part.noun.mods[0] if len(part.noun.mods) == 1 and (standing or part.noun.head is None) else None
    if token is not None and token.kind == "LENGTH" and part.noun.role == "added" and before.lenses:
        tube = Thing(words=token.text, thickness_mm=(token.numbers[0], token.numbers[0]), piece="extension-tube")
        return (*before.adapters, tube)  # 'what if I add 10 mm'
    stood = before.adapters
    at = next((n for n, one in enumerate(stood) if _is_drawn(one, before)), None)
    if at is None:
        stood = (*before.adapters, *tubes_off(before))  # 'back on but a 5 mm'
        at = len(before.adapters) if len(stood) == len(before.adapters) + 1 else None
    if token is None or at is None or token.kind not in ("FOCAL", "LENGTH", "RANGE"):
        return None
    if heard.is_owned(token) or put_on_it(heard, token) or _is_that_lens(heard, part, before):
        return None  # 'same with my 28', 'with a 50 on it', 'sharp with the 50' after a 50 mm lens
    held = length_of(stood[at])
    put = part.noun.role == "with" or standing or heard.tells(_INSTEAD) or _is_that(heard, token, held)
    put = put or (at == len(before.adapters) and bool({ON_AGAIN, _PUT_IN} & heard.features))
    if token.kind != "RANGE" and (not put or held is None):
        return None
    one_more = standing and heard.text[: token.column - 1].rstrip().endswith(" a")  # 'and with a 50 mm one': a lens
    ends = span_of(stood[at]) or held or (0.0, 0.0)  # also where it is set to one length now
    apart = ends[0] < ends[1] and (one_more or not ends[0] <= token.numbers[0] <= ends[1])
    if token.kind != "RANGE" and held is not None and (apart or _is_rather_lens(token.numbers[0], held, before)):
        return None  # 'and a 100' after a helicoid of 17 to 31 mm, 'fully out with a 50' after that
    length = (min(token.numbers), max(token.numbers))
    named = {"kind": "", "ids": (), "words": f"{length[0]:g} mm ring"} if stood[at].ids else {}
    changed = replace(stood[at], thickness_mm=length, **named)
    return (*stood[:at], changed, *stood[at + 1 :])


def _is_drawn(piece: Thing, before: Question) -> bool:
    """A piece of which there are several lengths: tubes and the like, and close up a plain ring of no mounts too."""
    plain = piece.piece == "adapter" and length_of(piece) is not None and not (piece.front or piece.rear)
    return piece.piece in DRAWN or (plain and before.intent == MACRO_DISTANCE)


def _is_that_lens(heard: Heard, part: Part, before: Question) -> bool:
    """'with the 50' where a lens of that length was spoken of."""
    spoken = {one.focal_length_mm for one in (*before.known, *before.lenses)}
    led = [one for one in heard.line.tokens if one.column < part.noun.column and one.kind == "DET"][-1:]
    return part.focal in spoken and any(one.text.casefold() == _THE for one in led)


def _is_that(heard: Heard, token: Token, held: tuple[float, float] | None) -> bool:
    """'how much light does the 10 eat' after a tube of 10 mm: that one, and no other lens."""
    led = heard.led_by(token)
    the = led is not None and led.kind == "DET" and led.text.casefold() in _THAT
    return the and token.kind != "RANGE" and held == (token.numbers[0], token.numbers[0])


def _is_rather_lens(number: float, held: tuple[float, float], before: Question) -> bool:
    """Whether a length is nearer in ratio to the focal length of before than to a piece that cannot be so long."""
    focal = before.lenses[0].focal_length_mm if before.lenses else None
    if not focal or number <= 0 or (held[0] < held[1] and held[0] <= number <= held[1]):
        return False
    return abs(log(number / focal)) < abs(log(number / max(held[1], 0.1)))


def _counted_piece(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """'and if the second is 9.9' after a chain of rings that were each measured: how thick that one is."""
    cast, number, text = heard.cast, heard.readings.number, heard.readings.values.get("numbers", "")
    told = re.fullmatch(r"\d+(?:\.\d+)?", text)
    if told is None or cast.pieces or cast.bodies or cast.lenses or len(heard.readings.values) > 1:
        return None
    if number is None:  # 'and 20' after a 10 mm tube
        drawn = [n for n, one in enumerate(before.adapters, 1) if one.piece in DRAWN and one.thickness_mm is not None]
        number = drawn[0] if len(drawn) == 1 and heard.tells("brief") else 0
    number = number or _lapped(float(text), before)  # 'lapped it, 27.48 now'
    if not 1 <= number <= len(before.adapters) or before.adapters[number - 1].thickness_mm is None:
        return None
    least, most = before.adapters[number - 1].thickness_mm or (0.0, 0.0)
    if least < most and not least <= float(text) <= most:
        return None  # 'fully out with a 50' after a helicoid of 17 to 31 mm: a lens
    changed = replace(before.adapters[number - 1], thickness_mm=(float(text), float(text)))
    return (*before.adapters[: number - 1], changed, *before.adapters[number:])


def _lapped(told: float, before: Question) -> int:
    """Which piece of before is the one ring that is nearly so long, counted from 1; 0 where none is."""
    rings = [
        n for n, one in enumerate(before.adapters, 1)
        if one.piece == "adapter" and one.thickness_mm is not None and len(set(one.thickness_mm)) == 1
    ]  # fmt: skip
    if len(rings) != 1 or told == int(told):
        return 0
    held = before.adapters[rings[0] - 1].thickness_mm or (0.0, 0.0)
    return rings[0] if abs(told - held[0]) <= _REWORKED_MM else 0


def ring_measured(heard: Heard, before: Question) -> Thing | None:
    """'mine measures 29.62', 'with the 50', after a lens on a body: the ring between, where no thread is spoken of."""
    lens = before.lens
    if (lip := lip_told(heard, before)) is not None or (lens is not None and lens.lens_kind == "objective"):
        return lip  # 'does the 0.17 matter' of an objective is of no ring
    planned = before.intent == BUY_PLAN and any(stands_in(one.noun.head) for one in heard.cast.lenses)
    seated = before.intent in _SEATED or planned  # 'om one measures 28.1' after a plan
    seated = seated and any(lens.ids for lens in before.lenses) and any(b.ids for b in before.bodies)
    measured = any(one.kind == "MEASURE" and one.value == _ACROSS for one in heard.shape.tokens)
    values = [heard.readings.values.get(_THREAD, ""), heard.readings.values.get("thickness", "") if measured else ""]
    cup = len(before.adapters) == 1 and before.adapters[0].piece == _CUP
    depth = heard.readings.values.get(DEPTH, "") if cup and not heard.places(_TOO) else ""
    values += [depth]  # 'and 6.8 deep?'
    told = next((one for one in map(_LENGTH.fullmatch, values) if one), None) or _bare_ring(heard, before)
    lenses = [one for one in heard.cast.lenses if not _is_of_ring(one, before)]
    others = (*lenses, *heard.cast.bodies, *heard.cast.pieces)
    if not seated or told is None or others or _THREAD in heard.text.casefold() or _is_doubt(heard):
        return None
    length = float(told[1])
    if not length and not cup:
        return None  # 'the aperture reads 0'
    kind, word = (_CUP, "cup") if cup else ("adapter", "ring")
    return Thing(words=f"{length:g} mm {word}", thickness_mm=(length, length), piece=kind)


def _is_doubt(heard: Heard) -> bool:
    """'why 29.6', 'how sure are you of that 44.46': a number of the answer is asked about, and none measured."""
    measured = any(one.kind == "MEASURE" for one in heard.shape.tokens)
    return heard.tells("why") or (not measured and any(heard.tells(cue) for cue in _DOUBTS))


def _is_of_ring(part: Part, before: Question) -> bool:
    """'with the 50' is no other lens, and 'the K one', of rings to be made, the ring for one that was spoken of."""
    known = {id_ for lens in before.known or before.lenses for id_ in lens.ids}
    made = (
        before.intent in (DIY_DIMENSION, BUY_PLAN)
        and stands_in(part.noun.head)
        and any(known & set(one.ids) for one in part.mounts)
    )
    return made or bool(part.focal and not part.has_mount_or_kind)


def _bare_ring(heard: Heard, before: Question) -> re.Match[str] | None:
    """'12.75 it is', 'and if it was 12.9': a decimal alone that is no stop, of a ring of which no more was told."""
    values, pieces = heard.readings.values, before.adapters
    told = re.fullmatch(r"(\d+(?:\.\d+)?)", values.get("numbers", ""))
    if told is None or len(values) != 1 or len(heard.line.tokens) > _FEW or heard.readings.f_number is not None:
        return None
    if len(pieces) > 1 or (pieces and pieces[0].piece not in ("adapter", _CUP)) or "." not in heard.text:
        return None
    off = pieces and pieces[0].piece == _CUP and bool(heard.places(_TOO))  # '0.1 too shallow'
    return told if not off and (float(told[1]) not in STOPS or pieces) else None


def is_cup_off(heard: Heard, before: Question) -> bool:
    """'what if its 0.1 too shallow' after a cup: by how much its depth is off."""
    cup = any(one.piece == _CUP for one in before.adapters)
    told = any(heard.readings.values.get(key) for key in ("numbers", DEPTH, "thickness", "length"))
    return cup and told and before.intent in _SEATED and bool(heard.places(_TOO))


def turned_anew(heard: Heard, before: Question) -> bool:
    """'1/4 turn more like', 'its 1 mm pitch' after turns of a thread that brought infinity: the same is asked of it."""
    turned = before.intent == SHIM_CALIBRATION and any(before.said(key) for key in _TURNED)
    told = heard.readings.pitch is not None or any(heard.readings.values.get(key) for key in _TURNED)
    cast, asked = heard.cast, {cue.tells for cue in heard.cues} & _OF_THREADS
    return turned and told and not (asked or cast.bodies or cast.pieces)


def depth_wanted(heard: Heard, said: Question, before: Question) -> Question:
    """'want 20 cm at least, what stop' after a depth at 3 m: so much shall be sharp, no nearer subject is told."""
    said = set_behind(heard, said, before)
    away, told = before.distance_mm, said.distance_mm
    asked = heard.tells("which-stop") or wants_length(heard.shape.tokens)
    if before.intent != DEPTH_OF_FIELD or away is None or told is None or not asked or told > away / 2:
        return said
    return said.with_(distance_mm=None, values=(*said.values, ("depth", mm(told))))


def with_stop_set(heard: Heard, said: Question, before: Question) -> Question:
    """'f2.8' in a talk of an 85 mm f/1.8, 'f16' where a stop was set: it is set so far, and opens as wide as before."""
    parts, old = heard.cast.lenses, before.lens
    again = closed_again(heard, said, before)
    if again is not None:
        return said.with_(lenses=(again,), f_number=parts[0].f_number)
    if old is None or len(parts) != 1 or not parts[0].is_stop_alone or len(said.lenses) > 1:
        return said
    told = parts[0].f_number
    closed = old.focal_length_mm is not None and old.f_number is not None and (told or 0.0) > old.f_number
    return said.with_(lenses=(), f_number=told) if closed or before.f_number is not None else said


def with_light_changed(heard: Heard, said: Question, before: Question) -> Question:
    """'two stops brighter sky' in a talk of an exposure: the scene is so much lighter, and no filter holds it back."""
    stops, told = said.said(_STOPS), sorted((*heard.places(_LIGHTER), *heard.places(_DARKER)), key=lambda one: one.at)
    if stops is None or not told or before.intent != EXPOSURE_ND:
        return said
    sign = -1.0 if told[0].key == _DARKER else 1.0
    shift = sign * float(stops.split(",")[0]) + float(before.said(BRIGHTER) or 0.0)
    # 'gone overcast, three stops darker': by so much from the light told before, and not from that again
    rest = tuple(row for row in said.rest(_STOPS) if row[0] != "light" or before.said("light") is None)
    return said.with_(values=(*rest, (BRIGHTER, f"{shift:g}")))


def distance_again(said: Question, before: Question) -> Question:
    """'back to 1.5 at f4' after a depth at 3 m: the bare number beside a stop is how far away, in metres."""
    told = re.fullmatch(r"\d+(?:\.\d+)?", said.said("numbers") or "")
    open_yet = (
        said.intent == before.intent == DEPTH_OF_FIELD and before.distance_mm is not None and said.distance_mm is None
    )
    if told is None or not open_yet or not 0.1 <= float(told[0]) <= _MOST_METRES:
        return said
    values = tuple(row for row in said.values if row[0] != "numbers")
    return said.with_(distance_mm=float(told[0]) * 1000.0, values=values)


def mark_again(heard: Heard, said: Question, before: Question) -> Question:
    """'and at 7 m?' after infinity at the 5 m mark: another mark; 'now it stops at 7 m' says what it is.

    So it is where infinity was said to come too early, or was told where it should fall, and where it is had not been.
    """
    told = said.distance_mm
    awaited = before.mentions(_EARLY) or before.said(_SHIM) is not None
    if said.intent == before.intent == SHIM_CALIBRATION and awaited and before.said(_MARK) is None:
        only = told is not None and before.distance_mm is None and not any(cue.tells in _STOPPING for cue in heard.cues)
        return said.with_(distance_mm=None, values=(*said.values, (_MARK, mm(told or 0.0)))) if only else said
    marked = (
        said.intent == before.intent == SHIM_CALIBRATION and before.said(_MARK) is not None and said.said(_MARK) is None
    )
    asks = any(cue.tells not in _SUPPOSING for cue in heard.cues)
    if told is None or not marked or before.distance_mm is not None or asks:
        return said
    return said.with_(distance_mm=None, values=(*said.values, (_MARK, mm(told))))
