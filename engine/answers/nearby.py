"""The advice and terms that a question is about, found by the words they share; rarer words count for more."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from math import log
from typing import Final

from engine.base.compact import compact
from engine.facts.catalogue import Catalogue
from engine.facts.records import Advice, Term
from grammar.questions import Question

# words of the language that say nothing of a subject
_EMPTY: Final = (
    "a about after all also am an and any anyone anything are as at be because been before being both but by can cant",
    "could did do does doing dont each even ever for from get gets getting give go goes going got had has have he help",
    "her here hi his how i if im in into is isnt it its ive just know like made make me mine more most much my need no",
    "not now of off ok on one only onto or other our out over please put same say says she should so some still such",
    "take than thanks that the their them then there these they thing things this those though thru to too try u up us",
    "use used using very want was way we well were what whats when where which while who why will with without wont",
    "would yes you your lens lenses camera cameras body bodies mount mounts mm full f small old new use works work",
)
EMPTY: Final = frozenset(word for line in _EMPTY for word in line.split())
NAMES, TOPIC, SAYS = 1.0, 0.8, 0.4  # how much a word counts by where it stands
_WORD: Final = re.compile(r"[a-z0-9]+(?:[./][0-9]+)*")
# endings that change nothing of what a word is about, longest first
_ENDINGS: Final = ("ations", "ation", "ingly", "iness", "ings", "ment", "ness", "ions", "ing", "ion", "ies", "ers",
                   "est", "ed", "es", "er", "ly", "s", "y", "e")  # fmt: skip
LEAST: Final = 2.8  # what shares less than about one rare word is not about the same
NEAR: Final = 0.66  # the next best are told where they come this near to the best


@compact
class Match:
    """An advice, how much it shares with the question, and which words."""

    advice: Advice
    score: float
    shared: tuple[str, ...]


def stem(word: str) -> str:
    """A word without its ending, so that 'stuck', 'sticking' differ but 'shims', 'shimming' do not."""
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            word = word[: -len(ending)]
            break
    return word[:-1] if len(word) > 3 and word[-1] == word[-2] else word


def stems(text: str) -> frozenset[str]:
    """The stems of the words that say something, apostrophes dropped."""
    flat = text.casefold().replace("'", "").replace("’", "").replace("-", " ")
    return frozenset(
        stem(word) for word in _WORD.findall(flat) if word not in EMPTY and word.isalpha() and len(word) > 1
    )


class Nearby:
    """An index over some advice records."""

    def __init__(self, records: Iterable[Advice]) -> None:
        self._rows: list[tuple[Advice, Mapping[str, float]]] = []
        counts: dict[str, int] = {}
        for advice in records:
            weights: dict[str, float] = {}
            for text, weight in (
                (advice.says, SAYS),
                (advice.topic, TOPIC),
                (" ".join((*advice.names, *advice.about)), NAMES),
            ):
                weights |= dict.fromkeys(stems(text), weight)
            self._rows.append((advice, weights))
            for one in weights:
                counts[one] = counts.get(one, 0) + 1
        size = len(self._rows) or 1
        self._rare = {one: log(1 + size / count) for one, count in counts.items()}

    def matches(self, text: str, most: int = 3, least: float = LEAST) -> tuple[Match, ...]:
        """The nearest records, best first: those within reach of the best."""
        asked = stems(text)
        found = []
        for advice, weights in self._rows:
            shared = asked & weights.keys()
            score = sum(self._rare[one] * weights[one] for one in shared)
            if score >= least:
                found.append(Match(advice, score, tuple(sorted(shared))))
        found.sort(key=lambda match: (-match.score, match.advice.id))
        return tuple(match for match in found[:most] if match.score >= NEAR * found[0].score)


# what the keys of values that were read, and topics, are called in advice
_MEANT: Final = {
    "weight": "heavy weight", "rear_reach": "rear reach", "light": "", "price": "cheap dear price", "touch": "",
    "dashes": "aperture shows dashes metadata",
}  # fmt: skip


def asked_about(question: Question) -> str:
    """The question's words, with its topic and the kinds of values in it put into words."""
    keys = [_MEANT.get(key, "") for key, _ in question.values]
    topic = _MEANT.get(question.topic or "", (question.topic or "").replace("-", " "))
    return " ".join((question.text, topic, *keys))


ONLY_NAMED: Final = float("inf")  # nothing is near enough: only what is named is told
SURE: Final = 6.0  # beside numbers that answer the question, only what is surely about the same is told


def nearest(text: str, catalogue: Catalogue, most: int = 3, least: float = LEAST) -> tuple[Advice, ...]:
    """The advice that a text is about."""
    return tuple(match.advice for match in Nearby(catalogue.advice.values()).matches(text, most, least))


def nearest_term(text: str, catalogue: Catalogue) -> Term | None:
    """The term whose name shares most with a text; None where none does."""
    asked = stems(text)
    best: tuple[float, Term] | None = None
    for term in catalogue.terms.values():
        for name in term.names:
            wanted = stems(name)
            if wanted and wanted <= asked:
                score = float(len(wanted))
                if best is None or score > best[0]:
                    best = (score, term)
    return best[1] if best else None
