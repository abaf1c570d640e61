"""A ring in two parts, of which one is there: how long the rest must be for infinity."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, RingToMake, Told
from engine.answers.parts.said import number
from engine.answers.parts.wording import small_mm
from grammar.questions import Question

_REST: Final = "rest-of-ring"  # of what is mentioned
_THERE: Final = "part-there"
_SIZES: Final = ("thickness", "length", "shift", "numbers")
_LONGEST_MM: Final = 200.0


def part_there_mm(question: Question) -> float | None:
    """'a shift block of 10 mm, what is left for the rest of the adapter': how long the part is that is there, in mm.

    None where no rest is asked for, or no length is told.
    """
    if not (question.mentions(_REST) or question.mentions(_THERE)):
        return None
    sized = [one.thickness_mm[0] for one in question.adapters if one.is_of_one_length and one.thickness_mm is not None]
    told = sum(sized) if sized else number(question, *_SIZES)
    return told if told is not None and 0 < told <= _LONGEST_MM else None


def without_part(question: Question) -> Question:
    """The question of the whole ring: what is there already is no error of it, and nothing that stands between."""
    left = tuple(one for one in question.adapters if one.thickness_mm is None)
    return question.with_(adapters=left, values=question.rest(*_SIZES))


def part_left(there_mm: float | None, ring: RingToMake | None) -> Told:
    """What is left of the seat beside the part that is there; nothing where the seat is not known."""
    if there_mm is None or ring is None or ring.thickness_mm is None:
        return Told()
    whole, left = ring.thickness_mm, ring.thickness_mm - there_mm
    shown = f"{small_mm(whole.nominal)} in all, less {small_mm(there_mm)} that is there"
    if left.nominal <= 0:
        text = f"Nothing is left: the seat is {shown}, {small_mm(-left.nominal)} too much already for infinity."
        return Told((Line("head", text),), (Quantity("register_error_mm", -left, "by that part alone"),))
    text = f"{small_mm(left.nominal)} is left for the rest: {shown}, from seat to seat."
    return Told((Line("head", text),), (Quantity("stack_mm", left, "the rest"), Quantity("stack_mm", whole, "in all")))
