"""How long a thread is, told at some distance from its word: 'the thread on this C lens looks like 5 mm'."""

from __future__ import annotations

from typing import Final

from grammar.numbers.crests import is_screw
from grammar.numbers.senses import is_thread_length
from grammar.words.groups import SCREW_CRESTS
from grammar.words.tokens import Token

LONG: Final = "thread-length"
_ALONG: Final = frozenset(["CUE", "DET", "PREP", "MOUNT", "LENS", "VERB", "FILLER", "NUMBER"])
_BE: Final = "be"
_LIKE: Final = "like"
_REACH: Final = 9  # tokens from the word to the length
_SHORTEST_MM: Final = 2.0  # what is less is a pitch


def with_thread_lengths(tokens: list[Token]) -> list[Token]:
    """The length that a thread 'is', or 'looks like', becomes KEYED as its own."""
    out = list(tokens)
    for at, token in enumerate(tokens):
        counted = at > 0 and tokens[at - 1].kind in ("NUMBER", "COUNT") and SCREW_CRESTS in token.groups
        if token.kind != "MOUNTWORD" or not is_screw(token) or counted:
            continue  # 'ten threads are 7.5 mm' tells of a pitch
        size = _length_behind(tokens, at)
        if size is not None:
            out[size] = tokens[size].as_("KEYED", value=LONG, unit="mm")
            if size + 1 < len(tokens) and tokens[size + 1].kind == "MEASURE":
                out[size + 1] = tokens[size + 1].as_("CUE")
    return out


def _length_behind(tokens: list[Token], at: int) -> int | None:
    told = False
    for place in range(at + 1, min(len(tokens), at + _REACH)):
        token = tokens[place]
        told = told or token.value == _BE or token.text.casefold().endswith(_LIKE)
        if token.kind == "LENGTH":
            metric = token.unit == "mm" and token.numbers[0] >= _SHORTEST_MM
            return place if told and metric and is_thread_length(token) else None
        if token.kind not in _ALONG:
            return None
    return None
