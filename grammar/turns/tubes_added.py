"""A tube more, or less, than before: 'add the 20', 'plus the 36', 'with the 16 as well', 'without the 10'."""

from __future__ import annotations

import re
from typing import Final, TypeVar

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    CLOSE_UPS,
    COMPARE,
    FOCUS_VERDICT,
    GEAR_SETTING,
    MACRO_DISTANCE,
    WHY,
)
from grammar.questions import RING, Question, Thing
from grammar.things.casting import DRAWN, OPTICAL, SPACER, Part
from grammar.things.standins import stands_in
from grammar.turns.number_roles import ON_AGAIN, is_the_lens
from grammar.turns.tubes_counted import says_both, several_of_one
from grammar.words.groups import EVERYTHING, MORE, PUT_ON
from grammar.words.token_kinds import SIZES
from grammar.words.tokens import Token

_Found = TypeVar("_Found")
_OF_OTHERS: Final = frozenset(["LENS", "MOUNT", "BODY", "FORMAT", "KIND", "COMBO", "RANGE", "KEYED"])
_ADDING: Final = frozenset(["added", "another", "further"])  # values of the words that add
_ON: Final = ("on", "in", "behind")  # ends 'now put the 14 on'
_SMALL: Final = frozenset(["FILLER", "DET", "PIECE", "PREP", "JOIN", "MARK"])
_PLUS: Final = ("plus", "+")
_CLOSE_UP: Final = "close-up-lens"
_ON_TOP: Final = "on-top-of-it"
_DIOPTRE: Final = "DIOPTRE"  # '+4' is its name and adds nothing
_EXTENSION: Final = "extension"
_PLACED: Final = frozenset([CHAIN, FOCUS_VERDICT, MACRO_DISTANCE, COMPARE, GEAR_SETTING, BUY_PLAN, WHY])
_WITHOUT: Final = "without"
_MM, _MM_ALONE = re.compile(r"(\d+(?:\.\d+)?) ?mm\b", re.IGNORECASE), re.compile(r"(\d+(?:\.\d+)?) ?mm")
_SHORTEST: Final = 3.0  # mm, of what is told of a lens without tubes: less sets a ring right
_NUMBERS: Final = re.compile(r"\d+(?:\.\d+)?")
_FOR: Final = " for "
_SWAPS: Final = ("swap", "instead", "replace", "change the", "trade", "rather than", "in place of", _FOR)
_REMADE_MM: Final = 1.0  # by so much two rings for one pair differ
_LONGEST: Final = 100.0  # mm, of a tube


def tubes_changed(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """The pieces of before with those that are added, or without those taken off; None where none is."""
    tubes = [thing for thing in before.adapters if thing.piece == SPACER and thing.is_of_one_length]
    both = _both(heard, before, tubes) or several_of_one(heard, before)
    if both:
        return both
    again = _back_on(heard, before, tubes)
    if again:
        return again
    on_top = _close_up_on_top(heard, before)
    if on_top is not None:
        return on_top
    drawn = any(thing.piece in DRAWN and not thing.is_of_one_length and thing.thickness_mm for thing in before.adapters)
    # a ring that was cut to a length, or is sold by it, stays where a tube is put to it
    cut = any(thing.piece == RING and (thing.is_of_one_length or thing.ids) for thing in before.adapters)
    rings = [part.thickness[0] for part in heard.cast.pieces if part.piece == RING and part.thickness]
    told = any(length >= _SHORTEST for length in rings)  # it takes the place of the one that stands there
    more_out = ((drawn or cut) and adds(heard) and not told) or _goes_further_out(heard, before)
    exchanged = _exchanged(heard, before, tubes)
    if exchanged:
        return exchanged
    lengths = _lengths(heard, lenses_back(heard, before)) if tubes or more_out else None
    if lengths is None or _is_another_ring(heard, before, lengths) or is_the_lens(heard, before):
        return None
    if any(token.kind == "PREP" and token.value == _WITHOUT for token in heard.line.tokens):
        left = [thing for thing in before.adapters if thing.thickness_mm not in [(one, one) for one in lengths]]
        return tuple(left) if len(left) == len(before.adapters) - len(lengths) and left else None
    if not tubes and not (drawn or cut) and min(lengths) < _SHORTEST:
        return None
    more = tuple(Thing(words=f"{one:g} mm tube", thickness_mm=(one, one), piece=SPACER) for one in lengths)
    wanted = _wanted_mm(before) if not tubes and _goes_further_out(heard, before) and len(lengths) == 1 else None
    if wanted is not None:  # 'with 10 more' after how much 0.5x takes
        out = wanted + lengths[0]
        tube = Thing(words=f"{out:g} mm tube", thickness_mm=(out, out), piece=SPACER)
        return (*(one for one in before.adapters if one.piece not in DRAWN), tube)
    if adds(heard):
        held = len(more) > 1 and more[0].thickness_mm in [one.thickness_mm for one in tubes]  # '2.5 plus 0.5' after 2.5
        return (*before.adapters, *more[held:])
    lens = {one.focal_length_mm for one in before.known}  # 'so everything is sharp with the 50'
    in_all = (
        len(lengths) == 1 and lengths[0] not in lens and any(EVERYTHING in token.groups for token in heard.line.tokens)
    )
    # 'with 16 mm of tube', 'all three tubes, 47 mm together'
    drawn_anew = in_all or any(_is_extension(token) for token in heard.shape.tokens)
    return (*(one for one in before.adapters if one.piece not in DRAWN), *more) if drawn_anew else None


def _is_another_ring(heard: Heard, before: Question, lengths: list[float]) -> bool:
    """'other ring says 9.87' after one of 9.65 mm: nearly as long as that, so it stands in its place."""
    held = [thing.thickness_mm[0] for thing in before.adapters if thing.piece == RING and thing.thickness_mm]
    rings = [part for part in heard.cast.pieces if part.piece == RING]
    alone = len(held) == len(lengths) == 1 and len(rings) == len(heard.cast.pieces) == 1
    return alone and abs(lengths[0] - held[0]) <= _REMADE_MM


def _back_on(heard: Heard, before: Question, tubes: list[Thing]) -> tuple[Thing, ...]:
    """'put the 36 back' beside a tube: one that was there before comes to it again."""
    told = [float(one) for one in _NUMBERS.findall(heard.text)]
    back = heard.tells(ON_AGAIN) or any(token.text.casefold() == "back" for token in heard.line.tokens)
    put = any(PUT_ON in token.groups or token.text.casefold() == "put" for token in heard.line.tokens)
    if not tubes or len(told) != 1 or not back or not put or told[0] > _LONGEST:
        return ()
    tube = Thing(words=f"{told[0]:g} mm tube", thickness_mm=(told[0], told[0]), piece=SPACER)
    return (*before.adapters, tube)


def _wanted_mm(before: Question) -> float | None:
    """How far out the magnification that was asked for takes the lens, in mm."""
    lens, told = before.lens, re.fullmatch(r"\d+(?:\.\d+)?", before.said("magnification") or "")
    return float(told[0]) * lens.focal_length_mm if told and lens is not None and lens.focal_length_mm else None


def _goes_further_out(heard: Heard, before: Question) -> bool:
    """'with 15 more, how close is that' after a lens on a body: so far out from its infinity position."""
    lens = before.lens
    placed = lens is not None and lens.focal_length_mm is not None and bool(before.bodies)
    tokens = heard.line.tokens
    more = any(MORE in token.groups and _is_beside(tokens, at) for at, token in enumerate(tokens))
    other = any(token.value in _ADDING for token in tokens) and (heard.tells("how-close") or heard.tells("macro"))
    told = _EXTENSION in heard.readings.values  # '10 mm extra behind it' is read so already
    return placed and not told and before.intent in _PLACED and (more or other)


def _exchanged(heard: Heard, before: Question, tubes: list[Thing]) -> tuple[Thing, ...]:
    """'swap the 21 for the 10', '10 instead of the 21' after several tubes: one of them in another's place."""
    told = [float(one) for one in _NUMBERS.findall(heard.text)]
    held = [thing for thing in tubes if thing.thickness_mm is not None and thing.thickness_mm[0] in told]
    swaps = any(word in heard.text.casefold() for word in _SWAPS)
    only = any(word in heard.text.casefold() for word in _SWAPS if word != _FOR)
    if len(told) == len(tubes) == 1 and only and _names_tube(heard) and 0 < told[0] <= _LONGEST:
        new = replace(tubes[0], words=f"{told[0]:g} mm tube", thickness_mm=(told[0], told[0]))
        return tuple(new if one is tubes[0] else one for one in before.adapters)  # 'swap the tube for a 9'
    if len(told) != 2 or len(held) != 1 or not (len(tubes) > 1 or only) or not swaps or max(told) > _LONGEST:
        return ()
    length = next((one for one in told if (one, one) != held[0].thickness_mm), None)
    if length is None:
        return ()
    new = replace(held[0], words=f"{length:g} mm tube", thickness_mm=(length, length))
    return tuple(new if one is held[0] else one for one in before.adapters)


def _names_tube(heard: Heard) -> bool:
    return any(token.kind == "PIECE" and token.value == SPACER for token in heard.line.tokens)


def with_tube_told(question: Question) -> Question:
    """'with 12 mm of tube': a tube of that length stands there, which can be doubled, added to or taken off."""
    told = _MM_ALONE.fullmatch(question.said(_EXTENSION) or "")
    if told is None or question.intent not in CLOSE_UPS or any(one.piece in DRAWN for one in question.adapters):
        return question
    length = float(told[1])
    tube = Thing(words=f"{length:g} mm tube", thickness_mm=(length, length), piece=SPACER)
    values = question.rest(_EXTENSION)
    return question.with_(adapters=(*question.adapters, tube), values=values)


def _close_up_on_top(heard: Heard, before: Question) -> tuple[Thing, ...] | None:
    """'and +2 with it' after a close-up lens: one before the other."""
    cast = heard.cast
    said = cast.pieces and all(part.piece == _CLOSE_UP and part.factor for part in cast.pieces)
    held = any(map(_is_close_up, before.adapters))
    others = cast.lenses or cast.bodies or cast.frames
    on_top = adds(heard) or bool(heard.places(_ON_TOP))
    if not said or not held or others or not on_top:
        return None
    return (*before.adapters, *(part.thing() for part in cast.pieces))


def _both(heard: Heard, before: Question, tubes: list[Thing]) -> tuple[Thing, ...]:
    """'both' after a 10 mm tube and then a 20 mm one: the two together; so of close-up lenses and extenders."""
    here = tubes or [one for one in before.adapters if _is_close_up(one) or (one.piece in OPTICAL and one.factor)]
    told = any(token.kind in SIZES and not token.text.isalpha() for token in heard.line.tokens)
    if not says_both(heard) or len(here) != 1 or told:
        return ()
    others = [thing for thing in before.stood if thing.piece == here[0].piece and (thing.is_of_one_length or not tubes)]
    if len(others) != 1 or (others[0].thickness_mm, others[0].factor) == (here[0].thickness_mm, here[0].factor):
        return ()
    return (*others, *before.adapters)


def lenses_back(heard: Heard, before: Question) -> tuple[Thing, ...]:
    """'back to the 50 and add a 14 mm tube' after a 50, then a 135: the lens of so long that was spoken of before.

    Only where another length is told, which is that of the tube.
    """
    sizes = {token.numbers[0] for token in heard.line.tokens if token.kind in SIZES and token.numbers}
    tubed = len(sizes) > 1 or any(map(_is_extension, heard.shape.tokens))
    told = {part.focal for part in heard.cast.lenses if not part.has_mount_or_kind}
    back = any(token.text.casefold().startswith("back") for token in heard.line.tokens)
    here = set() if back else {lens.focal_length_mm for lens in before.lenses}
    known = tuple(lens for lens in before.known if lens.focal_length_mm in told - here)
    return known if tubed and len(known) == len(told) == 1 else ()


def meant_still(heard: Heard, before: Question, found: _Found | None) -> _Found | None:
    """Which lens is meant, where tubes are told beside one that was spoken of before; else those of before stay."""
    return found if lenses_back(heard, before) else None


def _lengths(heard: Heard, back: tuple[Thing, ...] = ()) -> list[float] | None:
    """The lengths of tubes told, in mm; None where anything else is told beside: 'also an 80 mm f5.6, same screw'.

    `back`: lenses named that were spoken of before.
    """
    tokens, pieces = heard.shape.tokens, (*heard.cast.pieces, *heard.cast.without)
    others = [token for token in tokens if token.kind in _OF_OTHERS]
    if heard.cast.bodies or any(not (_is_extension(one) or stands_in(one)) for one in others):
        return None
    plain = adds(heard)  # 'plus a 1 mm ring' comes on top as a tube does
    if any(not _is_tube(part, plain) or part.mounts for part in pieces):
        return None
    told = [one for one in tokens if (one.kind in SIZES and not one.text.isalpha()) or _is_extension(one)]
    told += [_by_length(part.named) for part in pieces if part.named is not None]
    told += [token for part in pieces for token in part.noun.tails if token.implies == ("LENGTH",)]
    named = {lens.focal_length_mm for lens in back}
    told = [token for token in told if not (token.kind in SIZES and token.numbers[0] in named)]
    lengths = [token.numbers[0] for token in told if token.unit in ("", "mm")]
    lens = any(part.focal in lengths and (part.f_number or "same" in heard.features) for part in heard.cast.lenses)
    return lengths if lengths and len(lengths) == len(told) and max(lengths) <= _LONGEST and not lens else None


def _is_tube(part: Part, plain: bool) -> bool:
    """`plain`: a ring that only its length is told of is one too."""
    ring = plain and part.piece == RING and part.thickness is not None and part.named is None
    return part.piece in DRAWN or _is_by_length(part) or ring


def _is_extension(token: Token) -> bool:
    """'8 mm more extension', '16 mm of tube'."""
    return token.kind == "KEYED" and token.value == _EXTENSION and len(token.numbers) == 1


def _is_by_length(part: Part) -> bool:
    """'a 5 mm ring': one that a name knows by its length."""
    return part.named is not None and _MM.match(part.named.text) is not None


def _by_length(named: Token) -> Token:
    told = _MM.match(named.text)
    return replace(named, numbers=(float(told[1]) if told is not None else 0.0,), unit="mm")


def _is_close_up(thing: Thing) -> bool:
    return thing.piece == _CLOSE_UP and thing.factor is not None


def adds(heard: Heard) -> bool:
    """Whether it is said that something comes on top."""
    tokens = heard.line.tokens
    more = any(MORE in token.groups and _is_beside(tokens, at) for at, token in enumerate(tokens))
    put_on = any(PUT_ON in token.groups for token in tokens[:-1]) and tokens[-1].text.casefold() in _ON
    put_on = put_on and len(tokens) > 1 and tokens[-2].kind in (*SIZES, "PIECE")
    return (
        more
        or put_on
        or heard.tells("adding")
        or any(
            {token.value, token.text.casefold()} & _ADDING
            or (token.kind != _DIOPTRE and token.text.casefold().startswith(_PLUS))
            for token in tokens
        )
    )


def _is_beside(tokens: tuple[Token, ...], at: int) -> bool:
    """'20 mm more', 'an extra 15 mm', '10 mm more tube': right behind a length or before one, not 'how much more'.

    Nor 'does the 24 suffer more': a word that tells what it does stands between.
    """
    back, ahead = tokens[max(0, at - 2) : at][::-1], tokens[at + 1 : at + 3]
    return any(_is_led_to(row) for row in (back, ahead))


def _is_led_to(row: tuple[Token, ...]) -> bool:
    """Whether the first of them is a length, or the second with nothing but a small word before it."""
    return any(one.kind in SIZES and all(two.kind in _SMALL for two in row[:n]) for n, one in enumerate(row))


def sized_last(before: Question) -> bool:
    """Whether a size was wanted after tubes were told, or of tubes of no told length: what is asked next is of that."""
    wanted, prior = before.said("magnification"), before.prior
    drawn = [one for one in before.adapters if one.piece in DRAWN]
    untold = not any(one.thickness_mm or one.ids for one in drawn)
    later = prior is not None and prior.said("magnification") != wanted and prior.adapters == before.adapters
    later = later and not before.mentions("own-size")  # 'it goes to 1:2 itself' wants nothing
    return wanted is not None and bool(drawn) and (untold or later)
