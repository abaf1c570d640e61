"""How a lens gets on a body, whether it then reaches infinity, and from where to where it focuses."""

from __future__ import annotations

from engine.answers.answer import ANSWERED, Answer
from engine.answers.filters import filter_answer, for_filters
from engine.answers.knowledge import Knowledge
from engine.answers.loose import off_by_mm
from engine.answers.pairs import of_known, sides_of
from engine.answers.ring_off import is_gauged, of_ring
from engine.answers.said import number
from grammar.questions import Question


def how_to(question: Question, knowledge: Knowledge, intent: str | None = None) -> Answer:
    """Answer a question about a chain: for one lens on one body, for each pair of several, or for what is missing."""
    facts = knowledge.catalogue
    if for_filters(question, facts):
        return filter_answer(question, knowledge)
    bare = not any(lens.ids for lens in question.lenses) and number(question, "flange_to_image") is None
    if is_gauged(question) or (bare and off_by_mm(question) is not None):
        mended = of_ring(question, knowledge)[0]
        if mended.lines:  # by how much is told, whatever the lens
            return Answer(
                question.text, intent or question.intent, ANSWERED, mended.lines, question=question,
                quantities=mended.quantities,
            )  # fmt: skip
    sides = sides_of(question, facts)
    found = of_known(sides, knowledge, intent)
    if found is not None:
        return found
    from engine.answers.incomplete import incomplete  # much that a whole question does without

    return incomplete(sides.question, sides.lenses, sides.bodies, knowledge)
