"""Whether a chain is one that the numbers allow and that nobody would go: it is used only where it was named."""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from engine.base.interval import is_known
from engine.base.span import Span
from engine.chains.setup import Facts
from engine.facts.records import Adapter
from engine.judging.judge import Judged

SEVERAL: Final = 2  # so many rings


def is_senseless(judged: Judged, facts: Facts) -> bool:
    """Whether a ring stands before a cup that it cannot enter, or several rings only carry the lens far out."""
    return _cup_is_blocked(judged, facts) or _is_detour(judged, facts)


def _is_detour(judged: Judged, facts: Facts) -> bool:
    """Several rings that leave the lens far out; tubes are there for just that."""
    error = judged.measured_trace.value("register_error_mm")
    if judged.verdict == "infinity" or len(judged.chain.adapters) < SEVERAL or not isinstance(error, Span):
        return False
    tubes = any(one.stackable for one in judged.chain.adapters)
    far_out = facts.assumptions["detour-far-out"].value.nominal
    return not tubes and is_known(error.shortest) and error.shortest.nominal > far_out


def _cup_is_blocked(judged: Judged, facts: Facts) -> bool:
    """A wide ring before a seat that lies in a cup rests on the flange instead."""
    wider = facts.assumptions["ring-before-cup"].value.nominal
    for one, other in pairwise(judged.chain.links):
        if not (isinstance(one, Adapter) and isinstance(other, Adapter) and _is_sunk(other)):
            continue
        wide, seat = facts.mounts[one.front].throat_mm, facts.mounts[other.front].throat_mm
        if is_known(wide) and is_known(seat) and wide.nominal > wider * seat.nominal:
            return True
    return False


def _is_sunk(adapter: Adapter) -> bool:
    shortest = adapter.thickness_mm.shortest
    return adapter.kind == "recessed" or (is_known(shortest) and shortest.nominal < 0)
