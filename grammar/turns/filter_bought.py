"""What is to be bought after the stops to hold back were told is the filter that does so."""

from __future__ import annotations

from typing import Final

from grammar.kinds import BUY_PLAN, EXPOSURE_ND
from grammar.questions import FILTER, Question
from grammar.turns.answer_told import FILTER_ON, told_as

_PRICE: Final = "price-asked"


def with_filter_bought(said: Question, before: Question) -> Question:
    """'which filter do i actually buy': the exposure of before still, and no plan of rings."""
    held = before.intent == EXPOSURE_ND and bool(told_as(before, FILTER_ON))
    if said.intent != BUY_PLAN or not held or not said.follows or said.mentions(_PRICE):
        return said
    other = any(one.piece != FILTER for one in said.adapters if one not in before.adapters)
    if other or said.bodies != before.bodies or any(lens.ids for lens in said.lenses if lens not in before.lenses):
        return said
    told = dict(said.values)
    values = tuple({**dict(before.values), **told}.items())
    return said.with_(
        intent=EXPOSURE_ND, topic=None, lenses=before.lenses, f_number=before.f_number, values=values,
        adapters=said.adapters or before.adapters, stops=before.stops,
    )  # fmt: skip
