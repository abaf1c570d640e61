"""What is known by name: the names handed in from the facts and the words of the language, by longest match."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterable, Mapping
from typing import Final

from engine.base.compact import compact, field
from grammar.words.atoms import Run, Runs, atoms_of, cuts_of, key_of
from grammar.words.subject_words import Vocabulary
from grammar.words.subjects import Subjects
from grammar.words.wordlist import WordList

# where one phrase names records of several kinds, the first of these is meant; terms and advice are kept apart
KINDS: Final = ("lens", "body", "adapter", "mount", "format", "thread")
SPOKEN_OF: Final = ("term", "advice")
_RANK: Final = {kind: rank for rank, kind in enumerate(KINDS)}
_ARTICLE: Final = "a"
_MOUNT: Final = "mount"  # 'a mount lens' may well be one of that letter
_SHORT: Final = 3  # letters; a name of two and an 's' is told from other short words by its capitals alone
_INCH_TYPE: Final = r"(\d+(?:\.\d+)?(?:/\d+(?:\.\d+)?)?)[ -]?(?:type|inch|in\b|\")"


@compact
class Name:
    """A phrase of the facts and the records it may mean, the likeliest first."""

    phrase: str
    kind: str
    id: str
    ids: tuple[str, ...] = ()


@compact(frozen=False)
class Lexicon:
    """Names and words, indexed by their joined form. Make one with `Lexicon.build`."""

    names: dict[str, tuple[str, str, str]] = field(default_factory=dict)  # key -> phrase, kind, id
    several: dict[str, tuple[str, ...]] = field(default_factory=dict)  # key -> ids, where one phrase means more
    spoken_of: dict[str, list[tuple[str, str]]] = field(default_factory=dict)  # key -> (kind, id) of terms and advice
    words: WordList = field(default_factory=WordList)
    own: frozenset[str] = frozenset()  # ids of the user's own gear
    first_phrase: dict[tuple[str, str], str] = field(default_factory=dict)
    inch_types: dict[str, str] = field(default_factory=dict)  # '1/2' -> format id
    cine_mm: dict[float, str] = field(default_factory=dict)  # 16.0 -> format id, for formats named by film width
    hosts: frozenset[str] = frozenset()  # ids of mounts that, named alone, are those of a body
    never_full: frozenset[str] = frozenset()  # ids of mounts of which no body is of full frame
    threaded: frozenset[str] = frozenset()  # ids of mounts that are screws
    by_trait: dict[str, frozenset[str]] = field(default_factory=dict)  # trait -> ids of mounts and formats that have it
    subjects: Subjects = field(
        default_factory=lambda: Subjects((), Vocabulary()), compare=False
    )  # what there is advice about

    @staticmethod
    def build(
        names: Iterable[tuple[str, str, str]],
        words: Iterable[tuple[str, Iterable[str]]],
        shared: Iterable[tuple[Iterable[str], Iterable[str], str | None]] = (),
        own: Collection[str] = (),
        hosts: Collection[str] = (),
        never_full: Collection[str] = (),
        threaded: Collection[str] = (),
        by_trait: Mapping[str, frozenset[str]] | None = None,
        word_list: WordList | None = None,
    ) -> Lexicon:
        """A lexicon from (phrase, kind, id), (means, phrases) and (phrases, mount ids, likeliest id).

        `own`: ids of the user's own gear, whose names win over all others. A phrase that names several records of one
        kind keeps them all; shared designations are such phrases with a likeliest one. `hosts`: mounts of which a
        question mostly means a body that takes other lenses. `never_full`: mounts of which no body is of full frame.
        `threaded`: those that are screws. `by_trait`: mounts and formats by a trait that questions are read by.
        `word_list`: the list of the words, where there is one already.
        """
        lexicon = Lexicon(
            own=frozenset(own),
            hosts=frozenset(hosts),
            never_full=frozenset(never_full),
            threaded=frozenset(threaded),
            by_trait=dict(by_trait or {}),
        )
        if word_list is not None:
            lexicon.words = word_list
        else:
            for means, phrases in words:
                lexicon.words.add(means, phrases)
        lexicon._add_names(names, own)
        for phrases, ids, likely in shared:
            lexicon._add_shared(phrases, ids, likely, own)
        lexicon._derive()
        return lexicon

    def name_at(self, runs: Runs, at: int) -> tuple[Name, int] | None:
        """The longest name that begins at atom `at`, and the atom after it."""
        found = self._longest(self.names, runs, at)
        if found is None:
            return None
        run, key = found
        _, kind, id_ = self.names[key]
        comma = next((n for n in range(at, run.after) if runs.atoms[n].text == ","), None)
        if kind == "mount" and comma is not None:
            # '75mm enlarger, M42 helicoid' names two things
            ahead = [one for one in runs.from_(at) if one.after <= comma and self._is_mount(one.key)]
            return (self.name(ahead[0].key), ahead[0].after) if ahead else None
        if kind in ("adapter", "body") and id_ not in self.own:
            # 'M42-E' tells the lens and the body as well, where the ring's own name would tell only the ring;
            # and 'Four Thirds body' is any body of that mount
            mount = self._mount_within(runs, at, run.after) or self._mount_whole(runs, at, key)
            if mount is not None:
                return mount
        return self.name(key), run.after

    def name(self, key: str) -> Name:
        phrase, kind, id_ = self.names[key]
        return Name(phrase, kind, id_, self.several.get(key, (id_,)))

    def spoken_at(self, runs: Runs, at: int) -> tuple[list[tuple[str, str]], int] | None:
        """The terms and advice whose name begins at atom `at`, and the atom after it."""
        found = self._longest(self.spoken_of, runs, at)
        return (self.spoken_of[found[1]], found[0].after) if found else None

    def name_for(self, kind: str, id_: str) -> str:
        """The first phrase that was given for a record; its id where none was."""
        return self.first_phrase.get((kind, id_), id_)

    def is_slip_of_mount(self, word: str) -> bool:
        """Whether a word is a single slip away from the name of a mount that is one word."""
        from grammar.words.nearest import slip_of

        words = (key for key, (_, kind, _) in self.names.items() if kind == "mount" and key.isalpha())
        return slip_of(word.casefold(), words) is not None

    def nearest(self, word: str, kinds: Collection[str] = KINDS) -> list[str]:
        """Known names that look most like `word`, the likeliest first, at most three. For error paths only."""
        from grammar.words.nearest import nearest_keys

        keys = (key for key, (_, kind, _) in self.names.items() if kind in kinds)
        return list(dict.fromkeys(self._shown(*self.names[key]) for key in nearest_keys(key_of(word), keys)))

    def slipped(self, word: str, kinds: Collection[str]) -> list[str]:
        """The same, of which the word is surely a slip: begun alike, and one letter off where it is short."""
        from grammar.words.nearest import nearest_keys, surely_slip

        key = key_of(word)
        keys = (name for name, (_, kind, _) in self.names.items() if kind in kinds)
        near = [one for one in nearest_keys(key, keys) if surely_slip(key, one)]
        return list(dict.fromkeys(self._shown(*self.names[one]) for one in near))

    def _shown(self, phrase: str, kind: str, id_: str) -> str:
        return self.name_for(kind, id_) if phrase == id_ else phrase

    def _longest(self, table: Collection[str], runs: Runs, at: int) -> tuple[Run, str] | None:
        for run in runs.from_(at):
            key = run.key
            if key not in table:
                long = len(key) > _SHORT or (run.after == at + 1 and _is_written_apart(runs, at))
                if not long or key[-1] != "s" or key in self.words.known or key[:-1] not in table:
                    continue
                last = runs.atoms[run.after - 1].text
                if run.after > at + 1 and len(last) <= _SHORT and last in self.words.known:
                    continue  # 'M42 as well', 'S16 pls'
                key = key[:-1]  # 'M42s'
            if _opens_with_article(runs, at, run) or self._is_over_comma(key, runs, at, run):
                continue
            if table is not self.names or self._is_whole(key, runs, at, run):
                return run, key
        return None

    def _is_over_comma(self, key: str, runs: Runs, at: int, run: Run) -> bool:
        """'16:9 crop, sensor is 4608 wide': what a comma parts is no name of a format."""
        if run.plain or key not in self.names or self.names[key][1] != "format":
            return False
        return "," in runs.line[runs.atoms[at].start : runs.atoms[run.after - 1].end] and "," not in self.names[key][0]

    def _is_whole(self, key: str, runs: Runs, at: int, run: Run) -> bool:
        """Words of a name may be run together, but not cut where the name is whole: 'a r-mount' is not 'AR-mount'."""
        phrase = self.names[key][0]
        if run.after == at + 1:
            # 'amount' is the joined form of 'A mount', and 'find' of an id, but one who types it means the word
            return key not in self.words.alone or key == key_of(phrase.replace("-", " ").split()[0])
        if _is_hyphened_number(runs, at, run):
            return True
        return cuts_of(runs.atoms[at : run.after]) <= cuts_of(atoms_of(phrase))

    def _mount_within(self, runs: Runs, at: int, after: int) -> tuple[Name, int] | None:
        """The mount that a name of two mounts, or of a mount and 'body', begins with, and the atom after it."""
        atoms = runs.atoms
        for run in runs.from_(at):
            if run.after >= after or not self._is_mount(run.key):
                continue
            if run.after > at + 1 and not self._is_whole(run.key, runs, at, run):
                continue  # 'F-E ring' begins with F, not with FE
            rest = [atom for atom in atoms[run.after : after] if atom.is_word]
            if [atom.text for atom in rest] == ["body"]:
                return self.name(run.key), run.after
            piece = self.words.words.get(rest[0].text) if rest else None
            if piece is not None and piece.sort == "piece":
                return self.name(run.key), run.after  # 'M42 bellows' tells the mount of the lens as well
            second = run.after
            while second < after and atoms[second].text in ("-", "/", "to", ","):
                second += 1
            if second < after and any(one.after <= after and self._is_mount(one.key) for one in runs.from_(second)):
                return self.name(run.key), run.after
        return None

    def _mount_whole(self, runs: Runs, at: int, key: str) -> tuple[Name, int] | None:
        """The mount that a word is by itself, where a name of an adapter would cut that word: 'RF ring' is no 'R-F'."""
        word = runs.atoms[at].text
        if not self._is_mount(word):
            return None
        cuts = cuts_of(atoms_of(self.names[key][0]))
        return (self.name(word), at + 1) if any(cut < len(word) for cut in cuts) else None

    def _is_mount(self, key: str) -> bool:
        return key in self.names and self.names[key][1] == "mount"

    def _add_names(self, names: Iterable[tuple[str, str, str]], own: Collection[str]) -> None:
        table, first = self.names, self.first_phrase
        for entry in names:
            phrase, kind, id_ = entry
            if first.get((kind, id_), id_) == id_:
                first[kind, id_] = phrase  # an id is shown only where there is no better name
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
            if len(entry[0]) > len(self.names[key][0]):
                self.names[key] = entry  # the one with more marks in it: it may be cut in more places
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
                inch = re.match(_INCH_TYPE, phrase.casefold())
                if inch:
                    self.inch_types.setdefault(inch.group(1), id_)
                film = re.fullmatch(r"(?:regular |standard )?(\d+(?:\.\d+)?)[ -]?mm(?: film)?", phrase.casefold())
                if film:
                    self.cine_mm.setdefault(float(film.group(1)), id_)


def _is_hyphened_number(runs: Runs, at: int, run: Run) -> bool:
    """'M-42': the letter of a thread and its width, with nothing but a hyphen between."""
    atoms = runs.atoms[at : run.after]
    if [one.text for one in atoms[1:-1]] != ["-"] or not (atoms[0].text.isalpha() and atoms[-1].text.isdigit()):
        return False
    return len(atoms[0].text) == 1 and atoms[-1].end - atoms[0].start == len(atoms[0].text) + 1 + len(atoms[-1].text)


def _is_written_apart(runs: Runs, at: int) -> bool:
    """'FDs': the 's' of several behind the capitals of the name."""
    raw = runs.line[runs.atoms[at].start : runs.atoms[at].end].replace("'", "")
    return len(raw) == _SHORT and raw[:-1].isupper() and raw[-1] == "s"


def _opens_with_article(runs: Runs, at: int, run: Run) -> bool:
    """'a focal reducer', 'has a bayonet': a small 'a' by itself opens no name but that of a mount said in full."""
    first, line = runs.atoms[at], runs.line
    if first.text != _ARTICLE or line[first.start] != _ARTICLE or run.after == at + 1:
        return False
    return line[first.end : first.end + 1].isspace() and runs.atoms[at + 1].text != _MOUNT
