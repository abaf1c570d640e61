"""Which parts of a line are understood as it stands: names, numbers with units, and words of the language."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final, NamedTuple

from engine.base.compact import fields, replace
from grammar.own.sifting import about_own
from grammar.things.letters import settled
from grammar.words.lexicon import Lexicon
from grammar.words.tokens import LONGEST, Line, tokens_of
from grammar.words.wordlist import WordList

# a token of these is only a word that is passed over, or none that is known
_PLAIN: Final = frozenset(["FILLER", "DET", "VERB", "MARK", "STOP", "JOIN", "UNKNOWN", "NUMBER", "CUE"])


class Part(NamedTuple):
    """Characters `start` to `end` of a line, counted from 0. `sort`: name, number, word, or '' for plain ones."""

    start: int
    end: int
    sort: str


class _AsTyped(WordList):
    """Words without mending: what is misspelt stays plain while it is typed, and no key waits for a search."""

    def mended(self, text: str) -> str | None:
        return None


def as_typed(lexicon: Lexicon) -> Lexicon:
    """The lexicon, for reading a line letter by letter as it grows."""
    words = _AsTyped(*(getattr(lexicon.words, row.name) for row in fields(WordList)))
    return replace(lexicon, words=words)


def parts_of(text: str, lexicon: Lexicon) -> list[Part]:
    """`text` cut into parts that together are the whole of it. `lexicon`: as made by `as_typed`."""
    if not text.strip() or len(text) > LONGEST:
        return [Part(0, len(text), "")]
    sorts = [""] * len(text)
    for start, end, sort in (*_of_own(text, lexicon), *_understood(tokens_of(text, lexicon))):
        sorts[start:end] = [sort] * (min(end, len(text)) - start)
    parts: list[Part] = []
    start = 0
    for at in range(1, len(text) + 1):
        if at == len(text) or sorts[at] != sorts[start]:
            parts.append(Part(start, at, sorts[start]))
            start = at
    return parts


def _of_own(text: str, lexicon: Lexicon) -> Iterator[Part]:
    """The conditions and orders of a question about all of one's own gear."""
    found = about_own(text, lexicon)
    for mark in found[1] if found is not None else ():
        atoms = found[0].atoms if found is not None else []
        yield Part(atoms[mark.at].start, atoms[mark.after - 1].end, "word")


def _understood(line: Line) -> Iterator[Part]:
    """Later ones lie over earlier ones."""
    for cue in line.cues:
        yield Part(cue.column - 1, cue.end, "word")
    for spoken in line.spoken:
        yield Part(spoken.column - 1, spoken.column - 1 + len(spoken.text), "word")
    for token in settled(line.tokens):
        if token.kind not in _PLAIN:
            sort = "name" if token.ids and not token.numbers else "number" if token.numbers else "word"
            yield Part(token.column - 1, token.column - 1 + len(token.text), sort)
