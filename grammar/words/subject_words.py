"""What a text is about, as a set of stems: words that say nothing left out, words that mean the same made one."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Final

from engine.base.compact import compact, field

_WORD: Final = re.compile(r"[a-z0-9]+(?:[./][0-9]+)*")
_STOP: Final = re.compile(r"[ft]/?[0-7](?:\.\d+)?")  # f/1.4 says nothing of a subject, as f/22 does
# '9 meters' is a distance, and nothing that meters
_LENGTH: Final = re.compile(r"(?<![a-z0-9])(\d+(?:\.\d+)?) ?(?:met(?:er|re)s?|feet|foot)(?![a-z])")
_LETTER: Final = re.compile(r"[a-z]")
# endings that change nothing of what a word is about, longest first
_ENDINGS: Final = ("ations", "ation", "ingly", "iness", "ings", "ment", "ness", "ions", "ing", "ion", "ies", "ers",
                   "est", "ed", "es", "er", "ly", "s", "y", "e")  # fmt: skip


@compact
class Vocabulary:
    """How the words of texts are compared. `classes`: a word -> the stem that stands for all that mean the same.

    `empty`: words of the language that say nothing of a subject.
    """

    classes: Mapping[str, str] = field(default_factory=dict)
    empty: frozenset[str] = frozenset()

    def stems(self, text: str) -> frozenset[str]:
        """The stems of the words that say something."""
        return frozenset(self.stem_of(word) for word in self.words_of(text))

    def stem_of(self, word: str) -> str:
        return self.classes.get(word) or self.classes.get(stem(word)) or stem(word)

    def words_of(self, text: str) -> list[str]:
        """The words that say something, apostrophes dropped."""
        flat = text.casefold().replace("'", "").replace("’", "").replace("-", " ")
        flat = _LENGTH.sub(r"\1", flat)
        words = (word for word in _WORD.findall(flat) if word not in self.empty and len(word) > 1)
        return [word for word in words if _LETTER.search(word) and not _STOP.fullmatch(word)]


def stem(word: str) -> str:
    """A word without its ending, so that 'stuck', 'sticking' differ but 'shims', 'shimming' do not."""
    for ending in _ENDINGS:
        if word.endswith(ending) and len(word) - len(ending) >= 3:
            word = word[: -len(ending)]
            break
    return word[:-1] if len(word) > 3 and word[-1] == word[-2] else word


def vocabulary_of(alike: Iterable[tuple[str, ...]], empty: Iterable[str]) -> Vocabulary:
    """The first word of each row of `alike` stands for the others; a stem stands as its word does."""
    classes: dict[str, str] = {}
    for row in alike:
        first = stem(row[0])
        for word in row:
            classes[word] = first
        for word in row:
            classes.setdefault(stem(word), first)
    return Vocabulary(classes, frozenset(empty))
