"""What a formula may divide by or take the logarithm of: a value that is surely above 0."""

from __future__ import annotations

from math import inf

from engine.base.interval import UNKNOWN, Measure, is_known


def positive(value: Measure) -> Measure:
    """The value, unknown where it may be 0, less, or without end: no such length, time, stop or ratio exists."""
    return value if is_known(value) and value.least > 0 and value.greatest < inf else UNKNOWN
