"""A row of marks or draws before the word for them: 'the 3, 5 and 10 ft marks', '20, 40 and 60 mm draw'."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import REALLY
from grammar.words.tokens import Token

_MARK: Final = "mark"
_DRAW: Final = "extension"
_LEAST_ROW: Final = 2  # beside the last
_FAR: Final = {"m": 1000.0, "cm": 10.0, "ft": 304.8, "in": 25.4}
_BETWEEN: Final = frozenset(["JOIN", "DET"])
_LEAST_MM: Final = 100.0


def with_mark_rows(tokens: list[Token]) -> list[Token]:
    """What the last number of the row is, a mark of a scale, all of them are, in its unit where they have none."""
    out = list(tokens)
    for at, token in enumerate(out):
        if token.kind == "KEYED" and token.value == _MARK and token.unit in _FAR:
            _take(out, at)
            _tell_real(out, at)
        elif token.kind == "KEYED" and token.value == _DRAW:
            _take_draws(out, at)
    return out


def _tell_real(tokens: list[Token], at: int) -> None:
    """'the 1 m mark is really 1.3': where it is sharp in truth, in the unit of the mark."""
    place, real = at + 1, False
    while place < len(tokens) and tokens[place].kind in ("CUE", "DET"):
        real = real or REALLY in tokens[place].groups
        place += 1
    number = tokens[place] if place < len(tokens) and real else None
    if number is not None and number.kind == "NUMBER" and "." in number.text:
        unit = tokens[at].unit
        tokens[place] = number.as_("KEYED", value="distance", unit=unit, numbers=(number.numbers[0] * _FAR[unit],))


def _take_draws(tokens: list[Token], at: int) -> None:
    """So many in a row that none of them is the lens, which is told beside."""
    row: list[int] = []
    place = at - 1
    while place > 0 and tokens[place].kind == "JOIN" and tokens[place - 1].kind in ("NUMBER", "LENGTH"):
        row.append(place - 1)
        place -= 2
    plain = all(tokens[one].unit in ("", "mm") and not tokens[one].text.isalpha() for one in row)
    if len(row) >= _LEAST_ROW and plain:
        for one in row:
            tokens[one] = tokens[one].as_("KEYED", value=_DRAW, unit="mm")


def _take(tokens: list[Token], at: int) -> None:
    unit = tokens[at].unit
    place = at - 1
    while place > 0 and tokens[place].kind in _BETWEEN:
        joined = False
        while place > 0 and tokens[place].kind in _BETWEEN:
            joined = joined or tokens[place].kind == "JOIN"
            place -= 1
        number = tokens[place]
        if not joined or number.kind not in ("NUMBER", "LENGTH") or number.unit not in ("", *_FAR):
            return
        size = number.numbers[0] * (_FAR[unit] if number.kind == "NUMBER" else 1.0)
        if number.text.isalpha() or size < _LEAST_MM:
            return
        tokens[place] = number.as_("KEYED", value=_MARK, unit=unit, numbers=(size,))
        place -= 1
