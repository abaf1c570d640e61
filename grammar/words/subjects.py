"""Which of many short texts a question is about, found by the words they share; rarer words count for more.

A text is looked through by its phrases: a question that holds most of the words of one of them is about it, while as
many words strewn over several say less.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from math import log, sqrt
from typing import Final, TypeAlias

from engine.base.compact import compact
from grammar.kinds import COMPARE, GEAR_SETTING, HAZARD, WHY
from grammar.words.nearest import slip_of
from grammar.words.subject_words import Vocabulary

NAMES, TOPIC, SAYS = 1.0, 0.8, 0.3  # how much a word counts by where it stands
TOGETHER: Final = 0.8  # how much the words of one phrase count once more for standing together
WHOLLY: Final = 1.05  # a word that is all of a phrase is more surely meant than one that is a part of it
STREWN: Final = 0.5  # how much words count that share no phrase with others of the question
OFTEN: Final = 0.4  # how much a word counts once more that stands in many phrases of the text
NAMED: Final = 0.6  # how much a word with a figure in it counts
RULING: Final = 1.35  # how much more what rules on a danger counts where that is asked
CHOOSING: Final = (GEAR_SETTING, COMPARE)  # kinds of question that few texts answer
FAVOUR: Final = 1.2  # how much more a text counts that answers the kind of question


@compact
class Subject:
    """A text in stems. `asked`: the kind of question that it answers; `weights`: how much each stem counts."""

    id: str
    asked: str
    weights: Mapping[str, float]
    phrases: tuple[frozenset[str], ...]


@compact
class Match:
    """A text, how much it shares with the question, which stems, and what part of the question's they are.

    `part`: by their number; `told`: by how much each tells of the subject. `held`: what part they are of the phrase
    of the text that they are most of, by how much each tells.
    """

    id: str
    asked: str
    score: float
    shared: tuple[str, ...]
    part: float = 1.0
    told: float = 1.0
    held: float = 1.0

    @property
    def likeness(self) -> float:
        """How surely the question is about the text.

        What is shared counts in full where it is all of the question and all of one phrase; of words that are met by
        chance there are others in both.
        """
        return self.score * sqrt(self.told * self.held)


def subject(id_: str, asked: str, topic: str, phrases: Iterable[str], says: str, vocabulary: Vocabulary) -> Subject:
    """The stems of one text: of its topic, of the phrases that people use for it, and of what it says."""
    weights: dict[str, float] = dict.fromkeys(vocabulary.stems(says), SAYS)
    held = [vocabulary.stems(topic)]
    weights |= dict.fromkeys(held[0], TOPIC)
    for phrase in phrases:
        held.append(vocabulary.stems(phrase))
        weights |= dict.fromkeys(held[-1], NAMES)
    return Subject(id_, asked, weights, tuple(phrase for phrase in held if phrase))


_Scored: TypeAlias = tuple[Subject, frozenset[str], float, float]


class Subjects:
    """An index over some texts."""

    def __init__(self, rows: Iterable[Subject], vocabulary: Vocabulary) -> None:
        self.rows = tuple(rows)
        self.asked_of = {row.id: row.asked for row in self.rows}
        self.vocabulary = vocabulary
        counts: dict[str, float] = {}  # texts that it stands in, by how much it counts there
        for row in self.rows:
            for one in row.weights:
                counts[one] = counts.get(one, 0.0) + row.weights[one]
        size = len(self.rows) or 1
        self._rare = {one: _telling(one) * log(1 + size / max(count, 1.0)) for one, count in counts.items()}
        self._rarest = max(self._rare.values(), default=1.0)
        # of a stem that was looked for: the texts that it stands in, and which of their phrases
        self._standing: dict[str, list[tuple[int, tuple[int, ...]]]] = {}
        self._alone: dict[tuple[int, str], tuple[float, float]] = {}  # the score of a text that shares just this stem
        self._whole: dict[tuple[int, int], float] = {}  # what a phrase of a text counts with all its stems
        # the last question's, which is looked up again for each of several kinds of question
        self._last: tuple[frozenset[str], list[_Scored]] = (frozenset(), [])
        self._matched: dict[str, list[Match]] = {}  # its matches by the kind of question
        self._mended: dict[str, str] = {}  # words looked up for a slip before

    def knows(self, word: str) -> bool:
        """Whether a word, in some form, stands in one of the texts."""
        return word in self.vocabulary.empty or self.vocabulary.stem_of(word.casefold()) in self._rare

    def shared(self, text: str, other: str) -> tuple[float, float, frozenset[str]]:
        """How much two texts share, by how rare their words are, what part that is of the first, and which stems."""
        asked = self._asked(text)
        both = asked & self.vocabulary.stems(other)
        score = sum(self._rare.get(one, 0.0) for one in both)
        return score, score / (sum(map(self._tells, asked)) or 1.0), both

    def matches(self, text: str, intent: str = "") -> list[Match]:
        """Every text that shares a word with `text`, the nearest first. `intent`: what is asked of them."""
        asked = self._asked(text)
        rows = self._looked_up(asked)
        if intent not in self._matched:
            whole = sum(map(self._tells, asked))
            found = [self._match(asked, whole, row, row[2] * _favour(row[0], intent)) for row in rows]
            found.sort(key=lambda match: (-match.score, match.id))
            self._matched[intent] = found
        return list(self._matched[intent])

    def nearest(self, text: str) -> Match | None:
        """The first of the matches, whatever is asked of them."""
        asked = self._asked(text)
        best = min(self._looked_up(asked), key=lambda row: (-row[2] * _favour(row[0], ""), row[0].id), default=None)
        whole = sum(map(self._tells, asked))
        return self._match(asked, whole, best, best[2] * _favour(best[0], "")) if best is not None else None

    def _match(self, asked: frozenset[str], whole: float, row: _Scored, score: float) -> Match:
        """`whole`: how much all that is asked tells."""
        of, shared, _, held = row
        told = sum(map(self._tells, shared)) / whole
        return Match(of.id, of.asked, score, tuple(sorted(shared)), len(shared) / len(asked), told, held)

    def _looked_up(self, asked: frozenset[str]) -> list[_Scored]:
        if asked != self._last[0]:
            self._last, self._matched = (asked, self._scored(asked)), {}
        return self._last[1]

    def _scored(self, asked: frozenset[str]) -> list[_Scored]:
        """Each text that shares a stem with the question, the stems, how much they tell, what part of a phrase."""
        shared: dict[int, list[tuple[str, tuple[int, ...]]]] = {}
        for one in asked:
            for at, phrases in self._where(one):
                shared.setdefault(at, []).append((one, phrases))
        return [
            (self.rows[at], frozenset([one for one, _ in stems]), *self._score_of(at, stems))
            for at, stems in sorted(shared.items())
        ]

    def _score_of(self, at: int, stems: list[tuple[str, tuple[int, ...]]]) -> tuple[float, float]:
        """The score of a text; most share one stem with the question, and that is worked out once for all questions."""
        if len(stems) > 1:
            return self._score(at, stems)
        key = at, stems[0][0]
        if key not in self._alone:
            self._alone[key] = self._score(at, stems)
        return self._alone[key]

    def _where(self, one: str) -> list[tuple[int, tuple[int, ...]]]:
        """The texts that a stem stands in, each with those of its phrases that hold it."""
        found = self._standing.get(one)
        if found is None:
            found = self._standing[one] = [
                (at, tuple(n for n, phrase in enumerate(row.phrases) if one in phrase))
                for at, row in enumerate(self.rows)
                if one in row.weights
            ]
        return found

    def _asked(self, text: str) -> frozenset[str]:
        """The stems of a text, slips of the finger put right where one known word is meant."""
        return frozenset(self._known(word) for word in self.vocabulary.words_of(text))

    def _known(self, word: str) -> str:
        one = self.vocabulary.stem_of(word)
        if one in self._rare:
            return one
        if word not in self._mended:
            classes = self.vocabulary.classes
            meant = slip_of(word, (other for other in classes if other[0] == word[0]))
            near = slip_of(one, (other for other in self._rare if other[0] == one[0])) if meant is None else None
            self._mended[word] = classes[meant] if meant is not None else near or one
        return self._mended[word]

    def _score(self, at: int, stems: list[tuple[str, tuple[int, ...]]]) -> tuple[float, float]:
        """How much a text is about the stems that it shares, and what part of its nearest phrase they are."""
        row = self.rows[at]
        told = {one: self._rare[one] * row.weights[one] for one, _ in stems}
        touched: dict[int, tuple[float, float, int]] = {}  # what its stems tell, how rare, how many
        for one, phrases in stems:
            telling, rare = told[one], self._rare[one]
            for n in phrases:
                plain, there, count = touched.get(n, (0.0, 0.0, 0))
                touched[n] = plain + telling, there + rare, count + 1
        best, held, share = 0.0, 0.0, 0.0
        for n, (plain, there, count) in sorted(touched.items()):
            score, whole = plain, self._counted(at, n)
            if count > 1:
                score += there * there / whole * TOGETHER
            elif len(row.phrases[n]) == 1:
                score *= WHOLLY
            if score > best:
                best, held, share = score, plain, there / whole
        often = sum([told[one] * _often(len(phrases)) for one, phrases in stems])
        return best + STREWN * (sum(told.values()) - held) + OFTEN * often, share

    def _counted(self, at: int, n: int) -> float:
        whole = self._whole.get((at, n))
        if whole is None:
            whole = self._whole[at, n] = sum([self._rare[one] for one in self.rows[at].phrases[n]])
        return whole

    def _tells(self, one: str) -> float:
        """How much a stem tells of the subject; one that stands in no text would be of another."""
        return self._rare.get(one, self._rarest)


def _often(phrases: int) -> float:
    """From 0 for a stem of one phrase towards 1 for one that a text's phrases come back to."""
    return (phrases - 1) / (phrases + 1) if phrases else 0.0


def _telling(one: str) -> float:
    """A name of a mount or thread stands beside what is asked of it: it tells less of the subject."""
    return NAMED if any(char.isdigit() for char in one) else 1.0


def _favour(row: Subject, intent: str) -> float:
    """Whether it is safe is asked of what rules on that, a reason is not; a choice of what tells how to do it.

    What to set or to choose is asked of what tells of that, and of a danger hardly ever.
    """
    if intent == HAZARD:
        return RULING if row.asked == intent else 1.0
    if intent in CHOOSING:
        return RULING if row.asked == intent else 1 / RULING if row.asked == "hazard" else 1.0
    if intent == WHY:
        return 1 / FAVOUR if row.asked == "hazard" else 1.0
    return FAVOUR if intent and row.asked == "other" else 1.0
