"""Fits the leanings of wording to the practice questions. Run: python -m tests.grammar.fit [--folds | --write].

Multinomial logistic regression by AdaGrad (Duchi, Hazan and Singer, JMLR 12, 2011), shrunk towards nothing.
"""

from __future__ import annotations

import json
import random
import sys
from collections import Counter
from collections.abc import Collection, Sequence
from hashlib import sha256
from pathlib import Path
from typing import Any

import numpy as np
from numpy.typing import NDArray

from engine.base.compact import compact
from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from grammar.hearing import hear
from grammar.intents import weigh
from grammar.leanings import HAND_MOST, SHAPE, packed, wording_of
from grammar.questions import INTENTS
from grammar.words.lexicon import Lexicon
from tests.grammar import sentences
from tests.grammar.asked import DATA, LISTS, Asked, asked

TABLE = Path(__file__).parents[2] / "grammar" / "leanings.tables"
ASKED = INTENTS[: INTENTS.index("buy-plan") + 1]
ROUNDS, RATE, SHRINK, SEED = 14, 0.3, 3e-4, 7
ORDERS = 4  # fits, each over another order of the questions, whose mean is written: one order alone leans by chance
LEAST_SEEN = 3  # questions that a feature must show in
LEAST_WEIGHT = 0.3  # rows of smaller weights are left out of the table
FOLDS = 5

Numbers = NDArray[np.float64]
Known = tuple[NDArray[np.intp], Numbers]  # the places of a row's features, its evidence by hand


@compact
class Row:
    """One practice question made ready. `hand`: the weights of the word list's evidence, in the order of ASKED."""

    source: str
    wording: frozenset[str]
    hand: tuple[float, ...]
    before: int  # of ASKED, -1 where it stands alone
    brief: bool
    intent: int


def made_ready(rows: Sequence[Asked], lexicon: Lexicon) -> list[Row]:
    out = []
    for row in rows:
        before = row.before[-1][1] if row.before else ""
        heard = hear(row.say, lexicon, before)
        hand = dict(weigh(heard.features, lexicon).ranked)
        told = tuple(min(hand.get(one, 0.0), HAND_MOST) for one in ASKED)
        at = ASKED.index(before) if before in ASKED else -1
        wording = wording_of(heard.line, heard.features, before)
        out.append(Row(row.source, wording, told, at, heard.tells("brief"), ASKED.index(row.intent)))
    return out


class Fit:
    """The weights while they are fitted: (features, intents), in the order of `names` and of ASKED."""

    def __init__(self, rows: Sequence[Row]) -> None:
        seen = Counter(feature for row in rows for feature in row.wording)
        self.names = sorted(feature for feature, count in seen.items() if count >= LEAST_SEEN)
        self._at = {feature: at for at, feature in enumerate(self.names)}
        self.weights = np.zeros((len(self.names), len(ASKED)))
        self.bias = np.zeros(len(ASKED))
        self.few = np.array([1.0, 1.0, 0.5])  # of the evidence, of the intent before, of that where the text is brief
        self._sums = np.full_like(self.weights, 1e-3)
        self._of_few = np.full(3, 1e-3)

    def known(self, row: Row) -> Known:
        """The row by the places of its features; those that no weight is fitted to are left out."""
        places = sorted(self._at[feature] for feature in row.wording if feature in self._at)
        return np.array(places, dtype=np.intp), np.array(row.hand)

    def scores(self, row: Row, known: Known | None = None) -> Numbers:
        places, hand = known or self.known(row)
        totals: Numbers = self.bias + self.few[0] * hand + self.weights[places].sum(axis=0)
        if row.before >= 0:
            totals[row.before] += self.few[1] + (self.few[2] if row.brief else 0.0)
        return totals

    def learn(self, row: Row, known: Known, rate: float) -> None:
        places, hand = known
        totals = self.scores(row, known)
        slopes = np.exp(totals - totals.max())
        slopes /= slopes.sum()
        slopes[row.intent] -= 1.0
        weights, sums = self.weights[places], self._sums[places]
        steep = slopes + SHRINK * weights
        sums += steep * steep
        self._sums[places] = sums
        self.weights[places] = weights - rate * steep / np.sqrt(sums)
        self.bias -= 0.01 * rate * slopes
        few = np.array([slopes @ hand, 0.0, 0.0])
        if row.before >= 0:
            few[1] = slopes[row.before]
            few[2] = slopes[row.before] if row.brief else 0.0
        self._of_few += few * few
        self.few -= 0.1 * rate * few / np.sqrt(self._of_few)

    def right(self, rows: Sequence[Row]) -> int:
        return sum(int(self.scores(row).argmax()) == row.intent for row in rows)


def fitted(rows: Sequence[Row], rounds: int = ROUNDS, seed: int = SEED) -> Fit:
    fit, chance = Fit(rows), random.Random(seed)
    order = [(row, fit.known(row)) for row in rows]
    for turn in range(rounds):
        chance.shuffle(order)
        for row, known in order:
            fit.learn(row, known, RATE / (1 + turn / 4))
    return fit


def averaged(rows: Sequence[Row]) -> Fit:
    """The mean of several fits."""
    fits = [fitted(rows, seed=SEED + order) for order in range(ORDERS)]
    out = fits[0]
    out.weights = np.mean([fit.weights for fit in fits], axis=0)
    out.bias = np.mean([fit.bias for fit in fits], axis=0)
    out.few = np.mean([fit.few for fit in fits], axis=0)
    return out


def by_source(rows: Sequence[Row], sources: Collection[str] = (), rounds: int = ROUNDS) -> dict[str, tuple[int, int]]:
    """For each file of questions (of `sources`), how many are right when the weights are fitted to all the others."""
    out = {}
    for source in sorted(set(sources) or {row.source for row in rows}):
        fit = fitted([row for row in rows if row.source != source], rounds)
        held = [row for row in rows if row.source == source]
        out[source] = (fit.right(held), len(held))
    return out


def digest() -> str:
    """Changes with the practice questions."""
    whole = sha256()
    for path in (*sorted(DATA.glob("*.yaml")), *LISTS, Path(sentences.__file__)):
        whole.update(path.read_bytes())
    return whole.hexdigest()


def table_of(fit: Fit) -> dict[str, Any]:
    rows = {
        feature: packed([round(100 * one) for one in weights.tolist()])
        for feature, weights in zip(fit.names, fit.weights, strict=True)
        if abs(weights).max() >= LEAST_WEIGHT
    }
    hand, again, brief = (round(one, 3) for one in fit.few.tolist())
    bias = [round(100 * one) for one in fit.bias.tolist()]
    return {
        "shape": SHAPE,
        "of": digest(),
        "intents": ASKED,
        "hand": hand,
        "again": again,
        "again_brief": brief,
        "bias": bias,
        "rows": rows,
    }


def main(arguments: Sequence[str]) -> None:
    lexicon = lexicon_of(load_catalogue()[0])
    rows = made_ready([row for row in asked() if row.intent in ASKED], lexicon)
    if "--folds" in arguments:
        for source, (right, count) in by_source(rows).items():
            print(f"{source:16} {right}/{count} {right / count:.1%}")
    fit = averaged(rows)
    print(f"all, fitted to themselves: {fit.right(rows)}/{len(rows)}; {fit.few}")
    if "--write" in arguments:
        text = json.dumps(table_of(fit), separators=(",", ":"), ensure_ascii=False)
        TABLE.write_text(text.replace('","', '",\n"') + "\n", encoding="utf-8")
        print(f"written: {TABLE}, {len(text)} characters")


if __name__ == "__main__":
    main(sys.argv[1:])
