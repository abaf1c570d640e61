"""The light of a close-up by the pupil magnification that is told: N(1 + m/p)."""

from __future__ import annotations

from engine.answers.close.close_alone import EVEN
from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, number, number_beside, stop
from engine.answers.parts.wording import f_number, times, trimmed
from engine.answers.picture.moved_out import extension_mm
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics import focus
from grammar.questions import Question


def with_pupil(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Before the answer, and in place of what takes the pupils for even where no lens is told."""
    p, m = _ratio(question), _magnification(question, knowledge)
    if not p or m is None:
        return answer
    pupil, size = Interval.exact(p), Interval.exact(m)
    lost, at = focus.light_lost_stops(size, pupil), stop(question)
    at = None if at == p else at  # 'pupil magnification 1.3' is no stop
    if not is_known(lost):
        return answer
    case = f"m = {trimmed(m, 2)}, p = {trimmed(p, 2)}"
    rows = [Quantity("light_difference_stops", lost, case)]
    text = f"At {times(m)} with p = {trimmed(p, 2)} {lost.nominal:.1f} stops of light are lost, 2 log2(1 + m/p)."
    effective = focus.effective_f_number(Interval.exact(at), size, pupil) if at is not None else lost
    if at is not None and is_known(effective):
        rows.append(Quantity("effective_f_number", effective, case))
        counted = f"f/{f_number(at)} counts as f/{f_number(effective.nominal)}, N(1 + m/p)"
        text = f"At {times(m)} with p = {trimmed(p, 2)} {counted}: {lost.nominal:.1f} stops of light are lost."
    alone = not focals(question)
    rest = [line for line in answer.lines if not (line.kind == "head" and (alone or EVEN in line.text))]
    others = answer.quantities or ()
    others = tuple(one for one in others if not (alone and one.name in {row.name for row in rows}))
    return replace(answer, lines=(Line("head", text), *rest), quantities=(*rows, *others))


def _ratio(question: Question) -> float | None:
    """The pupil magnification: as it is told, else the exit pupil over the entrance pupil, both measured."""
    out, front = number(question, "exit_pupil"), number(question, "entrance_pupil")
    return out / front if out and front else number_beside(question, "pupil-told")


def _magnification(question: Question, knowledge: Knowledge) -> float | None:
    told, lenses = number(question, "magnification"), focals(question)
    x = extension_mm(question, knowledge.catalogue) if told is None and len(lenses) == 1 else None
    return told if told is not None else x / lenses[0] if x else None
