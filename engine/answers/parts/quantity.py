"""A number of an answer, as the record gives it."""

from __future__ import annotations

from engine.base.compact import compact
from engine.base.interval import Interval


@compact
class Quantity:
    """A number of the answer for the record. `case`: for which lens, ring, mark or format."""

    name: str
    value: Interval
    case: str | None = None
