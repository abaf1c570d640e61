"""A bare number that is a stop, since it is asked what it becomes: 'what does its 5.6 become', 'the 2.8 is what'."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from grammar.hearing import Heard, hear
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question
from grammar.things.casting import DRAWN, OPTICAL
from grammar.turns.number_roles import length_of
from grammar.turns.turn_seen import Turn
from grammar.words.groups import LIKE_BEFORE, OWN
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token
from grammar.words.written import STOPS

_BECOMES: Final = "number-becomes"  # that it is asked what a number comes to, whatever it is of
_STOP_ASKED: Final = "stop-of-number"  # and that this is a stop
_MADE: Final = "stop-made"  # that it is asked which stop glass makes of another
_GREATEST: Final = 32  # f-number, that bare numbers are taken for


def with_stop_named(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line with 'f/' before that number; the same where it may as well be of the lens or of what is between."""
    token = _number(heard, before)
    if token is None or heard.cast.pieces or heard.cast.bodies:
        return heard
    text = f"{heard.text[: token.column - 1]}f/{token.numbers[0]:g}{heard.text[token.end :]}"
    return hear(text, lexicon, before.intent).as_typed(heard)


def _number(heard: Heard, before: Question) -> Token | None:
    numbers = [one for one in heard.line.tokens if one.numbers]
    if before.lens is None or len(numbers) != 1 or numbers[0].kind != "NUMBER" or numbers[0].text.isalpha():
        return None
    number = numbers[0].numbers[0]
    stops = {before.f_number, *(lens.f_number for lens in before.lenses)}
    if number in stops:
        asked = heard.places(_BECOMES) or heard.places(_STOP_ASKED)
    elif number in STOPS and number <= _GREATEST and not _is_told(number, before):
        asked = heard.places(_STOP_ASKED) or (
            heard.places(_BECOMES) if _is_no_length(numbers[0], heard, before) else ()
        )
    else:
        return None
    return numbers[0] if asked else None


def _is_no_length(token: Token, heard: Heard, before: Question) -> bool:
    """'what does its 8 become' of a lens of which the focal length is known: what it has besides is a stop."""
    led = heard.led_by(token)
    known = before.lens is not None and before.lens.focal_length_mm is not None
    return token.numbers[0] != int(token.numbers[0]) or (
        known and led is not None and bool({LIKE_BEFORE, OWN} & set(led.groups))
    )


def becomes_when_drawn_out(turn: Turn) -> bool:
    """Whether it is asked what a stop becomes of a lens that stands on tubes, a helicoid or bellows."""
    before = turn.before
    drawn = any(piece.piece in DRAWN for piece in before.adapters) or before.said("extension") is not None
    glass = any(piece.piece in OPTICAL for piece in before.adapters)
    asked = turn.heard.places(_BECOMES) or turn.heard.places(_STOP_ASKED)
    return (
        bool(asked)
        and any(one.kind == "FNUM" for one in turn.heard.line.tokens)
        and not glass
        and (drawn or before.intent == MACRO_DISTANCE)
    )


def with_stop_of_glass(got: Question, before: Question) -> Question:
    """'does a 0.71 reducer turn it into f/1.4' of an f/2: the stop that glass may make is not the lens's, nor set."""
    glass = any(one.piece in OPTICAL and one.factor is not None for one in got.adapters)
    old, new = before.lens, got.lens
    if not got.follows or not glass or old is None or new is None or not got.mentions(_MADE):
        return got
    meant = new.f_number if new.f_number != old.f_number else got.f_number
    if old.f_number is None or meant is None or meant == old.f_number or old.ids != new.ids:
        return got
    lenses = (replace(new, f_number=old.f_number), *got.lenses[1:])
    return got.with_(lenses=lenses, f_number=None, stops=(meant,), instead=())


def _is_told(number: float, before: Question) -> bool:
    """Whether a lens spoken of, or a piece, is so long."""
    lenses = (lens.focal_length_mm for lens in (*before.known, *before.lenses))
    return number in lenses or any(length_of(piece) == (number, number) for piece in before.adapters)
