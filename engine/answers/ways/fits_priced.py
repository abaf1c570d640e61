"""What each way of a list costs, where a price is asked for or must be kept to."""

from __future__ import annotations

from math import inf

from engine.answers.seat.chain_numbers import price_of, price_text
from engine.judging.ranking import Listed
from grammar.questions import Limits


def least_cost(best: Listed | None, limits: Limits) -> float:
    """By what the list is ordered where the cheapest comes first; else nothing orders it so."""
    if not limits.cheapest:
        return 0.0
    if best is None or not best.judged.chain.adapters:
        return inf
    price = price_of(best.judged)
    return price.least if price is not None else inf


def with_price(best: Listed, limits: Limits) -> str:
    """' [8 to 25 dollars]' where a price matters."""
    told = price_text(best.judged.chain) if limits.cheapest or limits.price_usd is not None else ""
    return f" [{told}]" if told else ""
