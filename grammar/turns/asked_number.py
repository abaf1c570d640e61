"""A number alone that what was asked tells the meaning of: a widest stop, the shape of a frame, a density, a circle."""

from __future__ import annotations

from typing import Final

from grammar.hearing import Heard
from grammar.kinds import COVERAGE, EXPOSURE_ND
from grammar.questions import Question
from grammar.turns.number_roles import is_circle
from grammar.words.groups import OPENS
from grammar.words.tokens import Token
from grammar.words.written import SHAPES, STOPS

_SLOWEST: Final = 8.0  # of the widest stops of lenses


def by_what_was_asked(token: Token, heard: Heard, before: Question) -> str | None:
    """The number written out as what was asked makes it; None where it may be of anything."""
    return (
        _widest(token, heard, before)
        or _shape(token, before)
        or _density(token, before)
        or _circle(token, heard, before)
    )


def _widest(token: Token, heard: Heard, before: Question) -> str | None:
    """'it is a 1.4', 'it opens to 1.4' of a lens whose widest stop was not told."""
    lens, told = before.lens, token.numbers[0]
    open_yet = lens is not None and lens.kind != "lens" and lens.f_number is None and before.f_number is None
    said = heard.tells("it-is") or any(OPENS in one.groups for one in heard.line.tokens)
    return f"f/{told:g} lens" if open_yet and said and "." in token.text and told in STOPS and told < _SLOWEST else None


def _shape(token: Token, before: Question) -> str | None:
    """'in 2.39?' where a frame is to be covered: its shape."""
    number = token.numbers[0]
    return f"{number:g}:1" if before.intent == COVERAGE and (number, 1) in SHAPES else None


def _density(token: Token, before: Question) -> str | None:
    """'I only have a 3.0' where a filter is chosen: a density, which no stop is written like."""
    number = token.numbers[0]
    tenths = round(number * 10)
    written = "." in token.text and tenths % 3 == 0 and 3 <= tenths <= 39
    return f"ND {token.text}" if before.intent == EXPOSURE_ND and written and _is_no_stop(token) else None


def _circle(token: Token, heard: Heard, before: Question) -> str | None:
    """'reckon 15' after whether a lens covers, where its circle was not told."""
    number = token.numbers[0]
    open_yet = before.intent == COVERAGE and before.said("circle") is None and bool(before.lenses)
    return f"{number:g} mm image circle" if open_yet and heard.tells("estimate") and is_circle(number) else None


def _is_no_stop(token: Token) -> bool:
    return token.numbers[0] not in STOPS or token.text.endswith(".0")
