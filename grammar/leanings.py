"""What wording alone leans to: weights of words, their neighbours, runs of letters, fitted to practice questions.

The evidence of the word list says what a cue means. Much of how people ask says it less plainly; what several thousand
practice questions show of that is kept in `leanings.tables` (`python -m tests.grammar.fit` makes it anew). Runs of
letters tell of words that no question had, and of misspelt ones; their weights lie side by side in `leanings.letters`,
a signed byte for each intent, at the place that the run's checksum gives.
"""

from __future__ import annotations

import json
import os
import re
from collections.abc import Sequence
from functools import cache
from itertools import pairwise
from math import exp, sqrt
from typing import Final
from zlib import crc32

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
_HERE: Final = os.path.dirname(os.path.abspath(__file__))
_TABLE: Final = os.path.join(_HERE, "leanings.tables")
_LETTERS: Final = os.path.join(_HERE, "leanings.letters")
_WORD: Final = re.compile(r"[^\W\d_]+|\d+|\?")
HAND_MOST: Final = 8.0  # evidence beyond this adds nothing: it is as plain as can be
PLACES: Final = 1 << 14  # of runs of letters; two runs may share one
FEW_RUNS: Final = 60  # a text with fewer is so short that its letters say the less
SHORTEST_RUN, LONGEST_RUN = 2, 5  # letters, the edge of a word counted as one
_SIGNS: Final = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
_VALUES: Final = {sign: value for value, sign in enumerate(_SIGNS)}
_ZERO: Final = 2048  # what stands for a weight of nothing
SHAPE: Final = "packed-with-letters"  # of the table; one of another shape is taken for none, until it is made anew
_SCALE: Final = 100.0  # the table holds hundredths


@compact
class Leanings:
    """The fitted tables. `rows`: feature -> its packed weight for each intent; `hand`: the same of the word list's
    evidence for each intent, by its weight; `letters`: a byte for each place and intent, in steps of `step`.
    """

    intents: tuple[str, ...]
    rows: dict[str, str]
    bias: list[int]
    hand: dict[str, str]
    letters: memoryview
    step: float


@cache
def leanings() -> Leanings:
    """The tables that ship; without them everything leans nowhere."""
    try:
        with open(_TABLE, encoding="utf-8") as file:
            plain = json.load(file)
        with open(_LETTERS, "rb") as file:
            letters = memoryview(file.read()).cast("b")
    except FileNotFoundError:
        plain, letters = {}, memoryview(b"").cast("b")
    if plain.get("shape") != SHAPE or len(letters) != PLACES * len(plain["intents"]):
        return Leanings((), {}, [], {}, letters, 0.0)
    return Leanings(tuple(plain["intents"]), plain["rows"], plain["bias"], plain["hand"], letters, plain["step"])


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


def runs_of(text: str) -> list[int]:
    """The places of the runs of letters in a text, each once: those within its words, with their edges."""
    runs = set()
    for word in text.casefold().split():
        edged = f" {word} "
        for size in range(SHORTEST_RUN, LONGEST_RUN + 1):
            runs |= {edged[at : at + size] for at in range(max(1, len(edged) - size + 1))}
    return sorted({crc32(run.encode("utf-8", "replace")) % PLACES for run in runs})


def share_of(runs: Sequence[int]) -> float:
    """How much each of so many runs counts: long texts have more of them, and say no more for it."""
    return 1 / sqrt(max(len(runs), FEW_RUNS))


def wording_of(line: Line, features: frozenset[str], before: str = "") -> frozenset[str]:
    """The features of a text for the table: its words, neighbours, what it holds; in a talk, after which intent."""
    words = _symbols(line)
    out = {f"w:{word}" for word in words}
    out |= {f"b:{one} {other}" for one, other in pairwise(["^", *words, "$"])}
    out |= {f"f:{one}" for one in features}
    out.add(f"n:{min(4, len(words) // 4)}")
    if before:
        out |= {f"t:{word}" for word in words}
        out |= {"talk", f"p:{before}", *([f"pb:{before}"] if "brief" in features else [])}
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


def lean(wording: frozenset[str], hand: dict[str, float], text: str) -> dict[str, float]:
    """How likely each intent is, from 0 to 1, together 1. `hand`: the weights of the word list's evidence."""
    table = leanings()
    if not table.intents:
        return {}
    rows = [_weights_of(table.rows[feature]) for feature in wording if feature in table.rows]
    totals = [total / _SCALE for total in map(sum, zip(table.bias, *rows, strict=True))]
    for intent, weight in hand.items():
        if weight > 0 and intent in table.hand:
            shares = _weights_of(table.hand[intent])
            told = min(weight, HAND_MOST) / _SCALE
            totals = [total + told * share for total, share in zip(totals, shares, strict=True)]
    wide, runs = len(table.intents), runs_of(text)
    if runs:
        share = table.step * share_of(runs)
        letters = map(sum, zip(*(table.letters[at * wide : (at + 1) * wide] for at in runs), strict=True))
        totals = [total + share * one for total, one in zip(totals, letters, strict=True)]
    top = max(totals)
    raised = [exp(total - top) for total in totals]
    whole = sum(raised)
    return {intent: one / whole for intent, one in zip(table.intents, raised, strict=True)}
