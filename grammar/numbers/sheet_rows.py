"""A row of bare thicknesses behind what they are of: 'washers are .05 .1 .2 .3', and the one apart that is wanted."""

from __future__ import annotations

from typing import Final

from grammar.words.groups import LAYERS, SHEETS
from grammar.words.token_kinds import LENGTHS
from grammar.words.tokens import Token

LAYER: Final = "layer"
TOTAL: Final = "total"
_BETWEEN: Final = frozenset(["JOIN", "CUE", "DET", "PREP"])
_THICKEST_MM: Final = 0.7  # of what is still called sheet
_MOST_WANTED_MM: Final = 3.0  # what is more is no shim
_LEAST_ROW: Final = 2
_COUNTED: Final = "how-many"
_GOING_ON: Final = "after-shim-calibration"
_EACH: Final = frozenset(["one", "each", "single", "apiece"])
_NEAR: Final = 2  # words at most between one and how thick it is
_OF_A_LENS: Final = frozenset(["LENS", "KIND", "FNUM", "COMBO", "RATIO"])
_OF_SHIMS: Final = frozenset(["shim", "foil"])


def with_sheet_rows(tokens: list[Token], told: frozenset[str] = frozenset()) -> list[Token]:
    """Every thickness of the row is one of a sheet at hand; a single other one is what they are to make."""
    out = [_in_mm(one) for one in tokens]
    tokens = list(out)
    two = _counted_and_wanted(out) or _sheet_and_sum(out, told)
    if two is not None:
        return two
    if told & _OF_SHIMS and not any(token.kind == "MEASURE" for token in tokens):
        return _several_kinds(out)  # 'shim 0.22 out of 0.1 and 0.05, how many'
    for at, token in enumerate(tokens):
        if token.kind != "MEASURE" or token.value != LAYER:
            continue
        row = _row(out, at + 1) or _row_before(out, at)
        if len(row) < _LEAST_ROW:
            return _several_kinds(out)
        apart = [place for place, one in enumerate(out) if place not in row and _is_thickness(one, _MOST_WANTED_MM)]
        for place in row:
            out[place] = out[place].as_("KEYED", value=LAYER, unit="mm")
        out[at] = token.as_("CUE")
        if len(apart) == 1:
            out[apart[0]] = out[apart[0]].as_("KEYED", value=TOTAL, unit="mm")
        break
    return out


def _sheet_and_sum(tokens: list[Token], told: frozenset[str]) -> list[Token] | None:
    """'paper is 0.1, need 0.4, how many', 'if one is 0.015': a sheet is no thicker than what it makes."""
    layers = [n for n, one in enumerate(tokens) if (one.kind, one.value) == ("MEASURE", LAYER) or SHEETS in one.groups]
    if not (layers and _COUNTED in told) or any(one.kind in _OF_A_LENS for one in tokens):
        return None
    small = [place for place, one in enumerate(tokens) if _is_thickness(one, _MOST_WANTED_MM)]
    small.sort(key=lambda place: tokens[place].numbers[0])
    each = len(small) == 1 and (_is_each(tokens, small[0]) or (_GOING_ON in told and _is_measured(tokens, small[0])))
    if not (each or len(small) == _LEAST_ROW) or tokens[small[0]].numbers[0] > _THICKEST_MM:
        return None
    for place, meant in zip(small, (LAYER, TOTAL), strict=False):
        tokens[place] = tokens[place].as_("KEYED", value=meant, unit="mm")
    return [one.as_("CUE") if one.kind == "MEASURE" else one for one in tokens]


def _is_each(tokens: list[Token], at: int) -> bool:
    """'if one is 0.015', 'each 0.02', '0.05 each': how thick a single one is."""
    before = [one.text.casefold() for one in tokens[max(0, at - _NEAR) : at]]
    behind = [one.text.casefold() for one in tokens[at + 1 : at + 2]]
    return bool({*before, *behind} & _EACH)


def _is_measured(tokens: list[Token], at: int) -> bool:
    """'my paper mikes 0.09': right behind the word for the sheet, or what says that it is so."""
    before = tokens[at - 1] if at else None
    return before is not None and (before.kind == "MEASURE" or before.value == "be")


def _several_kinds(tokens: list[Token]) -> list[Token]:
    """'0.43 from brass 0.1, 0.2 and paper 0.08': of three or more the greatest is what the others are to make."""
    small = [place for place, one in enumerate(tokens) if _is_thickness(one, _MOST_WANTED_MM)]
    wanted = max(small, key=lambda place: tokens[place].numbers[0], default=0)
    others = [place for place in small if place != wanted]
    if len(others) < _LEAST_ROW or any(tokens[place].numbers[0] > _THICKEST_MM for place in others):
        return tokens
    for place in others:
        tokens[place] = tokens[place].as_("KEYED", value=LAYER, unit="mm")
    tokens[wanted] = tokens[wanted].as_("KEYED", value=TOTAL, unit="mm")
    return tokens


def _counted_and_wanted(tokens: list[Token]) -> list[Token] | None:
    """'3 layers of 0.05, enough for 0.2?': the smaller length is that of each, the larger what they shall make."""
    counted = next((n for n, one in enumerate(tokens) if one.kind == "NUMBER" and _counts_layers(tokens, n)), None)
    small = [n for n, one in enumerate(tokens) if n != counted and _is_thickness(one, _MOST_WANTED_MM)]
    if counted is None or len(small) != _LEAST_ROW or tokens[small[0]].numbers == tokens[small[1]].numbers:
        return None
    small.sort(key=lambda place: tokens[place].numbers[0])
    for place, meant in zip(small, (LAYER, TOTAL), strict=True):
        tokens[place] = tokens[place].as_("KEYED", value=meant, unit="mm")
    tokens[counted] = tokens[counted].as_("CUE")
    return [one.as_("CUE") if one.kind == "MEASURE" else one for one in tokens]


def _counts_layers(tokens: list[Token], at: int) -> bool:
    """'3 layers of 0.05': a whole number before the word for the sheets says how many there are."""
    after = tokens[at + 1] if at + 1 < len(tokens) else None
    named = after is not None and LAYERS in after.groups
    return named and tokens[at].numbers[0] == int(tokens[at].numbers[0]) and tokens[at].unit != "mm"


def _row(tokens: list[Token], at: int) -> list[int]:
    """The thicknesses that follow each other from `at` on, with no more than a join between."""
    row: list[int] = []
    gap = 0
    for place in range(at, len(tokens)):
        token = tokens[place]
        if _is_thickness(token, _THICKEST_MM):
            row.append(place)
            gap = 0
        elif gap or token.kind not in _BETWEEN or (row and token.kind != "JOIN"):
            break
        else:
            gap = 1
    return row


def _row_before(tokens: list[Token], end: int) -> list[int]:
    """'i have .1 .05 .02 stock': the same right before the word for what they are of."""
    first = end
    while first and (_is_thickness(tokens[first - 1], _THICKEST_MM) or tokens[first - 1].kind == "JOIN"):
        first -= 1
    return [place for place in range(first, end) if tokens[place].kind in LENGTHS]


def _in_mm(token: Token) -> Token:
    """'2 thou' among thicknesses of sheet, which are summed up in millimetres."""
    thin = token.kind == "LENGTH" and token.unit in ("thou", "mil") and len(token.numbers) == 1
    return token.as_("LENGTH", unit="mm") if thin else token


def _is_thickness(token: Token, most: float) -> bool:
    metric = token.may_be_mm and not token.text.isalpha()
    return metric and len(token.numbers) == 1 and 0 < token.numbers[0] <= most
