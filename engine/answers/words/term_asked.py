"""A question that only asks what a word of everyday use means, in the middle of a talk or of nothing known."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.nearby import term_known_as, term_misspelt
from engine.facts.catalogue import Catalogue
from engine.facts.guidance import Term
from grammar.kinds import DEFINITION, IDENTIFY_MOUNT
from grammar.questions import Question, Thing

_MEANING: Final = "meaning-asked"  # 'what is a', and 'what is that' at the end
_NUMBER: Final = "number-meant"
_MOST_WORDS: Final = 4  # of a term
_SIGNS: Final = " .,;:-?!"


def as_term(question: Question, catalogue: Catalogue, foreign: bool) -> Question:
    """The question about the term, where one is meant. `foreign`: it names nothing of the trade."""
    if question.follows and question.mentions(_NUMBER):
        number = next(one.number for one in question.mentioned if one.key == _NUMBER)
        values = (("numbers", f"{number:g}"),) if number is not None else ()
        return Question(question.text, DEFINITION, values=values)  # 'what does 45.46 mean': of nothing before
    term = term_misspelt(question.text, catalogue) if foreign else _asked_in_passing(question, catalogue)
    return question if term is None else Question(question.text, DEFINITION, things=(Thing("term", (term.id,)),))


def _asked_in_passing(question: Question, catalogue: Catalogue) -> Term | None:
    """'what is a matte box', 'someone said use a matte box, what is that' after a filter: the words right beside."""
    text = question.text
    if question.intent == IDENTIFY_MOUNT and any(map(str.isdigit, text)):
        return None  # 'a lens with a 42 mm thread, what is it' is of the lens
    for one in question.mentioned:
        if one.key != _MEANING:
            continue
        ends = not text[one.end :].strip(_SIGNS)
        words = (text[: one.at] if ends else text[one.end :]).strip(_SIGNS).split()
        beside = words[-_MOST_WORDS:] if ends else words
        for start in range(len(beside) if ends else min(1, len(beside))):
            term = term_known_as(" ".join(beside[start:]), catalogue, 0)
            if term is not None and len(beside) <= _MOST_WORDS:
                return term
    return None
