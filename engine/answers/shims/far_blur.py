"""How large a far point comes out where a lens sits off: the error over the f-number."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import numbers, stop
from engine.answers.parts.wording import f_number, small_mm, trimmed
from engine.answers.picture.moved_out import extension_mm
from engine.answers.shims.forgiving import allowances
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import replace
from engine.base.interval import Interval
from grammar.questions import Question

_MOST_MM: Final = 6.0  # of an error; what is more is a tube
_MICRONS: Final = 1000.0


def with_far_blur(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Before the answer, where how large the blur is is asked, and an error or a tube and a stop are told."""
    at, error = stop(question), _error(question, knowledge)
    if at is None or error is None:
        return answer
    blur = abs(error) / at
    text = (
        f"A far point comes out {small_mm(round(blur, 4))} wide ({trimmed(blur * _MICRONS, 0)} microns): the error of"
    )
    text += f" {small_mm(abs(error))} over the f-number, {f_number(at)}"
    compared = [f"{trimmed(blur * at / allowed.nominal, 1)} times what counts as sharp on {form.name}"
                for form, _, allowed in allowances(at, question, knowledge)]  # fmt: skip
    text += f"; {', '.join(compared)}." if compared else "."
    rows = (Quantity("far_blur_mm", Interval.exact(blur), f"f/{f_number(at)}"), *(answer.quantities or ()))
    return replace(answer, lines=(Line("head", text), *answer.lines), quantities=rows)


def _error(question: Question, knowledge: Knowledge) -> float | None:
    off = off_by_mm(question)
    if off is not None:
        return off
    told = numbers(question, "thickness", "length", "total", "numbers")
    small = next((one for one in told if 0 < one <= _MOST_MM), None)
    return small if small is not None else extension_mm(question, knowledge.catalogue)
