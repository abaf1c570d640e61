"""A word that stands where the name of a lens or camera does and is none of the facts': that is said."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed
from engine.base.compact import replace
from engine.facts.subjects import subjects_of
from grammar.questions import Question

_LEAST_LETTERS: Final = 4
_KNOWN_TO_NOBODY: Final = "no mount, lens or body known here"
# a name stands before the number of its model or focal length, or before what it names; 'a boat 400 m off' is none
_AWAY: Final = r"(?![\d.,]*\s?(?:k?m|k?met\w+|ft|feet)\b)"
_HEADS: Final = rf"(?:lens|lenses|glass|prime|zoom|body|camera|mount|on\b|to\b|\d{_AWAY})"


def with_unknown_name(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with the names that nobody knows, where no mount or lens is told beside them."""
    if any(lens.ids for lens in question.lenses) or any(_KNOWN_TO_NOBODY in line.text for line in answer.lines):
        return answer
    subjects = subjects_of(knowledge.catalogue)
    known = subjects.knows  # 'count', 'plastic': a word, though none that a question is read by
    empty = subjects.vocabulary.empty  # 'of', 'for'
    names = list(
        dict.fromkeys(f"'{word}'" for word, model in _names(question) if not known(word) and model not in empty)
    )
    if not names:
        return answer
    are = "is the name" if len(names) == 1 else "are names"
    text = f"{listed(names)} {are} of {_KNOWN_TO_NOBODY}, so nothing is taken from it: tell the mount."
    return replace(answer, lines=(Line("text", text), *answer.lines))


def _names(question: Question) -> Iterator[tuple[str, str]]:
    """Each word that stands where a name does, and the word behind it: 'crate', 'of' of 'crate of 2 lenses'."""
    for word in question.skipped:
        found = re.search(
            rf"\b{re.escape(word)}(?P<model>\s+(?!(?:of|in|for|from|with|and|at)\b)[a-z]+)?\s+{_HEADS}",
            question.text,
            re.IGNORECASE,
        )
        if len(word) < _LEAST_LETTERS or not word.isalpha() or found is None:
            continue
        yield word, (found.group("model") or "-").strip()
