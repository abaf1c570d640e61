"""The numbers of an answer that the next turn may say again, and what of them it is to be heard by."""

from __future__ import annotations

from typing import Final

from engine.answers.meant_else import IF_MEANT
from engine.answers.parts.answer import Answer, Quantity
from engine.answers.ways.pair import ADDED
from engine.base.interval import Interval
from grammar.turns.answer_told import CIRCLE, ERROR, ERROR_IF_MEANT, FILTER_ON, GLASS, KEPT, LACKING, RIGHT, SEAT, STACK
from grammar.turns.told_before import ring_case

OF_RING: Final = "of the ring"  # the case of an error that is that of a ring


def told_on(answer: Answer) -> tuple[tuple[str, float], ...]:
    """The numbers of the answer that the next turn may say again; of rings the right one and what is to be added."""
    rows = [row for row in answer.quantities or () if row.name in KEPT and isinstance(row.value, Interval)]
    errors = [row.value for row in rows if row.name == ERROR and row.case in (None, OF_RING)]
    names = {(LACKING, None): RIGHT, (LACKING, ring_case(row.case for row in rows)): RIGHT, (LACKING, ADDED): LACKING}
    told = ((names.get((row.name, row.case), SEAT if row.name == LACKING else row.name), row.value) for row in rows)
    told = ((name, value) for name, value in told if name != ERROR or value in errors)
    known = [(name, value) for name, value in told if name and isinstance(value, Interval)]
    ends = ((name, (value.least, value.greatest) if name == CIRCLE else (value.nominal,)) for name, value in known)
    return (
        *((name, end) for name, both in ends for end in both),
        *_error_if_meant(rows),
        *_filter_on(answer),
        *_stacked(answer),
        *_glass(answer),
    )


def _error_if_meant(rows: list[Quantity]) -> tuple[tuple[str, float], ...]:
    """By how much it sits off by the other meaning of the question, where that is told too."""
    meant = (row.value for row in rows if row.name == ERROR and row.case == IF_MEANT)
    return tuple((ERROR_IF_MEANT, value.nominal) for value in meant if isinstance(value, Interval))[:1]


def _glass(answer: Answer) -> tuple[tuple[str, float], ...]:
    """The factor of the glass in the way told best."""
    factors = factors_of(answer)
    return ((GLASS, factors[0]),) if len(factors) == 1 else ()


def factors_of(answer: Answer) -> list[float]:
    chain = answer.chains[0].listed.judged.chain if answer.chains else None
    return [one.factor for one in chain.adapters if one.factor not in (None, 1.0)] if chain is not None else []


def _stacked(answer: Answer) -> tuple[tuple[str, float], ...]:
    """How long the pieces at hand are together that the answer picked for a length."""
    picked = answer.question is not None and answer.question.said("at_hand") is not None
    rows = [row.value for row in answer.quantities or () if row.name == "stack_mm"] if picked else []
    return ((STACK, rows[-1].nominal),) if rows and isinstance(rows[-1], Interval) else ()


def _filter_on(answer: Answer) -> tuple[tuple[str, float], ...]:
    """The stops of the filter that the answer said to take: those stacked, else the nearest whole one."""
    held = {row.case: row.value for row in answer.quantities or () if row.name == "nd_stops"}
    stops = held.get("filters stacked", held.get(None))
    if not isinstance(stops, Interval) or not stops.is_exact or stops.nominal <= 0:
        return ()
    return ((FILTER_ON, stops.nominal if "filters stacked" in held else float(round(stops.nominal))),)
