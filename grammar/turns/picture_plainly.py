"""What is asked of view and fronts after a lens, said plainly: a field so far off, a native lens, other sizes."""

from __future__ import annotations

from typing import Final

from engine.base.units import MM_PER_METRE
from grammar.hearing import Heard
from grammar.kinds import BUY_PLAN, CARD, CHAIN, COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, EXPOSURE_ND, FOCUS_VERDICT
from grammar.numbers.crop_numbers import is_crop_named, is_of_crop
from grammar.questions import Question
from grammar.turns.on_what import FULL
from grammar.words.groups import FRONT_WIDTH, READ_OUT, SENSOR_SPEED, SPEED_CALLED
from grammar.words.tokens import Token

_FAR: Final = frozenset(["m", "ft", "cm"])  # units of what is seen, and of how far off it is
_LEAST_MM: Final = 300.0
_AWAY: Final = frozenset(["at", "from"])
_ASKING: Final = frozenset(["which", "what", "how-long", "match", "better", "focal-asked"])  # cues
_OF_VIEW: Final = frozenset([CHAIN, COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, FOCUS_VERDICT, CARD])
_TWO: Final = 2
_NATIVE: Final = "native-said"  # phrases that are mentioned
_LOOKS: Final = "to-look-alike"
_FULL_VIEW: Final = "what is the full frame equivalent of it"
_FRONTS: Final = "filter_thread"  # key of the front threads told
_FILTER: Final = "filter_size"  # and of that of the filter
_ADDS, _TOO, _COUNTED = "adds-to-it", "too", "counted-or-none"
_SCENES: Final = "scene-asked"
_GLASS: Final = "filter"
_PASSED: Final = frozenset(["FILLER", "DET", "JOIN", "STOP", "MARK", "PREP", "LETTER", "LIMIT", "LENS", "VERB", "CUE"])


def field_wanted(heard: Heard, before: Question) -> str | None:
    """'which should i take to film a room 4 m wide from 3 m away' after a lens: which focal length sees so much."""
    far = [one for one in heard.line.tokens if one.kind == "LENGTH" and one.unit in _FAR]
    far = [one for one in far if one.numbers[0] >= _LEAST_MM]
    asks = any(cue.tells in _ASKING for cue in heard.cues)
    if before.intent not in _OF_VIEW or len(far) != _TWO or not asks or any(one.is_mm for one in heard.line.tokens):
        return None
    away = [one for one in far if _is_away(one, heard)]
    if len(away) != 1:
        return None
    seen = next(one for one in far if one is not away[0])
    return f"which focal length sees {seen.text} wide at {away[0].text}"


def _is_away(token: Token, heard: Heard) -> bool:
    """'at 5 m', 'from 3 m', '3 m away'."""
    tokens = heard.line.tokens
    at = next(n for n, one in enumerate(tokens) if one is token)
    led = at > 0 and bool({tokens[at - 1].value, *tokens[at - 1].text.casefold().split()[-1:]} & _AWAY)
    return led or (at + 1 < len(tokens) and tokens[at + 1].text.casefold() in ("away", "off"))


def native_again(heard: Heard, before: Question) -> str | None:
    """'what would a native lens have to be to look the same' after a lens in a crop: what it is like on full frame."""
    framed = before.intent in _OF_VIEW and before.lens is not None and before.lens.focal_length_mm is not None
    cast = heard.cast
    told = heard.readings.values or cast.pieces or cast.bodies or any(part.focal for part in cast.lenses)
    asked = heard.places(_NATIVE) and heard.places(_LOOKS)
    return _FULL_VIEW if framed and asked and not told else None


def fronts_again(heard: Heard, before: Question) -> str | None:
    """'and only for the 49 and the 52' after fronts and a filter: those fronts, and the filter that was told."""
    told = [float(one.removesuffix(" mm")) for one in (before.said(_FRONTS) or "").split(", ") if one]
    numbers = [one for one in heard.line.tokens if one.numbers and one.kind in ("NUMBER", "LENGTH", "COMBO")]
    sizes = [value for one in numbers for value in one.numbers]
    rest = [one for one in heard.line.tokens if one not in numbers and one.kind not in _PASSED]
    if before.intent not in (BUY_PLAN, EXPOSURE_ND) or len(told) < _TWO or not sizes or rest:
        return None
    known = all(FRONT_WIDTH in one.listed.of(f"{value:g}") for one in numbers for value in one.numbers)
    if not known or any(cue.tells in ("equiv", "cover", "dof") for cue in heard.cues):
        return None
    largest = float((before.said(_FILTER) or f"{max(told):g} mm").removesuffix(" mm"))
    if len(sizes) == 1 and sizes[0] > largest:  # 'is a 77 a better idea': another filter for the same fronts
        sizes, largest = [one for one in told if one != largest], sizes[0]
    elif max(sizes) >= largest:
        return None
    fronts = ", ".join(f"{one:g} mm" for one in sizes)
    return f"which step rings for fronts of {fronts} and {largest:g} filters"


def filter_more(heard: Heard, before: Question) -> str | None:
    """'plus the nd', 'and a third filter' after a filter before a lens and what it shades: one filter more."""
    there = [one for one in before.adapters if one.piece == _GLASS]
    said = heard.tells("nd") or any((one.kind, one.value) == ("PIECE", _GLASS) for one in heard.line.tokens)
    adds = any(one.at == 0 for one in heard.places(_ADDS)) or heard.places(_TOO)
    counted = heard.places(_COUNTED) or any(word.isdigit() for word in heard.text.split())
    others = heard.cast.lenses or heard.cast.bodies or heard.readings.values or counted
    if before.intent != COVERAGE or not there or not said or not adds or others:
        return None
    return f"with {sum(one.count or 1 for one in there) + 1} filters"


def native_speed(heard: Heard, before: Question) -> str | None:
    """'800 native', 'base is 800' in a talk about exposure: the ISO, and no nearest distance."""
    tokens = [one for one in heard.line.tokens if one.kind not in ("FILLER", "DET", "STOP", "MARK", "JOIN", "VERB")]
    numbers = [one for one in tokens if one.kind == "NUMBER" and SENSOR_SPEED in one.groups]
    rest = [one for one in tokens if one not in numbers]
    called = bool(rest) and all(SPEED_CALLED in one.groups for one in rest)
    told = before.intent == EXPOSURE_ND and len(numbers) == 1 and called
    return f"iso {numbers[0].numbers[0]:g}" if told else None


def scene_there(heard: Heard, before: Question) -> str | None:
    """'how wide a scene is that' after what is sharp at 1.5 m: the field seen there."""
    away = before.distance_mm
    asks = heard.places(_SCENES) and heard.tells("short")
    told = heard.readings.values or heard.readings.distance_mm or heard.cast.lenses or heard.cast.bodies
    if before.intent != DEPTH_OF_FIELD or away is None or not asks or told or before.adapters:
        return None
    return f"field of view at {away / MM_PER_METRE:g} m"


def crop_of_frame(heard: Heard, before: Question) -> str | None:
    """'with the 1.3x crop' after a lens on MFT: that factor of its frame; 'in 4K mode i lose 1.3x' is a crop too."""
    tokens = heard.line.tokens
    body = before.body
    small = body is not None and (body.id in heard.cast.never_full or body.format not in (None, FULL))
    small = small or any(one.kind == "format" and one.id != FULL for one in before.things)
    named = next((one for one in tokens if small and is_crop_named(one)), None)
    read_out = any(READ_OUT in one.groups for one in tokens) and not any(is_of_crop(one) for one in tokens)
    mode = read_out and before.intent in _OF_VIEW
    glass = any(one.kind in ("PIECE", "ADAPTER") for one in tokens)
    lost = next((one for one in tokens if mode and not glass and one.kind == "TIMES"), None)
    token = named or lost
    if token is None or any(one.kind in ("MOUNT", "CROP") for one in tokens) or heard.cast.lenses:
        return None
    factor = token.text.split()[0].rstrip("xX")
    start = token.column - 1
    return f"{heard.text[:start]}crop of {factor}{heard.text[start + len(token.text) :]}"
