"""Glass told by its factor beside other pieces: '1.4 and 2x converters', 'a 1.4x and a 2x on it', 'plain or .71'."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from grammar.numbers.optics_numbers import EXTENDERS, LENSLIKE
from grammar.words.tokens import Token
from grammar.words.written import TELECONVERTER

_STANDS: Final = "behind"

_NUMBERS: Final = frozenset(["NUMBER", "TIMES"])
_JOINS: Final = frozenset(["and", "+", "&", ",", "/"])
_BEHIND: Final = frozenset(["on", "behind", "with"])
_NAMED: Final = ("convert", "extend")  # what the words for such glass begin with
_EXTENDER: Final = "teleconverter"
_MARKS: Final = frozenset(["JOIN", "STOP", "MARK", "CUE"])
_FOCAL: Final = frozenset(["LENGTH", "NUMBER", "RANGE"])
_FEWEST: Final = 2
_REDUCES: Final = (0.4, 0.95)  # factors that reducers have
_EITHER: Final = frozenset(["or", "vs"])
_RINGS: Final = frozenset(["adapter", "plain"])


def with_extenders_joined(tokens: list[Token]) -> list[Token]:
    """The tokens with each factor of a row of extenders as that of one."""
    out = list(tokens)
    at = 0
    while at < len(out):
        row = _row(out, at)
        if len(row) >= _FEWEST and _is_of_extenders(out, row):
            for one in row:
                out[one] = out[one].as_("TIMES", unit=TELECONVERTER)
        at = row[-1] + 1 if row else at + 1
    return out


def with_reducers_told(tokens: list[Token]) -> list[Token]:
    """'plain ring or .71 for my FD 50': a number below 1 set against a ring is the factor of a reducer."""
    out = list(tokens)
    for at, token in enumerate(out):
        bare = token.kind == "NUMBER" and _REDUCES[0] <= token.numbers[0] <= _REDUCES[1]
        if bare and (_is_set_against(out[:at][::-1]) or _is_set_against(out[at + 1 :])):
            out[at] = token.as_("TIMES")
    return out


def _is_set_against(rest: list[Token]) -> bool:
    """Whether a ring follows, parted from it by 'or' or 'against' alone."""
    near = [one for one in rest[:4] if one.kind != "DET"][:2]
    if len(near) < _FEWEST or near[0].kind != "JOIN" or near[0].value not in _EITHER:
        return False
    return near[1].kind == "PIECE" and near[1].value in _RINGS


def _row(tokens: list[Token], at: int) -> list[int]:
    """Where the factors of a row stand that begins here, each joined to the one before.

    '85mm 1.4 and a 2x converter': a bare number right behind a focal length is how far that lens opens.
    """
    row: list[int] = []
    if at and tokens[at].kind == "NUMBER" and tokens[at - 1].kind in _FOCAL:
        return row
    while at < len(tokens) and tokens[at].kind in _NUMBERS and tokens[at].numbers[0] in EXTENDERS:
        row.append(at)
        at += 1
        if at >= len(tokens) or not _joins(tokens[at]):
            break
        at += 1
        at += at < len(tokens) and tokens[at].kind == "DET"
    return row


def _joins(token: Token) -> bool:
    """'and', '+', and 'and a', which is a 'with' elsewhere."""
    return token.value in _JOINS if token.kind == "JOIN" else token.kind == "PREP" and token.text.startswith("and")


def _is_of_extenders(tokens: list[Token], row: list[int]) -> bool:
    """Whether the glass is named beside the row, or all are factors and a lens follows that they are put on."""
    before = [one for one in tokens[max(0, row[0] - 3) : row[0]] if one.kind not in _MARKS]
    around = [*before[-1:], *tokens[row[-1] + 1 : row[-1] + 2]]
    if any(_names(one) for one in around):
        return True
    after = [one for one in tokens[row[-1] + 1 : row[-1] + 4] if one.kind != "DET"]
    placed = len(after) > 1 and after[0].kind == "PREP" and after[0].value in _BEHIND and after[1].kind in LENSLIKE
    return placed and all(tokens[at].kind == "TIMES" for at in row)


def _names(token: Token) -> bool:
    return token.kind == "PIECE" and (token.value == _EXTENDER or token.text.casefold().startswith(_NAMED))


def with_glass_before_lens(tokens: list[Token]) -> list[Token]:
    """'0.71 + APS-C lens': a factor that a lens is joined to is glass by itself."""
    out = list(tokens)
    for at, (factor, join) in enumerate(pairwise(tokens)):
        rest = [one.kind for one in tokens[at + 2 : at + 5] if one.kind != "DET"]
        lens = rest[:2] in (["FORMAT", "LENS"], ["KIND", "LENS"], ["MOUNT", "LENS"]) or rest[:1] in (
            ["LENS"],
            ["COMBO"],
        )
        if factor.kind == "TIMES" and factor.numbers[0] < 1 and "." in factor.text and join.kind == "JOIN" and lens:
            out[at + 1] = join.as_("PREP", value=_STANDS)
    return out
