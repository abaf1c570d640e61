"""What a focus scale bears: 'the scale reads 3, 5, 10 and 30 ft', 'marked in feet: 3 4 5 7 10 15 30 inf'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.units import FAR_UNITS
from grammar.words.groups import ENDLESS, SCALE_LED
from grammar.words.tokens import Token

_MARK: Final = "mark"
SCALE_MARKS: Final = 3  # so many rising or falling numbers are a scale
_NUMBERS: Final = frozenset(["NUMBER", "LENGTH", "KEYED", "FOCAL"])
_LEADS_BY: Final = frozenset(["CUE", "DET", "PREP", "JOIN", "NAMED", "LENS", "MOUNT", "FNUM", "MEASURE"])
_REACH: Final = 9  # tokens between the word for a scale and its first mark
_BEHIND: Final = 4
_ROUND: Final = 0.01
_LONGEST_MM: Final = 200_000.0
_SHORTEST_MM: Final = 80.0


def with_scale_rows(tokens: list[Token], told: frozenset[str]) -> list[Token]:
    """Every number of such a row is a mark, in the unit of the one that has one, else that which is told beside it."""
    out = list(tokens)
    at = 0
    while at < len(out):
        row = _row(out, at)
        if len(row) < SCALE_MARKS or not (_is_led(out, row[0]) or _is_followed(out, row[-1])):
            at = (row[-1] if row else at) + 1
            continue
        unit = next((told_in for one in reversed(row) if (told_in := _unit(out[one]))), "")
        unit = unit or ("ft" if "feet" in told else "m")
        sizes = [_bare(out[one]) * FAR_UNITS[unit] for one in row]
        if min(sizes) >= _SHORTEST_MM and max(sizes) <= _LONGEST_MM:
            for one, size in zip(row, sizes, strict=True):
                out[one] = out[one].as_("KEYED", value=_MARK, unit=unit, numbers=(size,), ids=())
        at = row[-1] + 1
    return out


def _row(tokens: list[Token], at: int) -> list[int]:
    """Places of the rising or falling numbers from `at` on, with no more than a join between them."""
    row: list[int] = []
    place = at
    while place < len(tokens):
        token = tokens[place]
        if token.kind in _NUMBERS and len(token.numbers) == 1 and not token.text.isalpha():
            if not _is_plain(token) or not _goes_on([*row, place], tokens):
                break
            row.append(place)
        elif not row or (token.kind != "JOIN" and ENDLESS not in token.groups):
            break
        place += 1
    return row


def _is_plain(token: Token) -> bool:
    """Whether it stands as a number alone, or as a distance; what a word before it made of it may have been wrong."""
    return token.unit in ("", *FAR_UNITS) or (token.kind == "KEYED" and token.text.replace(".", "").isdigit())


def _goes_on(row: list[int], tokens: list[Token]) -> bool:
    sizes = [_bare(tokens[one]) for one in row]
    return all(a < b for a, b in pairwise(sizes)) or all(a > b for a, b in pairwise(sizes))


def _unit(token: Token) -> str:
    """The unit that is written with it; none where a word before it lent it one."""
    if token.text.replace(".", "").replace(",", "").isdigit():
        return ""
    return next(
        (unit for unit, size in FAR_UNITS.items() if abs(token.numbers[0] / _bare(token) / size - 1) < _ROUND), ""
    )


def _bare(token: Token) -> float:
    """The number as it is written, in whatever unit."""
    written = token.text.split()[0].rstrip("'\"").replace(",", ".") if token.text else ""
    try:
        return float(written)
    except ValueError:
        return token.numbers[0] / FAR_UNITS.get(token.unit, 1.0)


def _is_led(tokens: list[Token], at: int) -> bool:
    """Whether a word for a scale stands before it, of a lens or by itself."""
    for place in range(at - 1, max(at - 1 - _REACH, -1), -1):
        if SCALE_LED in tokens[place].groups:
            return True
        if tokens[place].kind not in _LEADS_BY:
            return False
    return False


def _is_followed(tokens: list[Token], at: int) -> bool:
    behind = tokens[at + 1 : at + 1 + _BEHIND]
    return any(SCALE_LED in one.groups for one in behind)
