"""What wording alone leans to: weights of words, pairs of words and features, fitted to practice questions.

The evidence of the word list says what a cue means. Much of how people ask says it less plainly; what several thousand
practice questions show of that is kept in `leanings.tables` (`python -m tests.grammar.fit` makes it anew).
"""

from __future__ import annotations

import json
import os
import re
from collections.abc import Sequence
from functools import cache
from itertools import pairwise
from math import exp
from typing import Final

from engine.base.compact import compact
from grammar.words.strangers import is_model
from grammar.words.tokens import Line

_NAMES: Final = {"MOUNT": "<mount>", "LETTER": "<mount>", "NAMED": "<name>", "LENS": "<lens>", "BODY": "<body>",
                 "ADAPTER": "<ring>", "FORMAT": "<format>", "THREAD": "<thread>"}  # fmt: skip
_LITERALS: Final = frozenset(
    ["RANGE", "FNUM", "COMBO", "TIMES", "FOCAL", "COUNT", "ISO", "SHUTTER", "FPS", "EV", "ND", "PRICE", "TURNS",
     "STOPS", "RATIO", "WEIGHT", "DEGREES", "PERCENT", "PITCH", "NUMBER", "ASPECT", "TSTOP", "AREA", "FRACTION",
     "DIOPTRE", "CROP", "PIXELS"]
)  # fmt: skip
_TABLE: Final = os.path.join(os.path.dirname(os.path.abspath(__file__)), "leanings.tables")
_WORD: Final = re.compile(r"[^\W\d_]+|\d+|\?")
HAND_MOST: Final = 8.0  # evidence beyond this adds nothing: it is as plain as can be
_SIGNS: Final = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
_VALUES: Final = {sign: value for value, sign in enumerate(_SIGNS)}
_ZERO: Final = 2048  # what stands for a weight of nothing
SHAPE: Final = "packed"  # of the table; one of another shape is taken for none, until it is made anew
_SCALE: Final = 100.0  # the table holds hundredths


@compact
class Leanings:
    """The fitted table. `rows`: feature -> its packed weight for each intent; `hand`: of the word list's evidence."""

    intents: tuple[str, ...]
    rows: dict[str, str]
    bias: list[int]
    hand: float
    again: float  # for the intent of the question before
    again_brief: float  # and once more where the text is brief


@cache
def leanings() -> Leanings:
    """The table that ships; without one everything leans nowhere."""
    try:
        with open(_TABLE, encoding="utf-8") as file:
            plain = json.load(file)
    except FileNotFoundError:
        plain = {}
    if plain.get("shape") != SHAPE:
        return Leanings((), {}, [], 0.0, 0.0, 0.0)
    return Leanings(
        tuple(plain["intents"]), plain["rows"], plain["bias"], plain["hand"], plain["again"], plain["again_brief"]
    )  # fmt: skip


def packed(weights: Sequence[int]) -> str:
    """Hundredths, each in two signs: a table of texts is read many times faster than one of lists."""
    held = [min(max(one + _ZERO, 0), 2 * _ZERO - 1) for one in weights]
    return "".join(_SIGNS[one >> 6] + _SIGNS[one & 63] for one in held)


def unpacked(text: str) -> list[int]:
    values = [_VALUES[sign] for sign in text]
    return [(high << 6 | low) - _ZERO for high, low in zip(values[::2], values[1::2], strict=True)]


@cache
def _weights_of(row: str) -> tuple[int, ...]:
    """A row of the table, unpacked once: most words are common ones."""
    return tuple(unpacked(row))


def wording_of(line: Line, features: frozenset[str], before: str = "") -> frozenset[str]:
    """The features of a text for the table: its words, neighbours, what it holds; in a talk, after which intent."""
    words = _symbols(line)
    out = {f"w:{word}" for word in words}
    out |= {f"b:{one} {other}" for one, other in pairwise(["^", *words, "$"])}
    out |= {f"f:{one}" for one in features}
    out.add(f"n:{min(4, len(words) // 4)}")
    if before:
        out |= {f"t:{word}" for word in words}
        out |= {"talk", f"p:{before}"}
    return frozenset(out)


def _symbols(line: Line) -> list[str]:
    """The words of the text in order, each name and number as the sort of thing it is."""
    out: list[str] = []
    for token in line.tokens:
        if token.kind in _NAMES and token.ids:
            out.append(_NAMES[token.kind])
        elif token.kind == "LENGTH":
            out.append(f"<length:{token.unit}>")
        elif token.kind == "UNKNOWN" and is_model(token):
            out.append("<model>")
        elif token.kind in _LITERALS:
            out.append(f"<{token.kind.lower()}>")
        elif token.kind not in ("MARK", "JOIN") or token.text.isalpha():
            found = _WORD.findall(token.text.casefold().replace("'", "").replace("’", ""))
            out.extend("#" if word.isdigit() else word for word in found)
    return out


def lean(wording: frozenset[str], hand: dict[str, float], before: str, brief: bool) -> dict[str, float]:
    """How likely each intent is, from 0 to 1, together 1. `hand`: the weights of the word list's evidence."""
    table = leanings()
    if not table.intents:
        return {}
    totals = [float(one) for one in table.bias]
    for feature in wording:
        row = table.rows.get(feature)
        if row is not None:
            totals = [total + weight for total, weight in zip(totals, _weights_of(row), strict=True)]
    scores = {
        intent: total / _SCALE + table.hand * min(hand.get(intent, 0.0), HAND_MOST)
        for intent, total in zip(table.intents, totals, strict=True)
    }
    if before in scores:
        scores[before] += table.again + (table.again_brief if brief else 0.0)
    top = max(scores.values())
    raised = {intent: exp(score - top) for intent, score in scores.items()}
    whole = sum(raised.values())
    return {intent: one / whole for intent, one in raised.items()}
