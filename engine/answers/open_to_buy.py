"""What is to be got for a lens without a known mount: what holds it, and for a size wanted how long the stack is."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.making.stacks import stack_for
from engine.answers.parts.answer import Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide
from engine.answers.parts.usual_mounts import PLAIN
from engine.answers.seat.open_lens import depends
from grammar.questions import Question


def of_open_lens(
    question: Question, lenses: Sequence[LensSide], bodies: Sequence[BodySide], knowledge: Knowledge
) -> Told:
    """What holds it on the body, and what is left for it, in place of a ring to buy."""
    measured = question.said("flange_to_image") is not None
    told = question.lens is not None and (question.lens.focal_length_mm or question.lens.lens_kind or measured)
    registered = any(lens.mount.coupling not in PLAIN for lens in lenses)  # a plain barrel tells no register
    if registered or not bodies or not told or question.adapters:
        return Told()
    answer = depends(question, question.lens, bodies[0], knowledge)
    held = Told(answer.lines, answer.quantities or ())
    if question.said("magnification") is None:
        return held
    from engine.answers.closeup import size_of  # only where a size is wanted

    # the stack asks for the same distance
    stack = stack_for(question, knowledge)
    asks = tuple(line for line in stack.lines if line.kind == "ask")
    lines = tuple(line for line in held.lines if not (asks and line.kind == "ask"))
    rest = tuple(line for line in stack.lines if line not in asks)
    return size_of(question, knowledge) + Told((*rest, *lines, *asks), (*stack.quantities, *held.quantities))
