"""'A 34.85 lens in a ring cut for 31.75': where a ring that was made for another register leaves the lens."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import at_wrong_depth
from engine.answers.parts.near_enough import right_seat_mm
from engine.answers.parts.said import number
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.questions import Question

CUT_FOR: Final = "cut-for-register"  # the phrase with the register that the ring is for
REGISTERS_MM: Final = (5.0, 120.0)  # between which a register lies


def with_ring_cut_for(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind how much too far out or too close that is; as it was where a register is not told."""
    told = next((one.number for one in question.places(CUT_FOR) if one.number is not None), None)
    own = _own_mm(question, knowledge)
    least, most = REGISTERS_MM
    if told is None or own is None or not (least <= told <= most and least <= own <= most):
        return answer
    error = round(told - own, 4)
    if abs(error) <= right_seat_mm(knowledge.catalogue):
        return answer
    text = f"A ring for a register of {trimmed(told, 3)} mm sets a lens of {trimmed(own, 3)} mm"
    text += f" {small_mm(abs(error))} {at_wrong_depth(error, knowledge)}. It wants a ring for its own register."
    rows = (Quantity("register_error_mm", Interval.exact(error)), *(answer.quantities or ()))
    return replace(answer, status=ANSWERED, lines=(Line("head", text), *answer.lines), quantities=rows)


def _own_mm(question: Question, knowledge: Knowledge) -> float | None:
    """The register of the lens, as it was told or as its mount has it."""
    measured = number(question, "flange_to_image")
    mount = knowledge.catalogue.mounts.get(question.lens.id or "") if question.lens is not None else None
    if measured is not None or mount is None or not is_known(mount.register_mm):
        return measured
    return mount.register_mm.nominal
