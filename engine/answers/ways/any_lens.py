"""What fits a body, where rings are to be bought for it and nothing is told of the lens."""

from __future__ import annotations

from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from grammar.questions import Question


def with_what_fits(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The list of what fits in place of an answer that tells of no number, where any lens is asked about."""
    lens, body = question.lens, question.body
    if lens is None or body is None or not body.ids or len(question.lenses) > 1 or answer.quantities:
        return answer
    if any((lens.ids, lens.focal_length_mm, lens.f_number, lens.lens_kind, lens.format, lens.traits)):
        return answer
    from engine.answers.ways.fits import list_fits

    return replace(list_fits(question.with_(lenses=()), knowledge), intent=answer.intent)
