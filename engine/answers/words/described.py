"""Which word of the trade is meant, where what it means is told and the word is asked: 'name of the tube that ..'."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from engine.answers.parts.answer import Line
from engine.facts.catalogue import Catalogue
from engine.facts.guidance import Term
from engine.facts.subjects import subjects_of
from grammar.questions import Question
from grammar.words.subjects import Match, Subjects, subject

LEAST: Final = 6.5  # what shares less than two rare words with a meaning may be another's
LEAST_WORDS: Final = 2
NAMED: Final = 0.8  # how much a meaning counts whose word is told already
NEAR: Final = 0.9  # another that comes so near to the best may be the one as well
MOST: Final = 2
_ASKED: Final = "word-asked"  # what a question mentions that asks for a word
_last: list[tuple[Mapping[str, Term], Subjects]] = []


def words_described(question: Question, catalogue: Catalogue) -> list[Line]:
    """The term whose meaning a question tells, or two; none where it asks for no word, or tells too little."""
    asked = [one for one in question.mentioned if one.key == _ASKED and one.end <= len(question.text)]
    if not asked:
        return []
    named = {name for thing in question.things if thing.kind == "term" for name in thing.ids}
    text = "".join(" " if any(one.at <= at < one.end for one in asked) else c for at, c in enumerate(question.text))
    found = [(row.score * (NAMED if row.id in named else 1.0), row) for row in _meanings(catalogue).matches(text)]
    rows = sorted(((score, row.id) for score, row in found if _is_told(row)), reverse=True)
    near = [catalogue.terms[name] for score, name in rows[:MOST] if score >= NEAR * rows[0][0]]
    leads = ("That is", "") if len(near) == 1 else ("That may be", "Or")
    return [Line("head", f"{lead} {term.names[0]}: {term.means}") for lead, term in zip(leads, near, strict=False)]


def _meanings(catalogue: Catalogue) -> Subjects:
    """An index over what terms mean, and over the words in which people tell it; made once for the terms asked last."""
    for of, made in _last:
        if of is catalogue.terms:
            return made
    vocabulary = subjects_of(catalogue).vocabulary
    terms = catalogue.terms.values()
    made = Subjects(
        (subject(one.id, "", one.names[0], _phrases(one), one.means, vocabulary) for one in terms), vocabulary
    )
    _last[:] = [(catalogue.terms, made)]
    return made


def _phrases(term: Term) -> list[str]:
    return [*term.names, *term.known_as, *(phrase for text in term.about for phrase in text.split(","))]


def _is_told(match: Match) -> bool:
    return match.score >= LEAST and len(match.shared) >= LEAST_WORDS
