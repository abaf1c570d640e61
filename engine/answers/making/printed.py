"""A ring that is printed comes out smaller than drawn: by how much, and how large it must be drawn."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, RingToMake, Told
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.interval import Interval, is_known
from grammar.questions import Question

MOST_PERCENT: Final = 10.0  # more is no shrinkage of a print


def is_printed(question: Question) -> bool:
    return mentions(question, "printed")


def drawn_larger(question: Question, ring: RingToMake | None) -> Told:
    """How thick the ring must be drawn so that it comes out right; nothing where no share was told."""
    percent, right = number(question, "transmission"), _right_mm(question, ring)
    if percent is None or right is None or not 0 < percent <= MOST_PERCENT or not is_printed(question):
        return Told()
    large = mentions(question, "came-out-large")
    off = abs(right) * percent / 100
    drawn = right / (1 + percent / 100) if large else right / (1 - percent / 100)
    text = (
        f"Draw it {small_mm(drawn)} thick, {trimmed(100 * drawn / right, 2)} % of its size: drawn as"
        f" {small_mm(right)} it would come out {small_mm(off)} too {'thick' if large else 'thin'}. Scale threads and"
        " bayonet the same, measure the first print and correct by what it is off."
    )
    rows = (
        Quantity("ring_thickness_mm", Interval.exact(drawn), "as drawn"),
        Quantity("shim_mm", Interval.exact(off), "what the print is off"),
    )
    return Told((Line("head", text),), rows)


def _right_mm(question: Question, ring: RingToMake | None) -> float | None:
    """How thick it must come out: the ring that is right for lens and body, else the one whose length is told."""
    if ring is not None:
        return ring.thickness_mm.nominal if is_known(ring.thickness_mm) else None
    told = [one.thickness_mm[0] for one in question.adapters if one.thickness_mm and one.is_of_one_length]
    return told[0] if len(told) == 1 else None
