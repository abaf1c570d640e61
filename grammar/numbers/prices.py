"""Bare numbers that are prices, by a price told beside them: '12 or 60 bucks', 'a 12 dollar ring or the 60 one'."""

from __future__ import annotations

from typing import Final

from grammar.things.standins import STANDIN
from grammar.words.groups import COSTS, DEALING
from grammar.words.tokens import Token

_PRICE: Final = "PRICE"
_ONE: Final = "one"
_TO: Final = "to"  # '15 to 40 euros'
_BETWEEN: Final = frozenset(["JOIN", "CUE", "DET", "PREP", "AT", "VERB", "FILLER", "LETTER"])
_REACH: Final = 5  # tokens between two prices
_ENDS: Final = frozenset(["STOP", "JOIN", "CUE"])  # what may stand behind a price that ends what is said


def with_prices_told(tokens: list[Token]) -> list[Token]:
    """A number before a joining word and a price, or behind a price before a word that stands for the thing.

    The word goes: a ring that its price tells is no lens of that focal length.
    """
    tokens = _dealt(tokens)
    if not any(token.kind == _PRICE for token in tokens):
        return tokens
    tokens = _with_other_price(tokens)
    out: list[Token] = []
    priced = False
    for at, token in enumerate(tokens):
        after = [one.kind for one in tokens[at + 1 : at + 3]]
        stands = at + 1 < len(tokens) and STANDIN in tokens[at + 1].implies
        before = priced and out and out[-1].kind == _PRICE and STANDIN in token.implies
        spread = after == ["PREP", _PRICE] and tokens[at + 1].text.casefold() == _TO
        if token.kind == "NUMBER" and (spread or after == ["JOIN", _PRICE] or (priced and stands)):
            token = token.as_(_PRICE)
        elif before:
            token = token.as_("CUE")
        priced = priced or token.kind == _PRICE
        out.append(token)
    return out


def _with_other_price(tokens: list[Token]) -> list[Token]:
    """'one at 12 bucks one at 85', '10 and one 60 dollars': what is set beside the one price is another."""
    prices = [at for at, one in enumerate(tokens) if one.kind == _PRICE]
    others = [at for at, one in enumerate(tokens) if one.kind == "NUMBER" and one.text.isdecimal()]
    if len(prices) != 1 or len(others) != 1:
        return tokens
    first, last = sorted((*prices, *others))
    between, after = tokens[first + 1 : last], tokens[others[0] + 1 : others[0] + 2]
    set_beside = any(one.kind == "JOIN" or one.text.casefold() == _ONE for one in between)
    passed = all(one.kind in _BETWEEN or one.text.casefold() == _ONE for one in between) and len(between) <= _REACH
    led_to_price = others[0] == first and between and between[0].kind in ("PREP", "AT")  # 'a 28 for 12 bucks'
    if set_beside and passed and not led_to_price and (not after or after[0].kind in _ENDS | _BETWEEN | {_PRICE}):
        tokens[others[0]] = tokens[others[0]].as_(_PRICE)
    return tokens


def _dealt(tokens: list[Token]) -> list[Token]:
    """'worth buying a 58/2 M42 for 20': what is bought for a bare whole number costs so much."""
    dealt = any(DEALING in token.groups for token in tokens)
    for at in range(1, len(tokens) if dealt else 0):
        number, led = tokens[at], tokens[at - 1]
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        in_row = after is not None and after.kind == "JOIN" and bool(tokens[at + 2 : at + 3] and tokens[at + 2].numbers)
        bare = number.kind == "NUMBER" and number.text.isdecimal() and (after is None or after.kind in _ENDS)
        bare = bare and not in_row  # 'which one to buy for 46, 52 and 58'
        if bare and led.kind == "PREP" and led.text.casefold() == "for":
            tokens[at] = number.as_(_PRICE)
            tokens[at - 1] = led.as_("CUE")
        elif bare and COSTS in led.groups:
            tokens[at] = number.as_(_PRICE)  # 'costs 20, and the other one 300'
    return tokens
