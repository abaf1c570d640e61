"""One of two settings of an exposure told anew: 'and to f/8' after f/2 to f/5.6, 'from 1/30' after 1/60 to 1/500."""

from __future__ import annotations

import re
from typing import Final, TypeVar

from engine.base.compact import replace
from grammar.hearing import Heard
from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question, Thing

_CLAUSES: Final = re.compile(r"[,;?]|\.\s")
_Setting = TypeVar("_Setting", str, float)
_FIXED: Final = "fixed iris"
_METER: Final = "meter"
_METERED: Final = "metered"
_SHUTTER: Final = "shutter"
_ISO: Final = "iso"
_NUMBERS: Final = "numbers"
_LEAST_ISO: Final = 25
_CLOSED: Final = 4.0  # the widest stop told of a lens that may as well be the one it was set to
_LIGHT: Final = "light"
_FROM: Final = "from"


def with_stops_again(heard: Heard, said: Question, before: Question) -> tuple[Question, Question]:
    """What is said, and the question before it, with one of two settings, or that of the lens, anew."""
    said, changed = _with_setting_again(heard, said, before)
    return said, changed if changed is not before else _without_set_stop(said, before)


def _with_setting_again(heard: Heard, said: Question, before: Question) -> tuple[Question, Question]:
    """What is said, and the question before it, with the stop or the shutter told now as the second of the two.

    The first of them stays, which the other is set against; 'from ..' tells another first.
    """
    if not said.intent == before.intent == EXPOSURE_ND or before.said(_LIGHT) or said.said(_LIGHT):
        return said, before
    said = _with_speed(heard, said)
    stops = _stops(before)
    for key in (_SHUTTER, _ISO):
        old, new = _told(before, key), _told(said, key)
        changed = len(old) == 2 or (key == _ISO and len(old) == 1 and len(stops) == 2)
        if changed and len(new) == 1 and heard.readings.f_number is None:
            both = ", ".join(_put((old[0], old[-1]), new[0], heard))
            said = said.with_(values=(*(row for row in said.values if row[0] != key), (key, both)))
    if len(stops) != 2 or not all(_is_stop(lens) for lens in before.lenses) or heard.tells("which-stop"):
        return said, before
    told = said.stops or ((said.f_number,) if said.f_number is not None else ())
    lenses = all(_is_stop(lens) for lens in said.lenses)
    if len(told) > 1 or not lenses or (told and heard.readings.values.get(_SHUTTER)):
        return said, before
    if not told and stops[0] == stops[1]:
        return said, before
    if told:
        stops = _put(stops, told[0], heard)
    things = tuple(Thing(words=f"f/{one:g}", column=n, f_number=one) for n, one in enumerate(stops, 1))
    said = said.with_(lenses=(), f_number=None, stops=stops if told else said.stops)
    return said, before.with_(lenses=things, f_number=None)


def _with_speed(heard: Heard, said: Question) -> Question:
    """'which iso then, was 100': the bare number beside the word is the one that was set."""
    told, words = said.said(_NUMBERS) or "", {token.value for token in heard.line.tokens}
    if _ISO not in words or said.said(_ISO) is not None or not told.isdecimal() or int(told) < _LEAST_ISO:
        return said
    rest = said.rest(_NUMBERS)
    return said.with_(values=(*rest, (_ISO, told)))


def _without_set_stop(said: Question, before: Question) -> Question:
    """'f5.6?' after 'a 35 mm f/8', which no lens of its own opens to: so far it was closed, and now is not."""
    old, told = before.lens, said.f_number
    if old is None or old.kind == "lens" or told is None or old.f_number is None or len(before.lenses) > 1:
        return before
    if told >= old.f_number or old.f_number < _CLOSED:
        return before
    return before.with_(lenses=(replace(old, f_number=None),))


def _put(two: tuple[_Setting, ...], told: _Setting, heard: Heard) -> tuple[_Setting, ...]:
    first = any(token.text.casefold() == _FROM for token in heard.line.tokens)
    return (told, two[1]) if first else (two[0], told)


def _told(question: Question, key: str) -> tuple[str, ...]:
    return tuple(one for one in (question.said(key) or "").split(", ") if one)


def _stops(before: Question) -> tuple[float, ...]:
    """The two stops of before in the order told, where that is the order they are set in."""
    if any(_FIXED in lens.traits for lens in before.lenses):
        return ()
    if len(before.stops) == 2:
        at = next((one.at for one in before.places(_METER)), 0)
        led, first = _CLAUSES.split(before.text[:at]), f"{before.stops[0]:g}"
        return () if any(first in one for one in led[:-1]) else before.stops  # 'set to f/2, the meter says f/8'
    told = tuple(lens.f_number for lens in before.lenses if lens.f_number is not None)
    one = before.f_number or (told[0] if len(told) == 1 else None)
    if one is not None and before.said(_SHUTTER) and before.places(_METERED) and len(before.lenses) < 2:
        return (one, one)  # '1/60 at f/5.6 metered': what is set next is set against that
    return told if len(told) == len(before.lenses) and before.f_number is None else ()


def _is_stop(lens: Thing) -> bool:
    """Whether nothing of it is told but its stop."""
    told = lens.ids or lens.focal_length_mm or lens.format or lens.lens_kind or lens.traits
    return lens.f_number is not None and not told
