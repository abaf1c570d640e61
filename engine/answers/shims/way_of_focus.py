"""Which way the focus goes where a seat is off, first of all where that is asked: past infinity, or short of it."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import MOST_ERROR_MM
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.wording import about, distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.answers.seat.spacing import normal_focal
from engine.answers.shims.loose import off_by_mm
from engine.answers.shims.other_seats_off import SENSOR_OFF
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question

INWARD, OUTWARD = "lies-inward", "lies-outward"  # what is mentioned of a lens too close, or too far out
_PAST: Final = "Past infinity: the lens sits {much}too close, so the far comes sharp before the end of the focus ring"
_SHORT: Final = "Short of infinity: the lens sits {much}too far out, so its focus ring ends before the far is sharp"
_MARKS: Final = "What is sharp lies {way} than the scale says."
_NUMBERS: Final = ("thickness", "length", "depth", "numbers")


def with_way_of_focus(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind which way the focus goes, where it is told on which side the seat is off."""
    side = _side(answer, question)
    if side is None:
        return answer
    told = _told(*side, question, knowledge)
    if answer.intent == MACRO_DISTANCE and not answer.quantities:
        return replace(answer, status=ANSWERED, lines=told.lines, quantities=told.quantities)
    return replace(
        answer, lines=(*told.lines, *answer.lines), quantities=(*told.quantities, *(answer.quantities or ()))
    )


def _side(answer: Answer, question: Question) -> tuple[bool, float | None] | None:
    """Whether it is off outwards, and by how much, in mm, where that is told; None where the side is not."""
    off = off_by_mm(question)
    if off is None:
        rows = [row.value for row in answer.quantities or () if row.name == "register_error_mm"]
        off = next((one.nominal for one in rows if isinstance(one, Interval)), None)
    inward, outward = (mentions(question, one) for one in (INWARD, OUTWARD))
    if off is None and inward == outward:
        return None
    out = off > 0 if off is not None else outward
    told = number(question, *_NUMBERS)
    by = abs(off) if off is not None else told if told is not None and 0 < told <= MOST_ERROR_MM else None
    if inward != outward and not mentions(question, *SENSOR_OFF):
        out = outward
    return (out, by) if by != 0 else None


def _told(out: bool, by: float | None, question: Question, knowledge: Knowledge) -> Told:
    """That in words, and with a number of millimetres where the far then falls for the lens, or for a normal one."""
    head = (_SHORT if out else _PAST).format(much=f"{small_mm(by)} " if by else "")
    rows = [Quantity("register_error_mm", Interval.exact(by if out else -by))] if by else []
    for focal in (focals(question) or (normal_focal(knowledge.catalogue),))[:1] if by else ():
        of = Distances(focal, knowledge.catalogue)
        at = of.from_sensor(by or 0.0) if out else of.mark(-(by or 0.0))
        if is_known(at):
            case = f"{trimmed(focal, 1)} mm lens"
            rows.append(Quantity("far_from_sensor_mm" if out else "scale_mark_mm", at, case))
            where = about(at, lambda mm: distance(mm, question.feet))
            head += f"; a {case} sees no farther than {where}" if out else f", for a {case} at its {where} mark"
    return Told((Line("head", f"{head}. {_MARKS.format(way='nearer' if out else 'farther')}"),), tuple(rows))
