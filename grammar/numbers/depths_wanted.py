"""How much shall be sharp, beside how far away it is: '30 cm in focus at 1.5 m', '20 cm of depth at 2 m'."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise
from typing import Final

from grammar.words.groups import DEEP_SO, ROUND_IT, SHARP_SO, WANTED_SO
from grammar.words.tokens import Token

DEPTH: Final = "depth"
_BETWEEN: Final = frozenset(["of", "it", "them", "her", "him", "in", "the", "that", "me", "at least", "to be", "be"])
_FOCALS: Final = frozenset(["FOCAL", "COMBO", "NUMBER"])
_SIZES: Final = frozenset(["RATIO", "TIMES"])
_AT: Final = "at"
_OF: Final = "of"
_METRIC: Final = "mm"


def with_depths_wanted(tokens: list[Token]) -> list[Token]:
    """The length that shall be sharp as KEYED, where a longer one tells how far away, or a magnification how large."""
    for at, token in enumerate(tokens):
        if token.kind != "LENGTH" or not _may_be_deep(tokens, at):
            continue
        if not (_is_less(tokens, at) or _is_asked_for(tokens, at)):
            continue
        if _is_wanted_deep(tokens, at) or _is_behind_depth(tokens, at):
            return [*tokens[:at], token.as_("KEYED", value=DEPTH), *tokens[at + 1 :]]
    return tokens


def wants_length(tokens: Sequence[Token]) -> bool:
    """'not enough, i need 30 cm': a length right behind what tells that it is wanted."""
    return any(length.kind == "LENGTH" and WANTED_SO in verb.groups for verb, length in pairwise(tokens))


def _is_less(tokens: list[Token], at: int) -> bool:
    """Whether another length is greater, or a size is told."""
    sized = any(one.kind in _SIZES for one in tokens)
    return sized or any(one.kind == "LENGTH" and one.numbers[0] > tokens[at].numbers[0] for one in tokens)


def _is_asked_for(tokens: list[Token], at: int) -> bool:
    """'to have 10 cm of depth', where no distance is told: a length right behind the verb."""
    far = any(one.kind in ("LENGTH", "KEYED") and one.unit != _METRIC for n, one in enumerate(tokens) if n != at)
    return at > 0 and WANTED_SO in tokens[at - 1].groups and not far


def _may_be_deep(tokens: list[Token], at: int) -> bool:
    """Whether it is no lens: one in millimetres leaves another number for that, and stands behind no 'my'."""
    if tokens[at].unit != _METRIC:
        return True
    rest = [one for n, one in enumerate(tokens) if n != at]
    lens = any(one.kind in _FOCALS or (one.kind == "LENGTH" and one.unit == _METRIC) for one in rest)
    return lens and (at == 0 or tokens[at - 1].kind not in ("DET", "MOUNT", "LETTER", "KIND"))


def _is_wanted_deep(tokens: list[Token], at: int) -> bool:
    """'20 cm of depth', 'need 30 cm in focus', '1 m sharp around 5 m'."""
    end = at + 1
    while end < len(tokens) and tokens[end].text.casefold() in _BETWEEN:
        end += 1
    if end >= len(tokens):
        return False
    if DEEP_SO in tokens[end].groups:
        return True
    if SHARP_SO not in tokens[end].groups:
        return False
    led = [one for one in tokens[max(0, at - 3) : at] if one.text.casefold() not in _BETWEEN]
    wanted = bool(led) and WANTED_SO in led[-1].groups
    return wanted or _is_round(tokens, at, end + 1)


def _is_round(tokens: list[Token], at: int, after: int) -> bool:
    """'... in focus at 1.5 m', '... sharp around 6 m': the greater length, behind what is sharp."""
    if after + 1 >= len(tokens):
        return False
    led, far = tokens[after], tokens[after + 1]
    placed = ROUND_IT in led.groups or led.value == _AT
    return placed and far.kind == "LENGTH" and far.numbers[0] > tokens[at].numbers[0]


def _is_behind_depth(tokens: list[Token], at: int) -> bool:
    """'a depth of field of 20 cm at 2 m'; 'the depth of field of my 50mm' is that of the lens."""
    ahead = tokens[max(0, at - 2) : at]
    told = len(ahead) > 1 and DEEP_SO in ahead[0].groups and ahead[1].value == _OF
    return told and tokens[at].unit != _METRIC
