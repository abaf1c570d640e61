"""Of what the numbers of a question before are, how each is written out, and how large it may be."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from typing import Final

from engine.base.compact import compact, replace
from engine.base.units import MM_PER_METRE
from grammar.hearing import Heard
from grammar.kinds import BUY_PLAN, CHAIN, DIY_DIMENSION, FOCUS_VERDICT, MACRO_DISTANCE, SHIM_CALIBRATION
from grammar.questions import BODY_REGISTER, OFF, Question, Thing
from grammar.things.casting import DRAWN, MOUNTLESS, SPACER
from grammar.turns.answer_told import RIGHT, told_as
from grammar.words.groups import STANDS_IN
from grammar.words.tokens import Token
from grammar.words.written import STOPS

LENS: Final = "focal"
STOP: Final = "stop"
RING: Final = "ring"
TUBE: Final = "tube"
_FLANGE: Final = "flange_to_image"
IMAGE: Final = "image_distance"
_LENGTH: Final = re.compile(r"(?:an? |the |my )?(\d+(?:\.\d+)?) ?mm\b", re.IGNORECASE)
ON_AGAIN: Final = "on-again"  # the cue of what is put on once more
_THAT: Final = frozenset(["it", "that", "there", "them", "those", "the", "same"])
MOST_COUNTED: Final = 4  # tubes
_OF_ELSE: Final = frozenset(["PIECE", "ADAPTER", "LENS", "MOUNT", "BODY", "FRAME", "FORMAT", "FNUM", "COMBO", "FOCAL"])
_OF_RINGS: Final = frozenset([CHAIN, FOCUS_VERDICT, DIY_DIMENSION, BUY_PLAN])
_OF_SIZE: Final = frozenset(["size", "total", "diameter", "thickness"])
_NEARLY: Final = 1.0  # mm, by which a ring at hand may differ from the right one
_USUAL: Final = frozenset([8, 10, 16, 17, 18, 20, 21, 24, 25, 28, 35, 40, 45, 50])  # mm, of lenses
_NUMBERS: Final = re.compile(r"\d+(?:\.\d+)?")
WHOLE_STOPS: Final = frozenset([1, 1.4, 2, 2.8, 4, 5.6, 8, 11, 16, 22, 32])
_RATES: Final = frozenset([24, 25, 30, 48, 50, 60, 100, 120, 240])
_AGAIN: Final = "again"
_PIXELS: Final = "pixels"
_REDUCER, _EXTENDER = "focal-reducer", "teleconverter"  # kinds of glass that are told by a factor
_FACTORS: Final = {_REDUCER: 0.71, _EXTENDER: 2.0}  # and by which, where none is told
_LONG_RING: Final = 55.0  # mm, beyond which hardly any ring goes
_SHEET: Final = 0.05  # mm, of foil or brass that shims are cut from
NORMAL: Final = 50.0  # mm, of a lens whose focal length was not told
_SAID: Final = (  # as a value is kept, in which unit
    ("travel", 1.0), ("total", 1.0), ("length", 1.0), ("mark", MM_PER_METRE), ("iso", 1.0), ("frame_rate", 1.0),
    ("magnification", 1.0), ("circle", 1.0), (_FLANGE, 1.0), (BODY_REGISTER, 1.0),
    ("rear_reach", 1.0), (IMAGE, 1.0), ("glass", 1.0),
)  # fmt: skip


@compact
class Role:
    """What a number may be of. `says`: how it is written out; `fits`: whether it may be so large."""

    name: str
    says: str
    fits: Callable[[float], bool]
    usual: Callable[[float], bool] = lambda number: False
    metric: bool = True  # whether it is a length, so that 'mm' may be written behind it


def _is_focal(number: float) -> bool:
    return 3 <= number <= 2000 and number * 2 == int(number * 2)


def is_circle(number: float) -> bool:
    return 3 <= number <= 150


ROLES: Final = (
    Role(LENS, "{} mm lens", _is_focal),
    Role(STOP, "f/{}", lambda n: n in STOPS, lambda n: n in WHOLE_STOPS or n != int(n), metric=False),
    Role(TUBE, "{} mm extension tube", lambda n: 1 <= n <= 150 and n * 2 == int(n * 2)),
    Role(RING, "{} mm ring", lambda n: 0.5 <= n <= 150 and n != int(n), lambda n: n <= _LONG_RING),
    Role("distance", "{} m away", lambda n: 0.2 <= n <= 200, metric=False),
    Role("travel", "{} mm of travel", lambda n: 0.01 <= n <= 60, lambda n: True),
    Role("total", "total {} mm", lambda n: 0.01 <= n <= 60, lambda n: True),
    Role("length", "{} mm", lambda n: 0.005 <= n <= 3 and n != int(n), lambda n: True),
    Role("mark", "{} m mark", lambda n: 0.3 <= n <= 500, metric=False),
    Role("iso", "ISO {}", lambda n: n >= 50 and n % 10 in (0, 5), metric=False),
    Role("frame_rate", "{} fps", lambda n: n in _RATES, lambda n: n in _RATES, metric=False),
    Role("magnification", "m = {}", lambda n: 0.02 <= n <= 10, metric=False),
    Role(_FLANGE, "{} mm flange to image", lambda n: 5 <= n <= 300, lambda n: True),
    Role(BODY_REGISTER, "{} mm flange to sensor", lambda n: 5 <= n <= 130, lambda n: True),
    Role(IMAGE, "{} mm image distance", lambda n: 10 <= n <= 1000, lambda n: True),
    Role("circle", "{} mm image circle", is_circle),
    Role("rear_reach", "{} mm behind the flange", lambda n: 0.5 <= n <= 60),
    Role(_REDUCER, "{}x focal reducer", lambda n: 0.4 <= n <= 0.95, lambda n: True, metric=False),
    Role(_EXTENDER, "{}x teleconverter", lambda n: 1.1 <= n <= 3 and n not in (2.8,), lambda n: True, metric=False),
    Role(_PIXELS, "{} pixels across", lambda n: 1200 <= n <= 20000, lambda n: True, metric=False),
    Role("glass", "{} mm of glass", lambda n: 0.3 <= n <= 8, lambda n: True),
    Role("layer", "{} mm sheet", lambda n: 0.005 <= n <= 0.5),
    Role("off", "{} mm", lambda n: 0.005 <= n <= 5),
)


def numbers_told(before: Question) -> Iterator[tuple[str, float]]:
    """Every number of the question before that another may take the place of."""
    lens = before.lens
    if lens is not None and lens.kind != "lens":
        yield LENS, lens.focal_length_mm or NORMAL
    stop = before.f_number or (lens.f_number if lens is not None else None)
    if stop is not None:
        yield STOP, stop
    for piece in before.adapters:
        length = length_of(piece)
        if length is not None and length[0] == length[1]:
            plain = before.intent == MACRO_DISTANCE and not (piece.front or piece.rear)  # close up it only extends
            yield TUBE if piece.piece in DRAWN or plain else RING, length[0]
        elif length is not None and not length[0]:
            yield TUBE, length[1]  # what a helicoid travels
    yield from ((TUBE, piece.thickness_mm[0]) for piece in tubes_off(before) if piece.thickness_mm is not None)
    for piece in before.adapters:
        if piece.piece in _FACTORS and not piece.ids:
            yield piece.piece, piece.factor or _FACTORS[piece.piece]
    wanted = _number(before.said("magnification"))
    if (
        wanted
        and lens is not None
        and lens.focal_length_mm
        and all(one.thickness_mm is None for one in before.adapters)
    ):
        yield TUBE, wanted * lens.focal_length_mm  # what was asked for: so much is between at that size
    drawn = _number(before.said("extension"))
    if drawn is not None:
        yield TUBE, drawn
    if before.distance_mm is not None:
        yield "distance", before.distance_mm / MM_PER_METRE
    shim = _number(before.said("shim"))
    if shim and lens is not None and lens.focal_length_mm and before.said("mark") is None:
        yield "mark", lens.focal_length_mm**2 / shim / MM_PER_METRE  # where infinity should fall on its scale
    for key, unit in _SAID:
        value = _number(before.said(key))
        if value is not None:
            yield key, value / unit
    across = _number((before.said(_PIXELS) or "").partition(" ")[0])
    if across is not None:
        yield _PIXELS, across
    placed = drawn is not None or any(one.thickness_mm for one in before.adapters)
    if (
        lens is not None
        and lens.focal_length_mm
        and lens.lens_kind in MOUNTLESS
        and not (before.said(_FLANGE) or placed)
    ):
        yield _FLANGE, lens.focal_length_mm  # what is lacking of such a lens is about as long
    off = _number(before.said("thickness"))
    if off is not None and before.off_word:
        yield OFF, off
    elif before.intent == SHIM_CALIBRATION:
        yield "layer", _SHEET


def tubes_off(before: Question) -> tuple[Thing, ...]:
    """The tubes of one length each that stood there and are off now."""
    if any(piece.piece in DRAWN for piece in before.adapters):
        return ()
    drawn = (piece for piece in before.stood if piece.piece in DRAWN and piece.thickness_mm is not None)
    return tuple(piece for piece in drawn if len(set(piece.thickness_mm or ())) == 1)


def put_on_it(heard: Heard, token: Token) -> bool:
    """'with a 50 on it', 'a 35 on the same bellows' after a bellows or tubes: a lens that goes on those."""
    after = [one for one in heard.line.tokens if one.column > token.column and one.kind != "LENS"]
    return len(after) > 1 and after[0].text.casefold() == "on" and after[1].text.casefold() in _THAT


def told_last(before: Question, told: dict[str, float]) -> str | None:
    """Of what 'make that 25' is: of what the words before told alone, and of a tube told beside the rest."""
    words = set(_NUMBERS.findall(before.text))
    said = [role for role, value in told.items() if f"{value:g}" in words]
    return TUBE if TUBE in said else said[0] if len(said) == 1 else None


def is_one_of_several(number: float, before: Question) -> bool:
    """'only 16', 'just the ten' after tubes of 10 and 16 mm."""
    lengths = [one.thickness_mm for one in before.adapters if one.piece in DRAWN and one.thickness_mm is not None]
    return len(lengths) > 1 and (number, number) in lengths


def may_be_tube(number: float, before: Question) -> bool:
    """'just the ten': a number in words, too large to count the tubes of before."""
    return number > MOST_COUNTED and any(one.piece in DRAWN and one.thickness_mm for one in before.adapters)


def length_of(piece: Thing) -> tuple[float, float] | None:
    """The length that is told of a piece, or that stands in its name: 'the 5 mm ring'."""
    told = _LENGTH.match(piece.words.strip()) if piece.ids and piece.thickness_mm is None else None
    return (float(told[1]), float(told[1])) if told else piece.thickness_mm


def _number(text: str | None) -> float | None:
    """The number of a value that holds one alone: '20000 mm', '400'."""
    words = (text or "").split()
    if not words or len(words) > 2 or "," in (text or ""):
        return None
    try:
        return float(words[0])
    except ValueError:
        return None


def ring_near(heard: Heard, before: Question) -> Token | None:
    """'a 26 one exists, ok?', 'what does 36 do then' after a ring that has to be 25.5 or 35 mm: a ring of that length.

    What lenses usually are as long as may as well be another lens.
    """
    tokens = [one for one in heard.line.tokens if STANDS_IN not in one.groups]
    told = [one for one in tokens if one.may_be_mm and one.numbers]
    other = any(one.kind in _OF_ELSE or (one.numbers and one not in told) for one in tokens)
    other = other or any(one.kind == "MEASURE" and one.value not in _OF_SIZE for one in tokens)
    other = other or "thickness" in heard.readings.values  # it is told of the ring already
    right = told_as(before, RIGHT)
    if len(told) != 1 or other or before.intent not in _OF_RINGS or told[0].numbers[0] in _USUAL:
        return None
    near = any(0 < abs(told[0].numbers[0] - one) <= _NEARLY for one in right if one > _NEARLY)
    if not near or any(one.thickness_mm is not None for one in before.adapters):
        return None
    at = heard.line.tokens.index(told[0]) + 1
    after = heard.line.tokens[at] if at < len(heard.line.tokens) else None
    end = told[0].end or told[0].column - 1 + len(told[0].text)
    if after is not None and STANDS_IN in after.groups:
        end = after.end or after.column - 1 + len(after.text)
    return replace(told[0], end=end)


def is_the_lens(heard: Heard, before: Question) -> bool:
    """'the other one again, the 35' after a 35 and a 50: the number alone is that of a lens spoken of before."""
    tokens = heard.line.tokens
    told = [at for at, one in enumerate(tokens) if one.kind in ("NUMBER", "LENGTH") and not one.text.isalpha()]
    if len(told) != 1 or heard.cast.pieces:
        return False
    led = told[0] > 0 and tokens[told[0] - 1].kind == "DET"
    here = {one.focal_length_mm for one in before.lenses}
    others = {one.focal_length_mm for one in before.known} - here
    again = heard.tells("pick:other") or any(one.text.casefold() == _AGAIN for one in tokens)
    return led and again and tokens[told[0]].numbers[0] in others


def wants_tube(before: Question) -> bool:
    """Whether tubes were asked for, and how long they are is not told yet."""
    return any(one.piece == SPACER and one.thickness_mm is None for one in before.adapters)
