"""How a lens gets on a body, whether it then reaches infinity, and from where to where it focuses."""

from __future__ import annotations

from engine.answers.answer import Answer
from engine.answers.filters import filter_answer, for_filters
from engine.answers.knowledge import Knowledge
from engine.answers.pairs import of_known, sides_of
from grammar.questions import Question


def how_to(question: Question, knowledge: Knowledge, intent: str | None = None) -> Answer:
    """Answer a question about a chain: for one lens on one body, for each pair of several, or for what is missing."""
    facts = knowledge.catalogue
    if for_filters(question, facts):
        return filter_answer(question, knowledge)
    sides = sides_of(question, facts)
    found = of_known(sides, knowledge, intent)
    if found is not None:
        return found
    from engine.answers.incomplete import incomplete  # much that a whole question does without

    return incomplete(sides.question, sides.lenses, sides.bodies, knowledge)
