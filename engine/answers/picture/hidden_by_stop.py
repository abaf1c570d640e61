"""From which stop an error that leaves a lens too close is hidden, where that is asked."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import f_number
from engine.answers.picture.blur import blur_of
from engine.answers.picture.frames import frames_named
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.physics import focus
from grammar.questions import Question

_FIXED: Final = "no-focusing"  # trait of mounts whose lenses do not move
_TWIN: Final = "aps-c-1.5-x"  # hardly another size than the frame beside it
_SEVERAL: Final = 2


def with_hiding_stop(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Before the answer, where its first chain is fixed and too close; too far out the verdict tells of it itself."""
    if not answer.chains or not (question.adapters or question.said("thickness") is not None):
        return answer
    judged = answer.chains[0].listed.judged
    trace = judged.measured_trace
    error, blur = trace.value("register_error_mm"), trace.value("allowed_blur_mm")
    if not isinstance(error, Span) or not error.is_fixed or not is_known(error.shortest):
        return answer
    if error.shortest.nominal > 0:
        return _with_each_frame(answer, question, error.shortest, knowledge)
    if not error.shortest.nominal or not isinstance(blur, Interval) or _FIXED in judged.setup.lens_mount.traits:
        return answer
    needed = focus.infinity_from_f_number(Interval.exact(-error.shortest.nominal), blur, Interval.exact(1.0))
    if not is_known(needed):
        return answer
    text = (
        f"Left on the infinity mark, from f/{f_number(needed.nominal)} on; focused by eye infinity is sharp"
        " at every stop, before the end of the ring."
    )
    rows = (Quantity("infinity_from_f_number", needed, answer.chains[0].title),)
    return replace(answer, lines=(Line("head", text), *answer.lines), quantities=(*rows, *(answer.quantities or ())))


def _with_each_frame(answer: Answer, question: Question, error: Interval, knowledge: Knowledge) -> Answer:
    """Too far out, on a body that may have one of several frames: the stop on each, since the verdict is of one."""
    frames = [form for form in frames_named(question, knowledge.catalogue) if form.id != _TWIN]
    told = []
    for form in frames:
        blur = Interval.exact(blur_of(question, form, knowledge))
        stop = focus.infinity_from_f_number(Interval.exact(error.nominal), blur, Interval.exact(1.0))
        told += [(form, stop)] if is_known(stop) else []
    if len(told) < _SEVERAL or question.said("glass") is not None:
        return answer
    text = " and ".join(f"f/{f_number(stop.nominal)} on {form.name}" for form, stop in told)
    rows = (Quantity("infinity_from_f_number", stop, form.name) for form, stop in told)
    head = Line("head", f"Infinity is sharp enough from {text} on.")
    return replace(answer, lines=(head, *answer.lines), quantities=(*rows, *(answer.quantities or ())))
