"""The lexicon of a catalogue, kept prepared under the facts and the code that it was built from."""

from __future__ import annotations

import os
from collections.abc import Mapping
from hashlib import sha256
from typing import Final

from engine.facts import cache
from engine.facts.catalogue import Catalogue
from engine.facts.guidance import Word
from engine.facts.kinds import READ_TRAITS
from engine.facts.records import Format, Mount
from engine.facts.subjects import subjects_of
from grammar.words import plain_lexicon
from grammar.words.lexicon import Lexicon
from grammar.words.wordlist import WordList

_FULL: Final = "35mm-full-frame"
SLOT: Final = "lexicon"
OWN_SLOT: Final = "lexicon-own"  # one with names of the user's gear puts the plain one not out of its place
# of the grammar's folder
_BUILT_BY: Final = ("atoms.py", "groups.py", "lexicon.py", "numerals.py", "plain_lexicon.py", "wordlist.py")
_MOST: Final = 4
# the lexicons of the facts asked last, by their keys, each with the words as the facts have them: gear that is written
# brings names, and seldom a word
_last: list[tuple[str, Mapping[str, Word], Lexicon]] = []


def lexicon_of(catalogue: Catalogue) -> Lexicon:
    """The names and words of the facts, with what advice there is; prepared ones where these may be kept and are."""
    lexicon = _words_of(catalogue)
    lexicon.subjects = subjects_of(catalogue)
    return lexicon


def _words_of(catalogue: Catalogue) -> Lexicon:
    key = _key(catalogue)
    if key is None:
        return built(catalogue)
    lexicon = next((one for of, _, one in _last if of == key), None)
    if lexicon is None:
        words = next((one.words for _, of, one in _last if of is catalogue.words), None)
        lexicon = built(catalogue, words) if words is not None else _prepared(catalogue, key)
    _last[:] = [(key, catalogue.words, lexicon), *(row for row in _last if row[0] != key)][:_MOST]
    return lexicon


def _prepared(catalogue: Catalogue, key: str) -> Lexicon:
    """The lexicon as it was kept, or else built and kept."""
    slot = OWN_SLOT if catalogue.gear_ids else SLOT
    plain = cache.kept_at(slot, key)
    if plain is not None:
        try:
            return plain_lexicon.from_plain(plain)
        except ValueError:
            pass  # not what was written here
    lexicon = built(catalogue)
    cache.keep_at(slot, key, plain_lexicon.to_plain(lexicon))
    return lexicon


def built(catalogue: Catalogue, words: WordList | None = None) -> Lexicon:
    """The lexicon made of the records; `words`: the list of their words, where it is made already."""
    return Lexicon.build(
        catalogue.names(),
        ((word.means, word.says) for word in catalogue.words.values()),
        ((row.says, row.mounts, row.likely) for row in catalogue.shared.values()),
        catalogue.gear_ids,
        [mount.id for mount in catalogue.mounts.values() if mount.kind == "mirrorless"],
        [mount.id for mount in catalogue.mounts.values() if mount.formats and _FULL not in mount.formats],
        [mount.id for mount in catalogue.mounts.values() if mount.thread is not None],
        _by_trait(catalogue),
        words,
    )


def _by_trait(catalogue: Catalogue) -> dict[str, frozenset[str]]:
    """The mounts and formats of each trait that a question is read by."""
    records: tuple[Mount | Format, ...] = (*catalogue.mounts.values(), *catalogue.formats.values())
    return {trait: frozenset(one.id for one in records if trait in one.traits) for trait in READ_TRAITS}


def _key(catalogue: Catalogue) -> str | None:
    """Changes with the facts and with what builds the lexicon of them; None where it must not be kept."""
    if not catalogue.key:
        return None
    folder = os.path.dirname(os.path.abspath(plain_lexicon.__file__))
    digest = sha256(catalogue.key.encode())
    try:
        for name in _BUILT_BY:
            with open(os.path.join(folder, name), "rb") as file:
                digest.update(file.read())
    except OSError:
        return None
    return digest.hexdigest()
