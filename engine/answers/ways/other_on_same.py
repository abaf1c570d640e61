"""Why another lens looks right, or worse, on the very seat that is off: by its focal length."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import small_mm, trimmed
from engine.answers.seat.spacing import far_limits, marks
from engine.base.interval import is_known
from engine.base.span import Span
from engine.judging.ranking import Listed
from grammar.kinds import WHY
from grammar.questions import Question
from grammar.turns.sticking import is_open


def other_on_same(
    question: Question, before: Question | None, rows: Sequence[Listed], knowledge: Knowledge
) -> Answer | None:
    """What the error of the seat that was told last is to both lenses; None where no other length is wondered at."""
    asked = question.intent == WHY and question.follows and mentions(question, "alike-or-not")
    if (
        not asked
        or before is None
        or not rows
        or not all(one in before.adapters or is_open(one) for one in question.adapters)
    ):
        return None
    now, was = (one.lens.focal_length_mm if one.lens else None for one in (question, before))
    error = rows[0].judged.measured_trace.value("register_error_mm")
    if now is None or was is None or now == was or not isinstance(error, Span) or not is_known(error.shortest):
        return None
    by = error.shortest.nominal
    if by == 0:
        return None
    facts = knowledge.catalogue
    told = far_limits((was, now), by, facts, question.feet) if by > 0 else marks((was, now), -by, facts, question.feet)
    longer, ends = max(now, was), "limit" if by > 0 else "mark"
    text = (
        f"By its focal length: {small_mm(abs(by))} is the same error for both, but the {ends} in the scene goes with"
        f" the focal length squared, so that of the {trimmed(longer, 1)} mm lies"
        f" {trimmed((now / was) ** 2 if now > was else (was / now) ** 2, 1)} times as far off. A short lens shows an"
        " error first; a long one mostly looks right."
    )
    lines = (Line("head", text), *told.lines, *_not_so(now < was))
    return Answer(question.text, WHY, ANSWERED, lines, question=question, quantities=told.quantities)


def _not_so(shorter: bool) -> tuple[Line, ...]:
    text = "So the shorter one ought to look worse: if it does not, look whether it sits as deep, or is stopped down."
    return (Line("text", text),) if shorter else ()
