"""A row of marks or draws before the word for them: 'the 3, 5 and 10 ft marks', '20, 40 and 60 mm draw'."""

from __future__ import annotations

from typing import Final

from engine.base.units import FAR_UNITS
from grammar.words.groups import REALLY
from grammar.words.tokens import Token

_MARK: Final = "mark"
_DRAW: Final = "extension"
_LEAST_ROW: Final = 2  # beside the last
_BETWEEN: Final = frozenset(["JOIN", "DET"])
_LED: Final = 4  # tokens
_LEAST_MM: Final = 100.0


def with_mark_rows(tokens: list[Token]) -> list[Token]:
    """What the last number of the row is, a mark of a scale, all of them are, in its unit where they have none."""
    out = list(tokens)
    for at, token in enumerate(out):
        if token.kind == "KEYED" and token.value == _MARK and token.unit in FAR_UNITS:
            _take(out, at)
            _tell_real(out, at)
            _take_of_others(out, at)
        elif token.kind == "KEYED" and token.value == _DRAW:
            _take_draws(out, at)
    return out


def _take_of_others(tokens: list[Token], at: int) -> None:
    """'infinity at the 12 m mark on a 35 and at 25 m on a 50': what is told of another lens in the same words."""
    if not _is_on_lens(tokens, at + 1):
        return
    for place in range(at + 1, len(tokens)):
        token, before = tokens[place], tokens[place - 1]
        placed = before.kind in ("PREP", "AT") and before.value == "at"
        if token.kind == "LENGTH" and token.unit in FAR_UNITS and placed and _is_on_lens(tokens, place + 1):
            tokens[place] = token.as_("KEYED", value=_MARK)


def _is_on_lens(tokens: list[Token], at: int) -> bool:
    """'... on a 35', '... with my 50 mm'."""
    rest = [one for one in tokens[at : at + _LED] if one.kind not in ("DET", "CUE")]
    led = len(rest) > 1 and rest[0].kind == "PREP" and rest[0].value in ("on", "with", "for")
    return led and (rest[1].kind in ("FOCAL", "NUMBER", "COMBO") or rest[1].is_mm)


def _tell_real(tokens: list[Token], at: int) -> None:
    """'the 1 m mark is really 1.3': where it is sharp in truth, in the unit of the mark."""
    place, real = at + 1, False
    while place < len(tokens) and tokens[place].kind in ("CUE", "DET"):
        real = real or REALLY in tokens[place].groups
        place += 1
    number = tokens[place] if place < len(tokens) and real else None
    if number is not None and number.kind == "NUMBER" and "." in number.text:
        unit = tokens[at].unit
        tokens[place] = number.as_("KEYED", value="distance", unit=unit, numbers=(number.numbers[0] * FAR_UNITS[unit],))


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
        if not joined or number.kind not in ("NUMBER", "LENGTH") or number.unit not in ("", *FAR_UNITS):
            return
        size = number.numbers[0] * (FAR_UNITS[unit] if number.kind == "NUMBER" else 1.0)
        if number.text.isalpha() or size < _LEAST_MM:
            return
        tokens[place] = number.as_("KEYED", value=_MARK, unit=unit, numbers=(size,))
        place -= 1
