"""What must stand beside a helicoid named, behind a lens whose flange to image is only usual: 'rest of the stack?'.

Lengths add: flange to image = body register + rings + helicoid. So tubes from (longest usual stack - helicoid at its
longest) to (shortest usual stack - helicoid shut) bring infinity into its travel, wherever in its range the lens lies.
"""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import Missing, body_side
from engine.answers.parts.said import number
from engine.answers.parts.wording import small_mm, trimmed
from engine.answers.seat.open_lens import MEASURE, usual_flange_to_image
from engine.answers.seat.passed_over import is_passed_over
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.chains.walk import ADDED_FOCUSING
from grammar.kinds import DIY_DIMENSION, MACRO_DISTANCE
from grammar.questions import Question, Thing

ASKED: Final = "rest-of-ring"
BESIDE: Final = "beside the helicoid"


def with_helicoid_rest(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind how long tubes and rings beside the helicoid must be; instead of it where no chain was made.

    As it is where flange to image was measured, where the lens has a register, or where no one helicoid is named.
    """
    drawn = [one for one in question.adapters if _is_drawn(one)]
    lens, body = question.lens, body_side(question.body, knowledge.catalogue)
    if len(drawn) != 1 or lens is None or isinstance(body, Missing) or number(question, "flange_to_image") is not None:
        return answer
    usual, register = usual_flange_to_image(lens, knowledge), body.mount.register_mm
    useless = any(is_passed_over(line.text) for line in answer.lines)
    if usual is None or not is_known(register):
        return answer
    asked = question.mentions(ASKED) or question.intent == DIY_DIMENSION
    if not (useless or asked):
        return answer
    low, high = drawn[0].thickness_mm or (0.0, 0.0)
    stack = usual - register
    rest = (max(stack.greatest - high, 0.0), stack.least - low)
    sizes = f"{trimmed(low, 1)} to {trimmed(high, 1)} mm"
    lead = (
        f"Usually {stack.least:.0f} to {stack.greatest:.0f} mm stand between the {body.mount.designation} flange and "
        f"such a lens at infinity ({usual.least:.0f} to {usual.greatest:.0f} mm from its flange to the image, less "
        f"{small_mm(register.nominal)}); the helicoid is {sizes} of it."
    )
    rows = [Quantity("stack_mm", stack, "usual")]
    if rest[0] <= rest[1]:
        told = (
            f"Tubes and rings of {rest[0]:.0f} to {rest[1]:.0f} mm beside it keep infinity within its travel, "
            "wherever the lens lies in that range."
        )
        rows.append(Quantity("ring_thickness_mm", Interval.between(*rest), BESIDE))
    elif rest[1] < 0 and stack.greatest < low:
        told = "Even shut it is too long: close-up only."
    else:
        least, most = max(stack.least - high, 0.0), max(stack.greatest - low, 0.0)
        told = (
            f"Tubes and rings of {least:.0f} to {most:.0f} mm beside it, by what the lens measures: its travel is "
            "shorter than such lenses differ by."
        )
    head = (Line("head", f"{told} {lead}"), Line("ask", MEASURE, wants="flange_to_image"))
    if useless and (asked or question.intent != MACRO_DISTANCE):
        return replace(answer, status=ANSWERED, lines=head, quantities=tuple(rows), chains=None, ring=None)
    rest_of = [line for line in answer.lines if line.text != MEASURE]
    return replace(answer, lines=(*head, *rest_of), quantities=(*rows, *(answer.quantities or ())))


def _is_drawn(one: Thing) -> bool:
    return one.piece in ADDED_FOCUSING and one.thickness_mm is not None and not one.is_of_one_length
