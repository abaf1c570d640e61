"""Filters at hand that are told in a row: 'a 6 and a 3 stop', 'NDs: 3 stop, 6 stop', 'my nds are 2, 4 and 8'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.densities import DENSITIES
from grammar.words.groups import GREY
from grammar.words.tokens import Token

_ROWED: Final = frozenset(["STOPS", "NUMBER", "ND"])
_LEADS: Final = frozenset(["VERB", "MARK", "DET", "PREP", "FILLER", "JOIN"])  # between the filters and their row
_BETWEEN: Final = frozenset(["JOIN", "DET", "FILLER"])
_AND_A: Final = "with"  # value of 'and a'
_OWNED: Final = "own"  # value of 'have', 'got'
_LIT: Final = frozenset(["LIGHT", "EV", "SHUTTER", "ISO"])  # what is told of an exposure
_A_STOP: Final = 0.3  # density
_STRONGEST: Final = 10.0  # stops that one filter takes away


def with_filters_owned(tokens: list[Token]) -> list[Token]:
    """The tokens with each filter of a row of them as ND, where an exposure is told."""
    if not any(token.kind in _LIT for token in tokens):
        return tokens
    for at, token in enumerate(tokens):
        row = _row_from(tokens, at) if token.kind in _ROWED else []
        if len(row) < 2 or not (_is_led_by_filters(tokens, at) or _is_owned_in_stops(tokens, row)):
            continue
        named = _named([tokens[one] for one in row])
        if named is None:
            continue
        inside = range(row[0], row[-1])
        marks = dict(zip(row, named, strict=True))
        return [
            one.as_("ND", value=marks[n], unit="") if n in marks else one
            for n, one in enumerate(tokens)
            if n in marks or n not in inside or not _is_grey(one)
        ]
    return tokens


def _row_from(tokens: list[Token], first: int) -> list[int]:
    """The places of the numbers in the row that begins here."""
    row, at = [first], first + 1
    while at < len(tokens):
        start = at
        while at < len(tokens) and (
            tokens[at].kind in _BETWEEN or tokens[at].value == _AND_A or (at > start and _is_grey(tokens[at]))
        ):
            at += 1
        joined = any(one.kind == "JOIN" or one.value == _AND_A for one in tokens[start:at])
        if not joined or at >= len(tokens) or tokens[at].kind not in _ROWED:
            break
        row.append(at)
        at += 1
    return row


def _is_led_by_filters(tokens: list[Token], at: int) -> bool:
    """'my nds are 2, 4 and 8', 'filters in the bag: 0.9, 1.8': they head the row, of whatever it is a row of."""
    before = at - 1
    while before >= 0 and tokens[before].kind in _LEADS:
        before -= 1
    return before >= 0 and before < at - 1 and _is_filter(tokens[before])


def _is_owned_in_stops(tokens: list[Token], row: list[int]) -> bool:
    """'I have a 6 and a 3 stop', 'got ND 3 and ND 6 stops': stops are told of the last, and they are at hand."""
    led = [one for one in tokens[: row[0]] if one.kind not in ("DET", "FILLER") or one.value == _OWNED]
    led = [one for one in led if one.kind != "LETTER"]
    return tokens[row[-1]].kind == "STOPS" and bool(led) and led[-1].value == _OWNED


def _named(row: list[Token]) -> list[str] | None:
    """How each is marked: all by stops where one is told in stops, else by density or factor; None where by neither."""
    sizes = [token.numbers[0] for token in row if token.numbers]
    if len(sizes) < len(row):
        return None
    if any(token.kind == "STOPS" for token in row):
        if any(token.kind != "ND" and size > _STRONGEST for token, size in zip(row, sizes, strict=True)):
            return None
        return [token.value if _is_marked(token) else f"ND {token.numbers[0] * _A_STOP:.1f}" for token in row]
    if any(token.kind == "ND" for token in row):
        return None  # each is told as it is marked
    if all("." in token.text and size in DENSITIES for token, size in zip(row, sizes, strict=True)):
        return [f"ND {token.text}" for token in row]
    if not all(size.is_integer() and size > 1 for size in sizes):
        return None
    if all(_is_factor(size) for size in sizes):
        return [f"ND{size:g}" for size in sizes]  # factors, as filters are marked with them
    return [f"ND {size * _A_STOP:.1f}" for size in sizes] if max(sizes) <= _STRONGEST else None


def _is_marked(token: Token) -> bool:
    """'ND8', 'ND 1.8', and not the 'ND 3' of 'ND 3 and ND 6 stops'."""
    return token.kind == "ND" and (not token.numbers[0].is_integer() or _is_factor(token.numbers[0]))


def _is_factor(size: float) -> bool:
    """A power of two, as the factors are that filters are marked with."""
    return size > 1 and int(size) & (int(size) - 1) == 0


def _is_grey(token: Token) -> bool:
    return GREY in token.groups and token.kind != "ND"


def _is_filter(token: Token) -> bool:
    return (token.kind, token.value) == ("PIECE", "filter") or _is_grey(token)
