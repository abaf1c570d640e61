"""Whether infinity is reached with a close-up lens worn: never, and what is sharp instead."""

from __future__ import annotations

from engine.answers.closeup import macro
from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import distance
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.base.units import MM_PER_METRE
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import CLOSE_UP_LENS, Question


def power_worn(question: Question) -> float | None:
    """The dioptres of the close-up lenses together; None where none of told strength is worn."""
    told = [one.factor for one in question.adapters if one.piece == CLOSE_UP_LENS and one.factor is not None]
    return sum(told) if told else None


def worn_far(question: Question, knowledge: Knowledge, power: float) -> Answer:
    """How far it is sharp at most: as far before the close-up lens as that is long in focus, the lens at infinity."""
    far = MM_PER_METRE / power
    text = (
        f"No: with the +{power:g} close-up lens on, nothing farther than {distance(far, question.feet)} ahead of it"
        " comes sharp. Without it the lens reaches as far as it did."
    )
    told = macro(question.with_(intent=MACRO_DISTANCE, topic=None), knowledge)
    least = Quantity("far_from_front_glass_mm", Interval.exact(far), "at most")
    return replace(
        told, intent=question.intent, question=question, lines=(Line("head", text), *told.lines),
        quantities=(least, *(told.quantities or ())),
    )  # fmt: skip
