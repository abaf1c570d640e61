"""Whether a stop hides by how much a seat is too far out, told for each sensor that the body may have."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import stop
from engine.answers.parts.wording import f_number, small_mm
from engine.answers.shims.forgiving import allowances
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.physics import focus
from grammar.questions import Question

_TWO = 2


def with_frames_apart(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """'hidden at f/11?' of a seat too far out, where the body may have either of two sensors: on which it is."""
    at = stop(question)
    error = error_mm(answer)
    if at is None or error is None or error <= 0:
        return answer
    told, rows = list[tuple[bool, str]](), list[Quantity]()
    for form, blur, _ in allowances(at, question, knowledge):
        needed = focus.infinity_from_f_number(Interval.exact(error), blur, Interval.exact(1.0))
        if is_known(needed) and needed not in [row.value for row in rows]:
            told.append((needed.nominal <= at, f"on {form.name} from f/{f_number(needed.nominal)} on"))
            rows.append(Quantity("infinity_from_f_number", needed, form.name))
    if len(told) < _TWO:
        return answer
    hidden = [f"{words}, so f/{f_number(at)} hides it" if holds else f"{words}" for holds, words in told]
    opening = (
        "Yes" if all(holds for holds, _ in told) else "That hangs on the sensor" if any(h for h, _ in told) else "No"
    )
    head = Line("head", f"{opening}: {small_mm(error)} too far out is forgiven {'; '.join(hidden)}.")
    return replace(answer, lines=(head, *answer.lines), quantities=(*rows, *(answer.quantities or ())))


def error_mm(answer: Answer) -> float | None:
    """By how much the first chain is off, where nothing of it can be set, + too far out; of a lens that focuses."""
    if not answer.chains:
        return None
    judged = answer.chains[0].listed.judged
    error = judged.measured_trace.value("register_error_mm")
    fixed = isinstance(error, Span) and error.is_fixed and is_known(error.shortest)
    if not (fixed and isinstance(error, Span) and is_known(error.shortest)):
        return None
    return None if "no-focusing" in judged.setup.lens_mount.traits else error.shortest.nominal
