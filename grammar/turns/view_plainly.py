"""Words about the frame and the view that mean something only after the question before, said plainly.

'and in crop mode' of a full frame body is 'and in APS-C mode', '35mm equiv' after another lens 'full frame equiv'.
"""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, EXPOSURE_ND, GEAR_SETTING, MACRO_DISTANCE
from grammar.numbers.crop_numbers import is_of_crop
from grammar.questions import Question
from grammar.things.casting import OPTICAL
from grammar.things.standins import stands_in
from grammar.turns.answer_told import GLASS, told_as
from grammar.turns.on_what import FULL
from grammar.words.groups import (
    AWAY,
    CHANGES_OVER,
    LIGHT_SAID,
    LOOKS_SO,
    READ_OUT,
    SET_SO,
    TAKEN_AWAY,
    TAKEN_OFF,
)
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_FRAMED: Final = frozenset([COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, EXPOSURE_ND, MACRO_DISTANCE])
_SMALLER: Final = "APS-C"  # the usual frame of a crop body
_MODE: Final = " mode"
_FULL, _FULL_MM = "full frame", 35.0  # which is named by the width of its film, too
_WHAT: Final = "what"
_AMOUNTS: Final = ("how-much", "how-many", "what", "f-stop", "comparative", "exposure")  # cues of how much light
_THINGS: Final = frozenset(["PIECE", "ADAPTER", "NUMBER", "LENGTH", "TIMES", "ND", "FOCAL"])
_GLASS_LOSES: Final = "light lost by the glass ring"
_DEPTH: Final = "depth"  # the measure
_HOW_DEEP: Final = "how deep"
_AWAY: Final = frozenset(["m", "cm", "ft"])  # units of how far away a thing is
_NEAREST_MM: Final = 200.0


def crop_body(heard: Heard, before: Question) -> str | None:
    """'same with my crop camera', 'and in crop mode' of a full frame body: the usual smaller frame."""
    tokens = heard.line.tokens
    told = any(one.kind in ("CROP", "FORMAT", "AREA", "TIMES", "MOUNT") for one in tokens)
    at = next((n for n, one in enumerate(tokens[:-1]) if is_of_crop(one) and tokens[n + 1].kind == "BODY"), None)
    framed = before.intent in _FRAMED or heard.weighed.best in _FRAMED - {MACRO_DISTANCE}
    body = at is not None and framed and all(one.kind != "NUMBER" for one in tokens[at : at + 3])
    if not body and _is_on_full(heard, before):
        at = next((n for n, one in enumerate(tokens) if _is_a_mode(tokens, n)), None)
    if at is None or told or not (body or _is_on_full(heard, before)):
        return None
    start, end = tokens[at].column - 1, tokens[at].column - 1 + len(tokens[at].text)
    mode = "" if body or heard.tells("what-is") else _MODE  # 'on crop what is it' asks for no word
    return f"{heard.text[:start]}{_SMALLER}{mode}{heard.text[end:]}"


def frame_of_body(heard: Heard, before: Question) -> str | None:
    """'its the apsc one' of a lens on a body of either frame: the body's, and not what the lens is made for."""
    parts = [part for part in heard.cast.lenses if part.formats]
    part = parts[0] if len(parts) == len(heard.cast.lenses) == 1 else None
    if part is None or heard.cast.bodies or heard.cast.frames or heard.cast.pieces or not stands_in(part.noun.head):
        return None
    told = part.mounts or part.focal or part.f_number or part.kinds or part.traits or part.zoom or part.count
    stand, lens, body = part.noun.head, before.lens, before.body
    pair = lens is not None and bool(lens.ids) and body is not None and body.kind == "mount" and bool(body.ids)
    if told or stand is None or not pair or len(before.lenses) > 1 or len(before.known) > 1:
        return None
    start = stand.column - 1
    return f"{heard.text[:start]}body{heard.text[start + len(stand.text) :]}"


def _is_on_full(heard: Heard, before: Question) -> bool:
    """Whether it is a full frame body, as told or as its mount may be: it crops to the usual smaller frame."""
    never = heard.cast.never_full
    bodies = [one for one in before.bodies if one.kind == "mount" and not one.format and one.id not in never]
    full = any(one.format == FULL for one in before.bodies) or any(one.id == FULL for one in before.frames)
    return full or bool(bodies)


def _is_a_mode(tokens: tuple[Token, ...], at: int) -> bool:
    """'crop mode', 'in crop', 'switch the body to crop': the word stands for the part that is read out."""
    token, before = tokens[at], tokens[at - 1] if at else None
    if not is_of_crop(token) or READ_OUT not in token.groups:
        return False
    ends = at + 1 == len(tokens) or tokens[at + 1].kind in ("STOP", "JOIN", "MARK", "CUE", "DET")
    put = before is not None and before.value in ("in", "on")
    switched = any(one.kind == "BODY" or {CHANGES_OVER, SET_SO} & set(one.groups) for one in tokens[:at])
    put = put or (before is not None and before.value == "to" and switched)  # 'do I need to crop' is put to nothing
    return token.kind == "FRAME" or (put and ends)


def deep_at(heard: Heard, before: Question) -> str | None:
    """'deep at 8', 'deep at 1 m' after a lens: how deep it is sharp so, and no depth of so many millimetres."""
    tokens = heard.line.tokens
    at = next((n for n, one in enumerate(tokens[:-2]) if _says_depth(one)), None)
    if at is None or before.lens is None or before.lens.focal_length_mm is None or tokens[at + 1].value != "at":
        return None
    stop, told = tokens[at + 2], heard.text[: tokens[at].column - 1]
    if tokens[at + 3 :]:
        return None
    if stop.kind == "LENGTH" and stop.unit in _AWAY and stop.numbers[0] >= _NEAREST_MM:
        return f"{told}depth of field at {stop.text}"
    if stop.kind != "NUMBER" or stop.numbers[0] not in STOPS:
        return None
    return f"{told}depth of field at f{stop.text}"


def _says_depth(token: Token) -> bool:
    """'deep', 'how deep', but not 'thin'."""
    return (token.kind == "MEASURE" and token.value == _DEPTH) or token.text.casefold() == _HOW_DEEP


def glass_told(heard: Heard, before: Question) -> str | None:
    """'and on a 1.4x' after a number for the stabiliser, or a view: with a converter of that factor."""
    times = [one for one in heard.line.tokens if one.kind == "TIMES"]
    alone = len(times) == 1 and heard.readings.values.keys() == {"magnification"} and not heard.cues
    cast = heard.cast
    others = cast.lenses or cast.bodies or cast.pieces or cast.frames
    of_glass = bool(times) and (1 < times[0].numbers[0] <= 2 or 0.5 <= times[0].numbers[0] < 1)
    asked = before.intent in (GEAR_SETTING, CROP_EQUIVALENT) and before.said("magnification") is None
    return f"with a {times[0].text}" if alone and of_glass and asked and not others else None


def lost_by_glass(heard: Heard, before: Question) -> str | None:
    """'light lost?', 'what does the corrector cost in light' after a way through glass: what that glass takes."""
    cast, told = heard.cast, heard.readings
    through = bool(told_as(before, GLASS)) and not before.adapters
    lit = any(LIGHT_SAID in one.groups for one in heard.line.tokens) and heard.weighed.best == EXPOSURE_ND
    named = any((cast.lenses and not cast.lenses[0].is_bare, cast.bodies, cast.pieces, cast.frames))
    more = told.values or told.f_number is not None or told.distance_mm is not None
    return _GLASS_LOSES if through and lit and heard.tells("short") and not (named or more) else None


def of_full_frame(heard: Heard, before: Question) -> str | None:
    """'35mm equiv' after another lens: what it is like on full frame, and no lens of that length."""
    tokens = [one for one in heard.line.tokens if one.kind not in ("STOP", "MARK")]
    sized = [one for one in tokens if one.is_mm and one.numbers == (_FULL_MM,)]
    likened = heard.tells("equiv") and len(heard.cast.lenses) == 1 and not heard.cast.lenses[0].mounts
    lens = before.lens is not None and before.lens.focal_length_mm not in (None, _FULL_MM)
    if len(sized) != 1 or not likened or not lens or any(one.kind in ("FNUM", "COMBO", "LENS") for one in tokens):
        return None
    start = sized[0].column - 1
    return f"{heard.text[:start]}{_FULL}{heard.text[start + len(sized[0].text) :]}"


def light_without(heard: Heard, before: Question) -> str | None:
    """'how much light do i win taking the converter out' after it was put on: the light that it costs."""
    tokens, cast = heard.line.tokens, heard.cast
    glass = [one for one in before.adapters if one.piece in OPTICAL and one.factor is not None]
    lit = heard.tells("exposure") or heard.tells("f-stop") or any(LIGHT_SAID in one.groups for one in tokens)
    taken = {group for one in tokens for group in one.groups}
    off = TAKEN_AWAY in taken or {TAKEN_OFF, AWAY} <= taken or heard.tells("plain-piece")
    off = off or any(one.value == "without" for one in tokens)
    named = cast.lenses or cast.bodies or cast.frames or heard.readings.values or heard.readings.f_number
    wrong = heard.tells("shutter-speed") or heard.tells("nd") or any(one.numbers for one in tokens)
    if len(glass) != 1 or not (lit and off and any(map(heard.tells, _AMOUNTS))) or named or wrong:
        return None
    return f"light lost with the {glass[0].factor:g}x {(glass[0].piece or '').replace('-', ' ')}"


def looks_on_full(heard: Heard, _: Question) -> str | None:
    """'looks like a what on FF': what it is like in full frame, and on no body of that."""
    tokens = heard.line.tokens
    looks = next((one for one in tokens if LOOKS_SO in one.groups), None)
    full = next((n for n, one in enumerate(tokens) if FULL in one.ids), None)
    if not full or tokens[full - 1].value != "on":
        return None
    ends = full == len(tokens) - 1 and full > 1 and tokens[full - 2].text.casefold() == _WHAT
    if ends and heard.weighed.best == CROP_EQUIVALENT:
        return f"looks like what in {heard.text[tokens[full].column - 1 :]}"  # 'as long as what on FF'
    if looks is None or tokens[full].column < looks.column:
        return None
    between = [one for one in tokens if looks.column < one.column < tokens[full].column]
    if not any(one.kind == "CUE" for one in between) or any(one.kind in _THINGS for one in between):
        return None
    return f"{heard.text[: looks.column - 1]}looks like what in {heard.text[tokens[full].column - 1 :]}"
