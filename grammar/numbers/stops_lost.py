"""By how many stops a filter or glass is told to darken, as a bare number: 'polariser loses 1.5, metered 1/60'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import GREY, LOSES
from grammar.words.tokens import Token

_FILTER: Final = "filter"
_FACTORS: Final = frozenset([2, 4, 8, 16, 32, 64, 128, 256, 400, 500, 1000])
_MOST: Final = 4.0  # stops
_ENDS: Final = frozenset(["STOP", "JOIN", "PREP"])
_BETWEEN: Final = frozenset(["FILLER", "DET", "MARK"])


def with_stops_lost(tokens: list[Token]) -> list[Token]:
    """The number as STOPS, where nothing follows that it could be of; no density is told by what it loses."""
    out = _with_row_behind(list(tokens))
    for at, token in enumerate(tokens):
        if token.kind != "NUMBER" or token.text.isalpha() or not 0 < token.numbers[0] <= _MOST:
            continue
        back = [one for one in tokens[:at] if one.kind not in _BETWEEN or LOSES in one.groups][-2:]
        after = tokens[at + 1] if at + 1 < len(tokens) else None
        filtered = len(back) > 1 and (back[0].kind, back[0].value) == ("PIECE", _FILTER)
        if filtered and LOSES in back[1].groups and (after is None or after.kind in _ENDS):
            out[at] = token.as_("STOPS")
    return out


def _with_row_behind(tokens: list[Token]) -> list[Token]:
    """'nd filters 2 4 8 16 stacked': a row of factors as they are engraved, right behind the name of such filters."""
    for at, token in enumerate(tokens[:-2]):
        grey = at > 0 and GREY in tokens[at - 1].groups
        if not (grey and (token.kind, token.value) == ("PIECE", _FILTER)):
            continue
        end = at + 1
        while end < len(tokens) and (tokens[end].kind == "JOIN" or _is_factor(tokens[end])):
            end += 1
        row = [n for n in range(at + 1, end) if tokens[n].kind == "NUMBER"]
        if len(row) > 1 and (end == len(tokens) or tokens[end].kind != "STOPS"):
            for n in row:
                tokens[n] = tokens[n].as_("ND", value=f"ND{tokens[n].numbers[0]:g}", unit="")
    return tokens


def _is_factor(token: Token) -> bool:
    return token.kind == "NUMBER" and token.text.isdecimal() and token.numbers[0] in _FACTORS
