"""Bare lengths in a talk about tubes and helicoids: 'i have 20 10 and 5', 'ok 20 then', '36-90 with the 1 mm ring'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import DEPTH_OF_FIELD, MACRO_DISTANCE
from grammar.questions import Question, Thing
from grammar.things.casting import DRAWN, SPACER, Part
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

_CLOSE: Final = frozenset([MACRO_DISTANCE, DEPTH_OF_FIELD])
_LONGEST: Final = 150.0  # mm, of a tube
HELICOID: Final = "helicoid"


def lengths_again(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """The pieces that the lengths told are of; None where they are of something else.

    A length that a piece of before has picks that piece; several are tubes, where tubes or a subject to be filled were
    spoken of; a range is that of a helicoid, where the lens is known and is no zoom.
    """
    if not before.lenses or before.lenses[0].focal_length_mm is None:
        return _set_alone(heard, before)
    drawn = _drawn(heard, before)
    if drawn is not None:
        return drawn
    own = {thing.focal_length_mm for thing in before.known or before.lenses}
    told = [one for one in _lengths(heard) if one not in own]  # 'is 135 like 270 there' is of the lens
    if not told or heard.cast.pieces or heard.cast.bodies or heard.cast.without:
        return None
    known = [thing for thing in before.adapters if thing.thickness_mm is not None]
    picked = [thing for length in told for thing in known if thing.thickness_mm == (length, length)]
    if len(picked) == len(told) and (len(known) > 1 or len(told) > 1):
        return tuple(picked)
    spaced = any(thing.piece in DRAWN for thing in before.adapters) or before.said("field") is not None
    if before.intent not in _CLOSE or not spaced or (len(told) == 1 and not known):
        return None
    if len(told) == 1 and not _is_alone(heard):
        return None
    others = tuple(thing for thing in before.adapters if thing.piece != SPACER)
    return (*others, *(Thing(words=f"{length:g} mm", thickness_mm=(length, length), piece=SPACER) for length in told))


def _set_alone(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """'58, set 7/14/28' after 'how near will tubes get me': a row of numbers beside the lens is that of the tubes."""
    opened = any(thing.piece == SPACER and thing.thickness_mm is None for thing in before.adapters)
    numbers = [one for one in heard.shape.tokens if one.kind == "NUMBER" and not one.text.isalpha()]
    if not opened or len(numbers) < 2 or heard.cast.pieces:
        return None
    lengths = (one.numbers[0] for one in numbers)
    return tuple(Thing(words=f"{size:g} mm", thickness_mm=(size, size), piece=SPACER) for size in lengths)


def _lengths(heard: Heard) -> list[float]:
    """Every bare length of the text; none where one is more than that."""
    if any(not _is_bare(part) for part in (*heard.cast.lenses, *heard.cast.lengths)):
        return []
    tokens = [one for one in heard.shape.tokens if one.kind in SIZES and not _is_far(one)]
    return [one.numbers[0] for one in tokens if one.numbers[0] <= _LONGEST and not one.text.isalpha()]


def _is_bare(part: Part) -> bool:
    return len(part.noun.mods) == 1 and part.noun.head is None and part.noun.mods[0].kind in SIZES


def _is_far(token: Token) -> bool:
    return token.unit in ("m", "cm", "ft", "in")


def _is_alone(heard: Heard) -> bool:
    """Whether nothing else than a number is told: 'ok 20 then'; '85?' of many words may be another lens."""
    return not heard.cast.lenses and bool(heard.readings.values.get("numbers"))


def _drawn(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    zooms = [part for part in (*heard.cast.lenses, *heard.cast.lengths) if part.noun.first("RANGE")]
    zoomed = before.lenses[0].lens_kind == "zoom" or heard.tells("zoom")
    if len(zooms) != 1 or zoomed or zooms[0].noun.head is not None:
        return None
    token = zooms[0].noun.first("RANGE")
    if token is None or len(zooms[0].noun.mods) != 1 or token.unit in ("m", "ft"):
        return None
    said = tuple(part.thing() for part in heard.cast.pieces)
    others = tuple(thing for thing in before.adapters if thing.piece not in DRAWN) if not said else ()
    held = next((thing for thing in before.adapters if thing.piece in DRAWN), Thing(piece=HELICOID))
    helicoid = replace(held, words=token.text, thickness_mm=(min(token.numbers), max(token.numbers)))
    return (*others, helicoid, *said)
