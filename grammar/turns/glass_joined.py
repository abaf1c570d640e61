"""A reducer or extender told by its bare factor beside that of before: 'the 1.4 and the 2x both', '2x instead'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question, Thing
from grammar.things.casting import DRAWN, OPTICAL
from grammar.things.standins import stands_in
from grammar.turns.tubes_added import adds
from grammar.turns.tubes_counted import says_both
from grammar.words.groups import EXTENDS_BY, STACKED
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token

_EXTENDER, _REDUCER = "teleconverter", "reducer"  # by these words
_FACTORS: Final = (0.4, 3.0)
_DENSITY, _CLOSE = 0.3, 0.01  # filters are told in steps of it
_SIZE: Final = "magnification"
_TOGETHER: Final = "add-up"
_TOLD_SO: Final = frozenset(["numbers", _SIZE])  # keys under which a bare factor may have been read
_OF_NONE: Final = frozenset(["PIECE", "MEASURE", "AT"])  # what tells a number beside it of what it is
_IDLE: Final = frozenset(
    ["adding", "instead", "pick:both", "route", "put-in", "what", "what-if", "ok", "can", "will", _TOGETHER, "how"]
)


_PLATE: Final = "glass"  # the key of a plate
_THICKEST: Final = 8.0  # mm, of one
_BESIDE_PLATE: Final = frozenset(["DET", "LETTER", "JOIN", "STOP", "MARK", "PREP", "CUE", "FILLER", "LENS"])
_FILTER: Final = "filter"
_GONE: Final = "glass-gone"
_OF_PLATE: Final = (("MEASURE", "thickness"), ("PIECE", "filter"))


def with_glass_named(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """What was heard, read anew with the factors of its glass named; as it is where they are named, or are none."""
    told = _factors(heard, before)
    if not told:
        return heard
    text = heard.text
    for token in told[::-1]:
        factor = token.numbers[0]
        piece = _EXTENDER if factor > 1 else _REDUCER
        text = f"{text[: token.column - 1]}{factor:g}x {piece}{text[token.end :]}"
    again = hear(text, lexicon, before.intent)
    # its cues ask nothing: the same is asked of that glass
    return replace(again.as_typed(heard), weighed=Weighed((), {}))


def glass_joined(heard: Heard, said: tuple[Thing, ...], kept: tuple[Thing, ...]) -> tuple[Thing, ...]:
    """The glass told with that of before where one comes on top of the other; none where it takes its place."""
    glass = [one for one in said if one.piece in OPTICAL and one.factor is not None]
    stands = [one for one in kept if one.piece in OPTICAL and one.factor is not None]
    if not glass or len(glass) != len(said) or not stands or not _joins(heard):
        return ()
    factors = {one.factor for one in glass}
    return (*(one for one in kept if one not in stands or one.factor not in factors), *said)


def _joins(heard: Heard) -> bool:
    stacked = heard.tells(_TOGETHER) or any(STACKED in token.groups for token in heard.line.tokens)
    behind = any((one.kind, one.value) == ("PREP", "behind") for one in heard.line.tokens)  # 'and a 2x behind that'
    return not heard.tells("instead") and (stacked or behind or says_both(heard) or adds(heard))


def _factors(heard: Heard, before: Question) -> list[Token]:
    """The bare numbers of the line that are factors of glass, where such glass stands and nothing else is told."""
    here = {one.factor for one in before.adapters if one.piece in OPTICAL and one.factor is not None}
    stood = {one.factor for one in before.stood if one.piece in OPTICAL and one.factor is not None}
    cast, tokens = heard.cast, heard.line.tokens
    close = before.intent == MACRO_DISTANCE or any(one.piece in DRAWN for one in before.adapters)
    if not here or close or cast.lenses or cast.bodies or cast.frames or heard.readings.values.keys() - _TOLD_SO:
        return []
    if any(token.kind in _OF_NONE and token.value not in ("adapter", "size") for token in tokens):
        return []
    if any(cue.tells not in _IDLE for cue in heard.cues) or heard.readings.f_number or heard.readings.distance_mm:
        return []
    told = [token for token in tokens if token.numbers and not token.text.isalpha()]
    least, most = _FACTORS
    fits = all(token.kind in ("TIMES", "NUMBER") and least <= token.numbers[0] <= most for token in told)
    joined, other = _joins(heard), heard.tells("instead")
    timed = any(token.kind == "TIMES" for token in told)
    known = any(token.numbers[0] in here | stood for token in told)
    several = joined and len(told) > 1 and known
    timed = timed or (len(told) == 1 and _is_by_value(told[0], here, joined, other))
    alone = len(told) == 1 and timed and (joined or other or _is_short(heard))
    return told if told and fits and (several or alone) else []


def _is_by_value(token: Token, here: set[float], joined: bool, other: bool) -> bool:
    """'.64 instead' after one of 0.71, 'the 1.4 too' after one of 2: of a bare number, whether glass is sold so."""
    number = token.numbers[0]
    density = abs(number / _DENSITY - round(number / _DENSITY)) < _CLOSE
    reducer = number < 1 and min(here) < 1 and not density
    return (reducer and (joined or other)) or (EXTENDS_BY in token.groups and min(here) > 1 and joined)


def _is_short(heard: Heard) -> bool:
    return len(heard.line.tokens) <= 3 and not heard.cues


def plate_again(heard: Heard, before: Question) -> str | None:
    """'a 1.5 mm one', 'and thinner glass, 1mm' after a plate behind the lens: a plate as thick, and nothing more."""
    tokens = heard.line.tokens
    sized = [one for one in tokens if one.kind in ("NUMBER", "LENGTH") and one.unit in ("", "mm")]
    sized = [one for one in sized if not one.text.isalpha()]
    rest = [one for one in tokens if one not in sized]
    told = any(one.kind in ("LENS", "PIECE") or stands_in(one) for one in rest)  # 'one', 'glass', 'filter'
    idle = all(stands_in(one) or one.kind in _BESIDE_PLATE or (one.kind, one.value) in _OF_PLATE for one in rest)
    # 'its 1.2 mm thick' of one that sits in the ring, or did
    filter_ = any(one.piece == _FILTER for one in before.adapters) or before.mentions(_GONE)
    told = told or (filter_ and any((one.kind, one.value) in _OF_PLATE for one in rest))
    if not (_was_plated(before) or filter_) or len(sized) != 1 or not (told and idle):
        return None
    size = sized[0].numbers[0]
    return f"{size:g} mm of glass behind the lens" if 0 < size <= _THICKEST else None


def _was_plated(before: Question) -> bool:
    """Whether a plate of glass is told of, or was one or two turns ago."""
    last: Question | None = before
    for _ in range(3):
        if last is not None and last.said(_PLATE) is not None:
            return True
        last = last.prior if last is not None else None
    return False


def is_behind_ring(piece: Thing, before: Question) -> bool:
    """A reducer that another ring had to bring the lens to: it is there for any lens."""
    return piece.piece in OPTICAL and bool(piece.front) and piece.front not in [one.ids[:1] for one in before.lenses]
