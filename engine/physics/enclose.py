"""The interval that a formula gives on intervals: every value it may take, likeliest where its inputs are likeliest."""

from __future__ import annotations

from collections.abc import Callable
from itertools import product
from math import isfinite

from engine.base.interval import UNKNOWN, Interval, Measure, is_known


def ordered(least: float, greatest: float, nominal: float) -> Interval:
    """An interval whose ends give way to `nominal`: rounding may put it a last digit outside of them."""
    return Interval(min(least, nominal), max(greatest, nominal), nominal)


def enclose(formula: Callable[..., float], *inputs: Measure) -> Measure:
    """`formula` on intervals, where it rises or falls steadily in each input with the others held.

    Such a formula is greatest and least at corners of the box of its inputs, so the result is the tightest enclosure.
    Any input unknown: unknown.
    """
    known: list[Interval] = []
    for value in inputs:
        if not is_known(value):
            return UNKNOWN
        known.append(value)
    corners = [formula(*corner) for corner in product(*({value.least, value.greatest} for value in known))]
    return ordered(min(corners), max(corners), formula(*(value.nominal for value in known)))


def widened_by_share(value: Measure, share: Measure) -> Measure:
    """`value` with a relative error of at most the greatest of `share` added on both sides."""
    if not (is_known(value) and is_known(share)):
        return UNKNOWN
    error = max(abs(share.least), abs(share.greatest))
    if error == 0:
        return value
    # an infinite end stays where it is
    least = value.least - error * abs(value.least) if isfinite(value.least) else value.least
    greatest = value.greatest + error * abs(value.greatest) if isfinite(value.greatest) else value.greatest
    return Interval(least, greatest, value.nominal)
