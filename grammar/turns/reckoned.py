"""What a follow-up tells by the number of before: 'half that distance', 'twice as far', 'stopped down two stops'.

It is reckoned out, written in its place, and the line is read as if it had been said.
"""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from engine.base.units import MM_PER_METRE
from grammar.hearing import Heard, hear
from grammar.intents import Weighed
from grammar.kinds import CHAIN, DEPTH_OF_FIELD, FOCUS_VERDICT, MACRO_DISTANCE
from grammar.questions import Question
from grammar.things.casting import DRAWN, SPACER
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import Token

SHARE: Final = "SHARE"  # kind of the words for half, twice ... of what was told; `implies` tells of what
_DISTANCE: Final = "distance"
_TUBE: Final = "tube"
_SIZE: Final = "size"
_MAGNIFICATION: Final = "magnification"  # the key that it is told under
_OPENED: Final = "opened-up"  # cue: by so many stops wider, not narrower
_OF_LIGHT: Final = frozenset(["nd", "iso", "exposure", "shutter-speed", "lose"])  # what else stops may be told of
_SHARP: Final = frozenset([DEPTH_OF_FIELD, MACRO_DISTANCE, FOCUS_VERDICT, CHAIN])
_IDLE: Final = frozenset(
    [
        "ok",
        "right",
        "will",
        "can",
        "means",
        "what-if",
        "what",
        "it-is",
        "brief",
        "again",
        "how-far",
        _OPENED,
        "f-stop",
        "equals",
    ]
)


def reckoned(heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """What was heard, read anew with what its words come to; the same where they tell no share of before."""
    for token in heard.line.tokens:
        said = _shared(token, before) if token.kind == SHARE else _stopped(token, heard, before)
        if said is not None:
            return _with(token, said, heard, before, lexicon)
    return heard


def _shared(token: Token, before: Question) -> str | None:
    """So much of the distance of before; of the tube where none was told and the words may be of any length."""
    share = token.numbers[0]
    if _SIZE in token.implies:
        size = _size_before(before)
        return f"m = {share * size:.6g}" if size is not None else None
    if before.distance_mm is not None and _TUBE not in token.implies:
        return f"at {share * before.distance_mm / MM_PER_METRE:.6g} m"
    drawn = [one.thickness_mm for one in before.adapters if one.piece in DRAWN and one.thickness_mm is not None]
    if _DISTANCE not in token.implies and drawn and all(least == most for least, most in drawn):
        return f"with {share * sum(most for _, most in drawn):.6g} mm extension tube"
    return None


def _size_before(before: Question) -> float | None:
    """The magnification that was told, or that the tubes told make of the lens."""
    told = before.said(_MAGNIFICATION)
    if told is not None:
        return float(told) if _is_number(told) else None
    tubes = [one.thickness_mm for one in before.adapters if one.piece == SPACER and one.thickness_mm is not None]
    focal = before.lens.focal_length_mm if before.lens is not None else None
    return sum(longest for _, longest in tubes) / focal if tubes and focal else None


def _is_number(text: str) -> bool:
    return text.replace(".", "", 1).isdigit()


def _stopped(token: Token, heard: Heard, before: Question) -> str | None:
    """'two stops down' where it was asked what is sharp: the stop that it comes to."""
    if token.kind != "STOPS" or before.intent not in _SHARP or any(heard.tells(cue) for cue in _OF_LIGHT):
        return None
    lens = before.lens
    stop = before.f_number or (lens.f_number if lens is not None else None)
    if stop is None or heard.readings.f_number is not None:
        return None
    steps = -token.numbers[0] if heard.tells(_OPENED) else token.numbers[0]
    return f"at f/{stop * 2 ** (steps / 2):.2g}"


def _with(token: Token, says: str, heard: Heard, before: Question, lexicon: Lexicon) -> Heard:
    """The line heard anew; as typed in all else. Where nothing else is asked, what was asked before goes on."""
    led = heard.led_by(token)
    first = led if led is not None and led.kind == "PREP" else token
    text = f"{heard.text[: first.column - 1]}{says}{heard.text[token.end :]}"
    again = hear(text, lexicon, before.intent)
    again = replace(again, line=replace(again.line, text=heard.text))
    asks = any(cue.tells not in _IDLE for cue in again.cues)
    return again if asks else replace(again, weighed=Weighed((), {}))
