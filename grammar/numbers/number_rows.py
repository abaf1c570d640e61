"""Rows of bare numbers that are lengths of pieces: '10 + 16 + 21 tubes', 'rings 1.0 + 9.8', 'tube set 7 14 28'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_TUBES: Final = "extension-tube"
_LONGEST_TUBE: Final = 100.0  # mm
_LEAST_SET: Final = 2  # numbers


def all_lengths(tokens: list[Token], at: int) -> None:
    """'10 + 16 + 21 tubes': what the last of a row of bare numbers is of, all of them are."""
    first = at
    while first > 1 and tokens[first - 1].kind == "JOIN" and is_number(tokens[first - 2]):
        first -= 2
    if first == at:
        return
    for place in range(first, at + 1, 2):
        tokens[place] = tokens[place].as_("LENGTH", unit="mm")


def row_behind(tokens: list[Token], at: int) -> None:
    """'rings 1.0 + 9.8': a row of bare numbers right behind a piece, added up or told to the tenth."""
    row = [at]
    while at + 2 < len(tokens) and tokens[at + 1].kind == "JOIN" and is_number(tokens[at + 2]):
        at += 2
        row.append(at)
    added = len(row) > 1 and all(tokens[one - 1].text in ("+", "and", "&") for one in row[1:])
    if added and any("." in tokens[one].text for one in row):
        for one in row:
            tokens[one] = tokens[one].as_("LENGTH", unit="mm")


def set_behind(tokens: list[Token], at: int) -> None:
    """'tube set 7 14 28': two or more bare numbers right behind tubes are their lengths."""
    end = at + 1
    while end < len(tokens) and is_number(tokens[end]) and tokens[end].numbers[0] <= _LONGEST_TUBE:
        end += 1
    if tokens[at].value == _TUBES and end - at > _LEAST_SET:
        for place in range(at + 1, end):
            tokens[place] = tokens[place].as_("LENGTH", unit="mm")


def is_number(token: Token) -> bool:
    return token.kind == "NUMBER" and not token.text.isalpha()
