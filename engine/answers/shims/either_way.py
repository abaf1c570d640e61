"""An error of the seat of which it is not told which way it goes: 'does a 0.1 error matter on a 28'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, numbers, stop
from engine.answers.parts.wording import article, distance, f_number, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.shims.forgiving import CLOSING_CURES, allowances, with_forgiven
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.questions import Question

_LARGEST_MM: Final = 1.0  # of what is told without a word for it, and still an error
_ASSUMED_STOP: Final = "stop-of-a-mount-alone"  # the assumption
BOTH: Final = "Which way it is off is not told: it is judged as too thick, the way that costs infinity."
_KEYS: Final = ("thickness", "length", "numbers", "total")


def with_error_weighed(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind whether the error matters at the stop told, and what it does, where it does not tell that."""
    answer = with_forgiven(answer, question, knowledge)
    error = _error(question) if mentions(question, "does-it-matter", "left-over") else None
    told_already = any(row.name == "register_error_mm" for row in answer.quantities or ())
    if mentions(question, "off-either-way") and focals(question):
        off, told_already = off_by_mm(question), False
        error = None if off is None else abs(off)
        answer = replace(answer, lines=(Line("note", BOTH), *answer.lines)) if error is not None else answer
    if error is None or told_already:
        return answer
    told = _told(error, question, knowledge)
    lines = tuple(dict.fromkeys((*told.lines, *(line for line in answer.lines if line.kind != "ask"))))
    return replace(answer, lines=lines, quantities=(*told.quantities, *(answer.quantities or ())))


def _error(question: Question) -> float | None:
    """So little, beside the focal length of a lens that is on nothing named, with no word for which way it is off."""
    seated = all(things and things[0].ids for things in (question.lenses, question.bodies))
    found = question.said("mark") is not None or question.distance_mm is not None
    cured = mentions(question, CLOSING_CURES)
    if seated or found or not (focals(question) or cured) or off_by_mm(question) is not None:
        return None
    told = [one for one in numbers(question, *_KEYS) if 0 < one <= _LARGEST_MM]
    return told[0] if len(set(told)) == 1 else None


def _told(error: float, question: Question, knowledge: Knowledge) -> Told:
    lines: list[Line] = []
    rows: list[Quantity] = [Quantity("register_error_mm", Interval.exact(error), "as told")]
    for focal in focals(question):
        lens, name = Distances(focal, knowledge.catalogue), f"{trimmed(focal, 1)} mm"
        far, mark = lens.from_sensor(error), lens.mark(-error)
        if not (is_known(far) and is_known(mark)):
            continue
        rows.append(Quantity("far_from_sensor_mm", far, f"{name} lens, too far out"))
        rows.append(Quantity("scale_mark_mm", mark, f"{name} lens, too close"))
        lines.append(Line("head", (
            f"{small_mm(error)} too far out, {article(name)} {name} lens comes sharp to "
            f"{distance(far.nominal, question.feet)} from the sensor at most; as much too close, infinity falls at its "
            f"{distance(mark.nominal, question.feet)} mark and nothing is lost."
        )))  # fmt: skip
    if not lines:
        text = f"Closing the iris hides {small_mm(error)} of error from some stop on; it cures none."
        lines.append(Line("head", text))
    at = stop(question) or knowledge.catalogue.assumptions[_ASSUMED_STOP].value.nominal
    for form, blur, allowed in allowances(at, question, knowledge):
        needed = Interval.exact(error) / blur
        if not is_known(needed):
            continue
        rows.append(Quantity("infinity_allowance_mm", allowed, f"f/{f_number(at)}, {form.name}"))
        rows.append(Quantity("infinity_from_f_number", needed, form.name))
        lines.append(Line("fact", (
            f"f/{f_number(at)} on {form.name} forgives {small_mm(allowed.nominal)}; all of it from "
            f"f/{f_number(needed.nominal)} on"
        ), 1))  # fmt: skip
    return Told(tuple(lines), tuple(rows))
