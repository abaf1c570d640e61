"""What can be set: the shortest and the longest setting of a length, each with its own tolerance."""

from __future__ import annotations

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, is_known


@compact
class Span:
    """A length that a person can set anywhere from `shortest` to `longest`."""

    shortest: Measure
    longest: Measure

    @staticmethod
    def fixed(value: Measure) -> Span:
        return Span(value, value)

    @property
    def is_fixed(self) -> bool:
        return self.shortest == self.longest

    def __add__(self, other: Span | Interval | float) -> Span:
        if isinstance(other, Span):
            return Span(self.shortest + other.shortest, self.longest + other.longest)
        return Span(self.shortest + other, self.longest + other)

    def hull(self) -> Measure:
        """Every length it may have, setting and tolerance together."""
        if is_known(self.shortest) and is_known(self.longest):
            return self.shortest.hull(self.longest)
        return UNKNOWN
