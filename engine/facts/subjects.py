"""What the advice is about, made ready to be looked up by a question's words, and kept prepared."""

from __future__ import annotations

import os
from collections.abc import Mapping
from hashlib import sha256
from typing import Any, Final

from engine.facts import cache
from engine.facts.catalogue import Catalogue
from engine.facts.guidance import Advice
from grammar.words import subjects
from grammar.words.subject_words import vocabulary_of
from grammar.words.subjects import Subject, Subjects, subject
from grammar.words.wordlist import ALIKE, EMPTY

SLOT: Final = "subjects"
_BUILT_BY: Final = ("subjects.py", "subject_words.py")  # of the grammar's folder
_MOST: Final = 4
# the facts that were asked last, each with the index of its advice; facts that say the same share one
_last: list[tuple[Mapping[str, Advice], Subjects]] = []


def subjects_of(catalogue: Catalogue) -> Subjects:
    """An index over the advice, with the words that mean the same; a prepared one where it may be kept and is."""
    advice = catalogue.advice
    for of, made in _last:
        if of is advice:
            return made
    made = next((made for of, made in _last if of == advice), None) or _prepared(catalogue)
    _last[:] = [(advice, made), *_last[: _MOST - 1]]
    return made


def asked_as(advice: Advice) -> str:
    """The kind of question that an advice answers: what rules on a danger, a hazard; else a reason, unless told."""
    return advice.asked_as or ("hazard" if advice.plainly else "why")


def _prepared(catalogue: Catalogue) -> Subjects:
    alike = [word.says for word in catalogue.words.values() if word.means == ALIKE]
    empty = (one for word in catalogue.words.values() if word.means == EMPTY for one in word.says)
    vocabulary = vocabulary_of(alike, empty)
    key = _key(catalogue)
    plain = cache.kept_at(SLOT, key) if key is not None else None
    if plain is not None:
        try:
            return Subjects(map(_from_plain, plain), vocabulary)
        except (ValueError, TypeError, AttributeError):
            pass  # not what was written here
    made = Subjects(
        (
            subject(one.id, asked_as(one), one.topic, _phrases(one), one.says, vocabulary)
            for one in catalogue.advice.values()
        ),
        vocabulary,
    )
    if key is not None:
        rows = [[row.id, row.asked, dict(row.weights), [sorted(one) for one in row.phrases]] for row in made.rows]
        cache.keep_at(SLOT, key, rows)
    return made


def _from_plain(row: Any) -> Subject:
    id_, asked, weights, phrases = row
    return Subject(str(id_), str(asked), dict(weights), tuple(frozenset(map(str, one)) for one in phrases))


def _phrases(advice: Advice) -> list[str]:
    return [*advice.names, *(phrase for text in advice.about for phrase in text.split(","))]


def _key(catalogue: Catalogue) -> str | None:
    """Changes with what the advice says, and with what makes stems of it: gear that is written leaves it as it is.

    None where nothing may be kept.
    """
    if not catalogue.key:
        return None
    digest = sha256()
    for one in catalogue.advice.values():
        digest.update("\0".join((one.id, asked_as(one), one.topic, one.says, *_phrases(one), "")).encode())
    for word in catalogue.words.values():
        if word.means in (ALIKE, EMPTY):
            digest.update("\0".join((*word.says, "")).encode())
    try:
        for name in _BUILT_BY:
            with open(os.path.join(os.path.dirname(os.path.abspath(subjects.__file__)), name), "rb") as file:
                digest.update(file.read())
    except OSError:
        return None
    return digest.hexdigest()
