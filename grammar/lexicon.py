"""What is known by name: the names handed in from the facts and the words of the language, by longest match."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Iterator
from dataclasses import dataclass, field
from typing import Final

from grammar.atoms import Atom, joined_key, joins, key_of

# where one phrase names records of several kinds, the first of these is meant; terms and advice are kept apart
KINDS: Final = ("lens", "body", "adapter", "mount", "format", "thread")
SPOKEN_OF: Final = ("term", "advice")
_MOST_ATOMS: Final = 6
_RANK: Final = {kind: rank for rank, kind in enumerate(KINDS)}
_INCH_TYPE: Final = re.compile(r"(\d+(?:\.\d+)?(?:/\d+(?:\.\d+)?)?)[ -]?(?:type|inch|in\b|\")")
# endings that people put on a word of the language or leave off; only tried where the word as typed is not known
_ENDINGS: Final = (("s", ""), ("es", ""), ("ed", ""), ("ed", "e"), ("ing", ""), ("ing", "e"), ("er", ""), ("ies", "y"))


@dataclass(frozen=True, slots=True)
class Name:
    """A phrase of the facts and the records it may mean, the likeliest first."""

    phrase: str
    kind: str
    id: str
    ids: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Word:
    """A word of the language: its class (`prep`, `piece`, `ask` ...), its value there, and what it implies."""

    sort: str
    value: str
    implies: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Evidence:
    """What speaks for or against an intent: all of `needs` and none of `lacks` seen in the question."""

    intent: str
    needs: frozenset[str]
    lacks: frozenset[str]
    weight: float


@dataclass(slots=True)
class Lexicon:
    """Names and words, indexed by their joined form. Make one with `Lexicon.build`."""

    names: dict[str, tuple[str, str, str]] = field(default_factory=dict)  # key -> phrase, kind, id
    several: dict[str, tuple[str, ...]] = field(default_factory=dict)  # key -> ids, where one phrase means more
    spoken_of: dict[str, list[tuple[str, str]]] = field(default_factory=dict)  # key -> (kind, id) of terms and advice
    words: dict[str, Word] = field(default_factory=dict)
    phrases: dict[str, Word] = field(default_factory=dict)  # words of the language written with several atoms
    cues: dict[str, tuple[str, ...]] = field(default_factory=dict)  # key -> what it tells of the intent
    orders: dict[str, str] = field(default_factory=dict)  # key of a whole line -> the order
    known: set[str] = field(default_factory=set)  # every single word that stands in some phrase of the language
    alone: set[str] = field(default_factory=set)  # those that are a phrase by themselves
    breaks: set[str] = field(default_factory=set)  # those that are cues by themselves, and so end a description
    evidence: list[Evidence] = field(default_factory=list)
    first_phrase: dict[tuple[str, str], str] = field(default_factory=dict)
    inch_types: dict[str, str] = field(default_factory=dict)  # '1/2' -> format id
    cine_mm: dict[float, str] = field(default_factory=dict)  # 16.0 -> format id, for formats named by film width

    @staticmethod
    def build(
        names: Iterable[tuple[str, str, str]],
        words: Iterable[tuple[str, Iterable[str]]],
        shared: Iterable[tuple[Iterable[str], Iterable[str], str | None]] = (),
        own: Collection[str] = (),
    ) -> Lexicon:
        """A lexicon from (phrase, kind, id), (means, phrases) and (phrases, mount ids, likeliest id).

        `own`: ids of the user's own gear, whose names win over all others. A phrase that names several records of one
        kind keeps them all; shared designations are such phrases with a likeliest one.
        """
        lexicon = Lexicon()
        for means, phrases in words:
            lexicon._add_word(means, phrases)
        lexicon._add_names(names, own)
        for phrases, ids, likely in shared:
            lexicon._add_shared(phrases, ids, likely, own)
        lexicon._derive()
        return lexicon

    def name_at(self, line: str, atoms: list[Atom], at: int) -> tuple[Name, int] | None:
        """The longest name that begins at atom `at`, and the atom after it."""
        found = self._longest(self.names, line, atoms, at)
        if found is None:
            return None
        key, after = found
        return self.name(key), after

    def name(self, key: str) -> Name:
        phrase, kind, id_ = self.names[key]
        return Name(phrase, kind, id_, self.several.get(key, (id_,)))

    def word_at(self, line: str, atoms: list[Atom], at: int) -> tuple[Word, int] | None:
        """The longest word of the language that begins at atom `at`, and the atom after it."""
        for after in _ends(line, atoms, at)[:-1]:
            word = self.phrases.get(joined_key(line, atoms[at:after]))
            if word:
                return word, after
        text = atoms[at].text
        word = self.words.get(text) or self.phrases.get(text) or self._inflected(text)
        return (word, at + 1) if word else None

    def cues_at(self, line: str, atoms: list[Atom], at: int) -> tuple[tuple[str, ...], int] | None:
        """What the longest cue that begins at atom `at` tells, and the atom after it."""
        for after in _ends(line, atoms, at):
            key = joined_key(line, atoms[at:after])
            cues = self.cues.get(key)
            # 'a f' is not 'af': what is written as one word is one word
            if cues and (after == at + 1 or key not in self.alone):
                return cues, after
        stem = next((one for one in _stems(atoms[at].text) if one in self.cues), None)
        return (self.cues[stem], at + 1) if stem and atoms[at].text not in self.known else None

    def spoken_at(self, line: str, atoms: list[Atom], at: int) -> tuple[list[tuple[str, str]], int] | None:
        """The terms and advice whose name begins at atom `at`, and the atom after it."""
        found = self._longest(self.spoken_of, line, atoms, at)
        return (self.spoken_of[found[0]], found[1]) if found else None

    def name_for(self, kind: str, id_: str) -> str:
        """The first phrase that was given for a record; its id where none was."""
        return self.first_phrase.get((kind, id_), id_)

    def is_word(self, text: str) -> bool:
        known = text in self.known or text in self.phrases or self._inflected(text) is not None
        return known or any(stem in self.known for stem in _stems(text))

    def nearest(self, word: str, kinds: Collection[str] = KINDS) -> list[str]:
        """Known names that look most like `word`, the likeliest first, at most three. For error paths only."""
        from grammar.nearest import nearest_keys

        keys = (key for key, (_, kind, _) in self.names.items() if kind in kinds)
        return list(dict.fromkeys(self.names[key][0] for key in nearest_keys(key_of(word), keys)))

    def mended(self, text: str) -> str | None:
        """The word of the language that `text` is most likely a slip of the finger for, or None."""
        from grammar.nearest import slip_of

        return slip_of(text, self.known)

    def _longest(self, table: Collection[str], line: str, atoms: list[Atom], at: int) -> tuple[str, int] | None:
        for after in _ends(line, atoms, at):
            key = joined_key(line, atoms[at:after])
            if key in table and not (after == at + 1 and self._hides_a_word(key, table)):
                return key, after
            if len(key) > 3 and key[-1] == "s" and key[:-1] in table and key not in self.known:
                return key[:-1], after
        return None

    def _hides_a_word(self, key: str, table: Collection[str]) -> bool:
        # 'amount' is the joined form of 'A mount', but one who types it means the word
        return table is self.names and key in self.alone and key != key_of(self.names[key][0].split()[0])

    def _inflected(self, text: str) -> Word | None:
        words = (self.words.get(stem) for stem in _stems(text))
        return next((word for word in words if word is not None and word.sort not in ("prep", "det", "join")), None)

    def _add_word(self, means: str, phrases: Iterable[str]) -> None:
        parts = means.split()
        if parts[:1] == ["intent"]:
            self.evidence.extend(_evidence(parts[1], line) for line in phrases)
            return
        sort, value = (parts[0] if parts else ""), (parts[1] if len(parts) > 1 else "")
        for phrase in phrases:
            key = key_of(phrase)
            if sort == "order":
                self.orders[key] = value
                continue
            parts_of = phrase.casefold().replace("'", "").replace("-", " ").replace("/", " ").split()
            self.known.update(parts_of)
            if len(parts_of) == 1:
                self.alone.add(key)
            if sort == "ask":
                self.cues[key] = (*self.cues.get(key, ()), value)
                if len(parts_of) == 1:
                    self.breaks.add(key)
            elif sort or len(parts_of) > 1:
                (self.phrases if len(parts_of) > 1 else self.words)[key] = Word(
                    sort or "filler", value, tuple(parts[2:])
                )

    def _add_names(self, names: Iterable[tuple[str, str, str]], own: Collection[str]) -> None:
        table, first = self.names, self.first_phrase
        for entry in names:
            phrase, kind, id_ = entry
            if (kind, id_) not in first:
                first[kind, id_] = phrase
            key = key_of(phrase)
            if not key:
                continue
            if kind in SPOKEN_OF:
                self.spoken_of.setdefault(key, []).append((kind, id_))
            elif key not in table:
                table[key] = entry
            else:
                self._add_again(key, entry, own)

    def _add_again(self, key: str, entry: tuple[str, str, str], own: Collection[str]) -> None:
        _, kind, id_ = entry
        _, other_kind, other = self.names[key]
        if (kind, id_) == (other_kind, other):
            return
        mine, theirs = id_ in own, other in own
        if mine == theirs and kind == other_kind:
            ids = self.several.get(key, (other,))
            self.several[key] = ids if id_ in ids else (*ids, id_)
        elif mine > theirs or (mine == theirs and _RANK.get(kind, 9) < _RANK.get(other_kind, 9)):
            self.names[key] = entry
            self.several.pop(key, None)

    def _add_shared(self, phrases: Iterable[str], ids: Iterable[str], likely: str | None, own: Collection[str]) -> None:
        rest = tuple(ids)
        ids = (likely, *(one for one in rest if one != likely)) if likely else rest
        for phrase in phrases:
            key = key_of(phrase)
            if key in self.names and self.names[key][2] in own:
                continue
            self.names[key] = (phrase, "mount", ids[0])
            self.several[key] = ids

    def _derive(self) -> None:
        """Short forms that need no fact: 'E' of 'E-mount', '1/2' of '1/2-type', 16 mm of a film of that width."""
        for key, (phrase, kind, id_) in list(self.names.items()):
            if kind == "mount" and key.endswith("mount") and len(key) > 5:
                stem = key[:-5]
                if stem not in self.names and not stem.isdigit():
                    self.names[stem] = (phrase, kind, id_)
                    if key in self.several:
                        self.several[stem] = self.several[key]
            elif kind == "format":
                inch = _INCH_TYPE.match(phrase.casefold())
                if inch:
                    self.inch_types.setdefault(inch.group(1), id_)
                film = re.fullmatch(r"(?:regular |standard )?(\d+(?:\.\d+)?)[ -]?mm(?: film)?", phrase.casefold())
                if film:
                    self.cine_mm.setdefault(float(film.group(1)), id_)


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


def _ends(line: str, atoms: list[Atom], at: int) -> list[int]:
    """Where a name that begins at atom `at` may end (the atom after), the longest first."""
    ends = [at + 1]
    last = at
    while len(ends) < _MOST_ATOMS:
        following = last + 1
        if following < len(atoms) and not atoms[following].is_word:
            following += 1  # a hyphen, slash or dot within the name
        if following >= len(atoms) or not atoms[following].is_word or not joins(line, atoms[last], atoms[following]):
            break
        ends.append(following + 1)
        last = following
    return ends[::-1]


def _evidence(intent: str, line: str) -> Evidence:
    *features, weight = line.split()
    needs = frozenset(one for one in features if not one.startswith("!"))
    return Evidence(intent, needs, frozenset(one[1:] for one in features if one.startswith("!")), float(weight))
