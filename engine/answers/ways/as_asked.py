"""What a question about a ring tells beside it and so asks too: a crop, an opening on the way, a barrel."""

from __future__ import annotations

from engine.answers.parts.answer import Told
from engine.answers.parts.knowledge import Knowledge
from grammar.questions import Question


def as_asked(question: Question, knowledge: Knowledge) -> Told:
    """What the question's own numbers ask beside the chain: a clean crop, the bore for a barrel."""
    told = Told()
    if question.said("crop") is not None:
        from engine.answers.picture.cover import cover_told  # seldom asked beside a chain

        told += cover_told(question, knowledge, always=True)
    elif question.said("bore") is not None:
        from engine.answers.picture.cover import clipped_told

        told += clipped_told(question, knowledge)
    if question.said("barrel") is not None:
        from engine.answers.seat.bores import bore_for

        told += bore_for(question, knowledge)
    return told
