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
from math import exp, sqrt
from pathlib import Path
from typing import Any

from engine.base.compact import compact
from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from grammar.hearing import hear
from grammar.intents import weigh
from grammar.leanings import HAND_MOST, SHAPE, packed, wording_of
from grammar.questions import INTENTS
from grammar.words.lexicon import Lexicon
from tests.grammar import sentences
from tests.grammar.asked import DATA, LIST, Asked, asked

TABLE = Path(__file__).parents[2] / "grammar" / "leanings.tables"
ASKED = INTENTS[: INTENTS.index("buy-plan") + 1]
ROUNDS, RATE, SHRINK, SEED = 14, 0.3, 3e-4, 7
ORDERS = 2  # fits, each over another order of the questions, whose mean is written: one order alone leans by chance
LEAST_SEEN = 3  # questions that a feature must show in
LEAST_WEIGHT = 0.3  # rows of smaller weights are left out of the table
FOLDS = 5


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
    """The weights while they are fitted."""

    def __init__(self, rows: Sequence[Row]) -> None:
        seen = Counter(feature for row in rows for feature in row.wording)
        size = len(ASKED)
        self.weights = {feature: [0.0] * size for feature, count in sorted(seen.items()) if count >= LEAST_SEEN}
        self.bias = [0.0] * size
        self.few = [1.0, 1.0, 0.5]  # of the evidence, of the intent before, of that where the text is brief
        self._sums = {feature: [1e-3] * size for feature in self.weights}
        self._of_few = [1e-3] * 3

    def scores(self, row: Row) -> list[float]:
        hand = self.few[0]
        totals = [one + hand * told for one, told in zip(self.bias, row.hand, strict=True)]
        for feature in row.wording:
            weights = self.weights.get(feature)
            if weights is not None:
                totals = [total + weight for total, weight in zip(totals, weights, strict=True)]
        if row.before >= 0:
            totals[row.before] += self.few[1] + (self.few[2] if row.brief else 0.0)
        return totals

    def learn(self, row: Row, rate: float) -> None:
        totals = self.scores(row)
        top = max(totals)
        raised = [exp(total - top) for total in totals]
        whole = sum(raised)
        slopes = [one / whole for one in raised]
        slopes[row.intent] -= 1.0
        for feature in row.wording:
            weights = self.weights.get(feature)
            if weights is None:
                continue
            sums = self._sums[feature]
            for at, slope in enumerate(slopes):
                slope += SHRINK * weights[at]
                sums[at] += slope * slope
                weights[at] -= rate * slope / sqrt(sums[at])
        self.bias = [one - 0.01 * rate * slope for one, slope in zip(self.bias, slopes, strict=True)]
        few = [sum(slope * told for slope, told in zip(slopes, row.hand, strict=True)), 0.0, 0.0]
        if row.before >= 0:
            few[1] = slopes[row.before]
            few[2] = slopes[row.before] if row.brief else 0.0
        for at, slope in enumerate(few):
            self._of_few[at] += slope * slope
            self.few[at] -= 0.1 * rate * slope / sqrt(self._of_few[at])

    def right(self, rows: Sequence[Row]) -> int:
        return sum(_best(self.scores(row)) == row.intent for row in rows)


def _best(totals: Sequence[float]) -> int:
    return max(range(len(totals)), key=totals.__getitem__)


def fitted(rows: Sequence[Row], rounds: int = ROUNDS, seed: int = SEED) -> Fit:
    fit, order, chance = Fit(rows), list(rows), random.Random(seed)
    for turn in range(rounds):
        chance.shuffle(order)
        for row in order:
            fit.learn(row, RATE / (1 + turn / 4))
    return fit


def averaged(rows: Sequence[Row]) -> Fit:
    """The mean of several fits."""
    fits = [fitted(rows, seed=SEED + order) for order in range(ORDERS)]
    out = fits[0]
    for feature in out.weights:
        out.weights[feature] = _mean([fit.weights[feature] for fit in fits])
    out.bias, out.few = _mean([fit.bias for fit in fits]), _mean([fit.few for fit in fits])
    return out


def _mean(rows: Sequence[Sequence[float]]) -> list[float]:
    return [sum(column) / len(rows) for column in zip(*rows, strict=True)]


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
    for path in (*sorted(DATA.glob("*.yaml")), LIST, Path(sentences.__file__)):
        whole.update(path.read_bytes())
    return whole.hexdigest()


def table_of(fit: Fit) -> dict[str, Any]:
    rows = {
        feature: packed([round(100 * one) for one in weights])
        for feature, weights in fit.weights.items()
        if max(map(abs, weights)) >= LEAST_WEIGHT
    }
    hand, again, brief = (round(one, 3) for one in fit.few)
    bias = [round(100 * one) for one in fit.bias]
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
