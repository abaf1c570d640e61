"""Neutral density in stops, density and factor, as marked and as counted, and which filters make a wanted number."""

from __future__ import annotations

import re
from collections.abc import Sequence
from math import inf, isfinite, log2, log10
from typing import Final

from engine.base.interval import UNKNOWN, Interval, Measure, Unknown
from engine.physics.enclose import enclose
from engine.physics.picking import Picked, pick
from engine.physics.positive import positive

DENSITY_PER_STOP: Final = log10(2)
MARKED_PER_STOP: Final = 0.3  # density is marked in tenths, three to the stop
# factors are marked in full, 256 and below; from nine stops up the trade counts a thousand as ten stops
TEN_STOPS: Final = 1000.0
ROUNDED_FROM: Final = 9.0
_NAME: Final = re.compile(r"(?:ND\s*[-:]?\s*)?(?:(?P<density>\d{0,3}\.\d{1,3})|(?P<factor>\d{1,8})[x×]?)", re.I)
_LARGEST = 1023.0  # stops: the greatest power of two that a number holds


def power_of_two(stops: float) -> float:
    """2 to the power of `stops`, infinite beyond what a number holds."""
    return 2.0**stops if stops <= _LARGEST else inf


def factor_of_stops(stops: Measure) -> Measure:
    """2^stops: how many times less light, or more. Source: definition of the stop."""
    return enclose(power_of_two, stops)


def stops_of_factor(factor: Measure) -> Measure:
    """log2(factor), for a filter, bellows or converter factor alike. Source: definition of the stop."""
    return enclose(log2, positive(factor))


def density_of_stops(stops: Measure) -> Measure:
    """log10(2) = 0.301 of density a stop. Densities add as stops do. Source: density is log10 of the factor."""
    return stops * DENSITY_PER_STOP


def density_name(stops: float) -> str:
    """The mark by density, in tenths, three to the stop: 'ND 0.9' for 3 stops. Source: the trade's marks."""
    return f"ND {stops * MARKED_PER_STOP:.1f}" if isfinite(stops) else ""


def factor_name(stops: float) -> str:
    """The mark by factor: 'ND8' for 3 stops, 'ND1000' for 10. Source: the trade's marks."""
    if not isfinite(stops):
        return ""
    factor = TEN_STOPS * power_of_two(stops - 10) if stops >= ROUNDED_FROM else power_of_two(stops)
    return f"ND{round(factor)}" if isfinite(factor) else ""


def stops_of_name(name: str) -> Measure:
    """Stops that a mark stands for: with a decimal point it is a density, without one a factor.

    'ND 0.9' and 'ND8' are 3, 'ND1000' and 'ND 3.0' are 10. Unknown for what is no such mark. Source: the trade's marks.
    """
    match = _NAME.fullmatch(name.strip())
    if match is None:
        return UNKNOWN
    if match["density"]:
        return Interval.exact(round(float(match["density"]) / MARKED_PER_STOP, 9))
    factor = float(match["factor"])
    if factor < 1:
        return UNKNOWN
    rounded = 10 + log2(factor / TEN_STOPS)
    return Interval.exact(rounded if rounded >= ROUNDED_FROM else log2(factor))


def split_stops(wanted: Measure, filters: Sequence[Measure], near_enough: Measure) -> Picked | Unknown:
    """Which of the filters owned, each told in stops, to stack for `wanted` stops.

    A stack within `near_enough` stops counts as right and the fewest filters are taken; else the nearest stack, then
    the fewest. Of two as near, the darker: light that lacks can be had by a higher ISO, light that burnt out cannot be
    had back. Where nothing is to be held back, none. Source: stops add.
    """
    return pick(wanted, filters, near_enough, over_first=True)
