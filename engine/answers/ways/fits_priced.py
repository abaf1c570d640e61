"""By what a list is ordered: what each way costs, where that is asked for or must be kept to, or how thick it is."""

from __future__ import annotations

from math import inf

from engine.answers.seat.chain_numbers import price_of, price_text
from engine.base.interval import Interval
from engine.judging.ranking import Listed
from grammar.questions import Limits, Question

THINNEST, THICKEST = "thinnest", "thickest"  # topics that order a list


def order_told(question: Question) -> str:
    """By what the list is ordered, in words."""
    if question.topic in (THINNEST, THICKEST):
        return f"{question.topic} ring first"
    return "cheapest first" if question.limits.cheapest else "best first"


def first_by(best: Listed | None, ring_mm: Interval | None, question: Question) -> float:
    """By what the list is ordered where an order is asked for, cups behind rings; else nothing orders it so."""
    if question.topic in (THINNEST, THICKEST):
        if ring_mm is None or ring_mm.nominal < 0:
            return inf
        return ring_mm.nominal if question.topic == THINNEST else -ring_mm.nominal
    if not question.limits.cheapest:
        return 0.0
    if best is None or not best.judged.chain.adapters:
        return inf
    price = price_of(best.judged)
    return price.least if price is not None else inf


def with_price(best: Listed, limits: Limits) -> str:
    """' [8 to 25 dollars]' where a price matters."""
    told = price_text(best.judged.chain) if limits.cheapest or limits.price_usd is not None else ""
    return f" [{told}]" if told else ""
