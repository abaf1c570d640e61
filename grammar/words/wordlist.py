"""The words of the language: what each is in a sentence, what it tells of the intent, and how it may be misspelt."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator
from typing import Final

from engine.base.compact import compact, field
from grammar.words.atoms import Run, Runs, key_of
from grammar.words.grouping import Groups
from grammar.words.numerals import CLASSES, Numerals
from grammar.words.spelled import Spelled

ALIKE: Final = "alike"  # words that are one where it is looked up what a question is about
ASKING: Final = "asking"  # words that only ask, where it is looked up what a term is called
EMPTY: Final = "empty"  # words that say nothing of what a question is about
GROUP: Final = "group"  # words that a reading tells apart by more than their class
NUMERAL: Final = "numeral"  # a word that numbers are told in
CUE: Final = "ask"  # phrases that tell what is wanted
MENTION: Final = "mention"  # phrases that an answer listens for
_ARTICLE: Final = "a"
_ON_LETTER: Final = ["on", "e"]
REPLY: Final = "reply"  # words for a number of the answer before
# endings that people put on a word of the language or leave off; only tried where the word as typed is not known
_ENDINGS: Final = (("s", ""), ("es", ""), ("ed", ""), ("ed", "e"), ("ing", ""), ("ing", "e"), ("er", ""), ("ies", "y"))


@compact
class Word:
    """A word of the language: its class (`prep`, `piece`, `ask` ...), its value there, and what it implies."""

    sort: str
    value: str
    implies: tuple[str, ...] = ()


@compact
class Evidence:
    """What speaks for or against an intent: all of `needs` and none of `lacks` seen in the question."""

    intent: str
    needs: frozenset[str]
    lacks: frozenset[str]
    weight: float


@compact(frozen=False)
class WordList:
    """Words by key: those that are a part of speech, those that are cues, and whole lines that are orders."""

    words: dict[str, Word] = field(default_factory=dict)
    phrases: dict[str, Word] = field(default_factory=dict)  # those written with several words
    cues: dict[str, tuple[str, ...]] = field(default_factory=dict)  # key -> what it tells of the intent
    orders: dict[str, str] = field(default_factory=dict)  # key of a whole line -> the order
    known: set[str] = field(default_factory=set)  # every single word that stands in some phrase
    alone: set[str] = field(default_factory=set)  # those that are a phrase by themselves
    breaks: set[str] = field(default_factory=set)  # those that are cues by themselves, and so end a description
    evidence: list[Evidence] = field(default_factory=list)
    teaching: dict[str, str] = field(default_factory=dict)  # key -> what it does in a statement about one's own gear
    # key -> its first spelling and what it does in a question about all of one's own gear
    sifting: dict[str, tuple[str, ...]] = field(default_factory=dict)
    mentions: dict[str, tuple[str, ...]] = field(default_factory=dict)  # key -> phrases that an answer listens for
    sift_words: set[str] = field(default_factory=set)  # every single word of those
    groups: Groups = field(default_factory=Groups)
    numerals: Numerals = field(default_factory=Numerals)
    parted: set[str] = field(default_factory=set)  # cues that are written in several words (too): 'close up'
    _spelled: list[Spelled] = field(default_factory=list, compare=False)  # made of the numerals when first asked for
    # evidence by one of the features that it needs, each row with its place: made when first asked for
    _by_need: dict[str, list[tuple[int, Evidence]]] = field(default_factory=dict, compare=False)

    @property
    def spelled(self) -> Spelled:
        if not self._spelled:
            self._spelled.append(Spelled(self.numerals, self.groups))
        return self._spelled[0]

    def evidence_on(self, features: frozenset[str]) -> list[Evidence]:
        """The evidence that needs none but these features, in its order."""
        if not self._by_need and self.evidence:
            often = Counter(need for one in self.evidence for need in one.needs)
            for row in enumerate(self.evidence):
                rarest = min(row[1].needs, key=lambda need: (often[need], need), default="")
                self._by_need.setdefault(rarest, []).append(row)
        rows = [row for need in (*features, "") for row in self._by_need.get(need, ()) if row[1].needs <= features]
        return [one for _, one in sorted(rows, key=lambda row: row[0])]

    def add(self, means: str, phrases: Iterable[str]) -> None:
        """Take in one record of the word list: `means` is a class, a value there and what it implies."""
        parts = parts_of_means = means.split()
        phrases = tuple(phrases)
        if parts[:1] == ["intent"]:
            self.evidence.extend(_evidence(parts[1], line) for line in phrases)
            self._by_need.clear()
            return
        sort, value = (parts[0] if parts else ""), (parts[1] if len(parts) > 1 else "")
        if sort in (REPLY, ALIKE, EMPTY, ASKING):
            return  # of what an answer holds, or advice is about: not of how a question is read
        if sort == MENTION:
            self.mentions[value] = tuple(phrase.casefold() for phrase in phrases)
            return
        if sort == NUMERAL:
            if value in CLASSES and len(parts) > 2 and parts[2].isdecimal():  # what is not is told as a problem
                self.numerals.add(value, int(parts[2]), phrases)
            return
        if sort == GROUP:
            self.groups.add(value, phrases)
            return
        for phrase in phrases:
            key = key_of(phrase)
            if sort == "teach":
                self.teaching[key] = value
                continue
            if sort == "order":
                self.orders[key] = value
                continue
            if sort == "sift":
                self.sifting[key] = (phrases[0], *parts_of_means[1:])
                self.sift_words.update(() if value == "tell" else phrase.split())
                continue
            parts_of = phrase.casefold().replace("'", "").replace("-", " ").replace("/", " ").split()
            self.known.update(parts_of)
            if len(parts_of) == 1:
                self.alone.add(key)
            if sort == CUE:
                self.cues[key] = (*self.cues.get(key, ()), value)
                (self.breaks if len(parts_of) == 1 else self.parted).add(key)
            elif sort or len(parts_of) > 1:
                (self.phrases if len(parts_of) > 1 else self.words)[key] = Word(
                    sort or "filler", value, tuple(parts[2:])
                )

    def word_at(self, runs: Runs, at: int) -> tuple[Word, int] | None:
        """The longest part of speech that begins at atom `at`, and the atom after it."""
        for run in runs.from_(at)[:-1]:
            if run.plain and run.key in self.phrases and not _ends_on_letter(runs, run):
                return self.phrases[run.key], run.after
        text = runs.atoms[at].text
        word = self.words.get(text) or self.phrases.get(text) or self._inflected(text)
        return (word, at + 1) if word else None

    def cues_at(self, runs: Runs, at: int) -> tuple[tuple[str, ...], int] | None:
        """What the longest cue that begins at atom `at` tells, and the atom after it."""
        for run in runs.from_(at):
            # 'a f' is not 'af': what is written as one word is one word
            as_one = run.key in self.alone and run.key not in self.parted
            whole = run.after == at + 1 or not (as_one or _ends_on_letter(runs, run))
            if run.plain and run.key in self.cues and whole:
                return self.cues[run.key], run.after
        text = runs.atoms[at].text
        if text in self.known:
            return None
        stem = next((one for one in _stems(text) if one in self.cues), None)
        return (self.cues[stem], at + 1) if stem else None

    def knows(self, text: str) -> bool:
        """Whether a single word stands in the list, in some form."""
        return text in self.known or text in self.phrases or any(stem in self.known for stem in _stems(text))

    def mended(self, text: str) -> str | None:
        """The word that `text` is most likely a slip of the finger for, or None."""
        from grammar.words.nearest import slip_of

        return slip_of(text, self.known)

    def _inflected(self, text: str) -> Word | None:
        words = (self.words.get(stem) for stem in _stems(text))
        return next((word for word in words if word is not None and word.sort not in ("prep", "det", "join")), None)


def _ends_on_letter(runs: Runs, run: Run) -> bool:
    """'K glass on E': the mount behind 'on' is not the end of 'glass one', nor that of 'E and A' an article."""
    last, before = runs.atoms[run.after - 1], runs.atoms[run.after - 2]
    shouted = runs.line[before.start : before.end].isupper()
    capital = last.text == _ARTICLE and runs.line[last.start] != _ARTICLE and not shouted
    return capital or [atom.text for atom in runs.atoms[run.after - 2 : run.after]] == _ON_LETTER


def _stems(text: str) -> Iterator[str]:
    """What an inflected word may be a form of: 'mixing' -> 'mix', 'fitted' -> 'fit'."""
    if len(text) < 4 or not text.isalpha():
        return
    for ending, instead in _ENDINGS:
        if text.endswith(ending) and len(text) - len(ending) >= 3:
            stem = text[: -len(ending)] + instead
            yield stem
            if len(stem) > 3 and stem[-1] == stem[-2]:
                yield stem[:-1]


def _evidence(intent: str, line: str) -> Evidence:
    *features, weight = line.split()
    needs = frozenset(one for one in features if not one.startswith("!"))
    return Evidence(intent, needs, frozenset(one[1:] for one in features if one.startswith("!")), float(weight))
