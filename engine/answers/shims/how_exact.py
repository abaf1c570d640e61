"""How exact a seat must be: what the depth of focus forgives at a stop on a format."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, stop
from engine.answers.parts.wording import f_number, small_mm
from engine.answers.shims.forgiving import TRUE, allowances, faces_parallel
from engine.base.compact import replace
from grammar.questions import Question

_ASSUMED_STOP: Final = "stop-of-a-mount-alone"  # the assumption
_TOLERANCE: Final = "tolerance"  # topic of how exact a ring must be, whatever the lens


def asks_how_exact(question: Question) -> bool:
    """In so many words, or after a question that did, where only another lens, body or stop is told."""
    if question.topic in (_TOLERANCE, TRUE) or question.mentions("how-exact", "how-parallel"):
        return True
    before = question.prior if question.follows and question.topic is None else None
    return before is not None and not question.mentions("how-thick") and asks_how_exact(before)


def how_exact(question: Question, knowledge: Knowledge) -> Told:
    """How exact the seat must be: the depth of focus N*c of this lens."""
    assumed = knowledge.catalogue.assumptions[_ASSUMED_STOP].value.nominal
    at = stop(question) or (assumed if asks_how_exact(question) else None)
    if at is None or not (focals(question) or asks_how_exact(question)):
        return faces_parallel(question, knowledge)
    lines, rows = [], []
    for form, _, allowance in allowances(at, question, knowledge):
        rows.append(Quantity("infinity_allowance_mm", allowance, f"f/{f_number(at)}, {form.name}"))
        lines.append(Line("head", (
            f"At f/{f_number(at)} on {form.name} the depth of focus forgives "
            f"{small_mm(allowance.nominal)}: hold the seat to "
            "about half of that, or make it a little thin and shim it."
        )))  # fmt: skip
    return faces_parallel(question, knowledge) + Told(tuple(lines), tuple(rows))


def with_depth_of_focus(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Before a depth of field: the depth at the sensor, each way, where that is asked for and no subject is told."""
    at = stop(question)
    if at is None or distance_mm(question) is not None or question.said("magnification") is not None:
        return answer
    lines, rows = [], []
    for form, _, allowance in allowances(at, question, knowledge):
        rows.append(Quantity("infinity_allowance_mm", allowance, f"f/{f_number(at)}, {form.name}"))
        text = f"Depth of focus at the sensor, f/{f_number(at)} on {form.name}: {small_mm(allowance.nominal)} each way"
        lines.append(Line("head", f"{text}, f-number times the allowed blur."))
    return replace(answer, lines=(*lines, *answer.lines), quantities=(*rows, *(answer.quantities or ())))
