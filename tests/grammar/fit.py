"""Fits the leanings of wording to the practice questions. Run: python -m tests.grammar.fit [--folds | --write].

Multinomial logistic regression, shrunk towards nothing (scikit-learn), over words, their neighbours, what a question
holds, the evidence by hand, and the runs of letters of its text.
"""

from __future__ import annotations

import json
import sys
from collections import Counter
from collections.abc import Collection, Sequence
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING, Any

import numpy as np
from numpy.typing import NDArray

from engine.base.compact import compact
from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from grammar.hearing import hear
from grammar.intents import weigh
from grammar.kinds import INTENTS
from grammar.leanings import HAND_MOST, PLACES, SHAPE, packed, runs_of, share_of, wording_of
from grammar.words.lexicon import Lexicon
from tests.grammar import sentences
from tests.grammar.asked import DATA, LISTS, Asked, asked

if TYPE_CHECKING:
    from scipy.sparse import csr_matrix

TABLE = Path(__file__).parents[2] / "grammar" / "leanings.tables"
LETTERS = TABLE.with_suffix(".letters")
ASKED = INTENTS[: INTENTS.index("buy-plan") + 1]
SPREAD = 0.1  # how far the weights may go from nothing: the inverse of what shrinks them
ROUNDS = 150
HAND_SHARE = 0.25  # of the evidence by hand, so that it is of the size of a word
LETTERS_SHARE = 8.0  # of all the letters of a text together
LEAST_SEEN = 3  # questions that a feature must show in
LEAST_WEIGHT = 0.05  # rows of smaller weights are left out of the table
# messages as they come, of every kind, count more than those that were made up to practise one kind
EVERYDAY, EVERYDAY_WEIGHT = ("everyday-", "list", "further", "sentences", "short-forms"), 4.0
MOST_STEPS = 127  # of a signed byte

Numbers = NDArray[np.float64]


@compact
class Row:
    """One practice question made ready. `hand`: the weights of the word list's evidence, in the order of ASKED."""

    source: str
    wording: frozenset[str]
    hand: tuple[float, ...]
    runs: tuple[int, ...]
    intent: int


def made_ready(rows: Sequence[Asked], lexicon: Lexicon) -> list[Row]:
    out = []
    for row in rows:
        before = row.before[-1][1] if row.before else ""
        heard = hear(row.say, lexicon, before)
        hand = dict(weigh(heard.features, lexicon).ranked)
        told = tuple(max(0.0, min(hand.get(one, 0.0), HAND_MOST)) for one in ASKED)
        wording = wording_of(heard.line, heard.features, before)
        out.append(Row(row.source, wording, told, tuple(runs_of(row.say)), ASKED.index(row.intent)))
    return out


class Fit:
    """Weights fitted to rows: (features, intents) in the order of `names`, of the evidence, and of the letters."""

    def __init__(self, rows: Sequence[Row]) -> None:
        from sklearn.linear_model import LogisticRegression  # seconds to load, and only here

        seen = Counter(feature for row in rows for feature in row.wording)
        self.names = sorted(feature for feature, count in seen.items() if count >= LEAST_SEEN)
        self._at = {feature: at for at, feature in enumerate(self.names)}
        counts = [EVERYDAY_WEIGHT if row.source.startswith(EVERYDAY) else 1.0 for row in rows]
        self._model = LogisticRegression(C=SPREAD, max_iter=ROUNDS, tol=1e-3)
        self._model.fit(self._table(rows), [row.intent for row in rows], sample_weight=counts)
        whole = np.zeros((len(ASKED), len(self.names) + len(ASKED) + PLACES))
        whole[self._model.classes_] = self._model.coef_
        words, hand = len(self.names), len(self.names) + len(ASKED)
        self.weights: Numbers = whole[:, :words].T
        self.hand: Numbers = whole[:, words:hand].T * HAND_SHARE
        self.letters: Numbers = whole[:, hand:].T * LETTERS_SHARE
        self.bias = np.full(len(ASKED), -MOST_STEPS / 10)
        self.bias[self._model.classes_] = self._model.intercept_

    def _table(self, rows: Sequence[Row]) -> csr_matrix:
        """The rows as numbers: words, then evidence, then letters."""
        from scipy.sparse import csr_matrix

        words, hand = len(self.names), len(self.names) + len(ASKED)
        values: list[float] = []
        places: list[int] = []
        ends = [0]
        for row in rows:
            known = sorted(self._at[feature] for feature in row.wording if feature in self._at)
            told = [at for at, weight in enumerate(row.hand) if weight]
            places += [*known, *(words + at for at in told), *(hand + at for at in row.runs)]
            values += [1.0] * len(known)
            values += [row.hand[at] * HAND_SHARE for at in told]
            values += [LETTERS_SHARE * share_of(row.runs)] * len(row.runs)
            ends.append(len(places))
        return csr_matrix((values, places, ends), shape=(len(rows), hand + PLACES))

    def right(self, rows: Sequence[Row]) -> int:
        told = self._model.predict(self._table(rows))
        return int((told == np.array([row.intent for row in rows])).sum())


def by_source(rows: Sequence[Row], sources: Collection[str] = ()) -> dict[str, tuple[int, int]]:
    """For each file of questions (of `sources`), how many are right when the weights are fitted to all the others."""
    out = {}
    for source in sorted(set(sources) or {row.source for row in rows}):
        fit = Fit([row for row in rows if row.source != source])
        held = [row for row in rows if row.source == source]
        out[source] = (fit.right(held), len(held))
    return out


def digest() -> str:
    """Changes with the practice questions."""
    whole = sha256()
    for path in (*sorted(DATA.glob("*.yaml")), *LISTS, Path(sentences.__file__)):
        whole.update(path.read_bytes())
    return whole.hexdigest()


def _hundredths(weights: Numbers) -> list[int]:
    return [round(100 * one) for one in weights.tolist()]


def table_of(fit: Fit) -> dict[str, Any]:
    rows = {
        feature: packed(_hundredths(weights))
        for feature, weights in zip(fit.names, fit.weights, strict=True)
        if abs(weights).max() >= LEAST_WEIGHT
    }
    return {
        "shape": SHAPE,
        "of": digest(),
        "intents": ASKED,
        "step": _step(fit),
        "hand": {intent: packed(_hundredths(weights)) for intent, weights in zip(ASKED, fit.hand, strict=True)},
        "bias": _hundredths(fit.bias),
        "rows": rows,
    }


def _step(fit: Fit) -> float:
    """How much one step of a byte of the letters is."""
    return round(float(abs(fit.letters).max()) / MOST_STEPS, 6)


def letters_of(fit: Fit) -> bytes:
    return np.round(fit.letters / _step(fit)).clip(-MOST_STEPS, MOST_STEPS).astype(np.int8).tobytes()


def main(arguments: Sequence[str]) -> None:
    lexicon = lexicon_of(load_catalogue()[0])
    rows = made_ready([row for row in asked() if row.intent in ASKED], lexicon)
    if "--folds" in arguments:
        for source, (right, count) in by_source(rows).items():
            print(f"{source:16} {right}/{count} {right / count:.1%}")
    fit = Fit(rows)
    print(f"all, fitted to themselves: {fit.right(rows)}/{len(rows)}")
    if "--write" in arguments:
        text = json.dumps(table_of(fit), separators=(",", ":"), ensure_ascii=False)
        TABLE.write_text(text.replace('","', '",\n"') + "\n", encoding="utf-8")
        LETTERS.write_bytes(letters_of(fit))
        print(f"written: {TABLE}, {len(text)} characters, and {LETTERS.name}, {LETTERS.stat().st_size} bytes")


if __name__ == "__main__":
    main(sys.argv[1:])
