"""A row of marks before the word for them: 'the 3, 5 and 10 ft marks', 'the 1m and the 2m mark'."""

from __future__ import annotations

from typing import Final

from grammar.words.tokens import Token

_MARK: Final = "mark"
_FAR: Final = {"m": 1000.0, "cm": 10.0, "ft": 304.8, "in": 25.4}
_BETWEEN: Final = frozenset(["JOIN", "DET"])
_LEAST_MM: Final = 100.0


def with_mark_rows(tokens: list[Token]) -> list[Token]:
    """What the last number of the row is, a mark of a scale, all of them are, in its unit where they have none."""
    out = list(tokens)
    for at, token in enumerate(out):
        if token.kind == "KEYED" and token.value == _MARK and token.unit in _FAR:
            _take(out, at)
    return out


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
