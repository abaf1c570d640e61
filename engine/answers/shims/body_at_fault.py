"""That a body is off and no ring: its own lenses fall short on it as well."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.questions import Question

_ERROR: Final = "register_error_mm"
_SHORT: Final = ("infinity-missed", "far-missed", "soft-far")


def with_body_at_fault(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """That, in place of what would be taken off a ring; with how far it is off where the lenses before tell it."""
    if not question.follows:
        return answer
    told = [row.value.nominal for row in answer.quantities or () if row.name == _ERROR and is_known(row.value)]
    off = off_by_mm(question)
    told = told or ([off] if off is not None else [])
    long = [one for one in told if one > 0]
    if not long and not question.mentions(*_SHORT):
        return answer
    same = bool(long) and max(long) - min(long) <= knowledge.catalogue.assumptions["lenses-agree"].value.nominal
    by = sum(long) / len(long) if same else None
    much = f", by about {small_mm(by)}" if by is not None else ""
    text = (
        f"Then it is the body and no ring: it is too deep from flange to sensor{much}, so that its own lenses fall"
        " short on it too. That is work for a service centre or a repair technician. Leave rings that are right as they"
        " are."
    )
    first = Line("head", text)
    check = Line(
        "text", "Before that try a second lens of its own, at its infinity stop and by hand: one may be off itself."
    )
    rows = (Quantity(_ERROR, Interval.exact(by), "of the body"),) if by is not None else ()
    return replace(answer, lines=(first, check), quantities=rows, chains=None)
