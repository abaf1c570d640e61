"""What is not known exactly: a number between two ends with a likeliest value, or unknown."""

from __future__ import annotations

from math import inf, isfinite
from typing import Final, TypeGuard, overload

from engine.base.compact import compact


@compact
class Unknown:
    """A value that nobody has established. It absorbs arithmetic, so it is never taken for zero."""

    def __add__(self, _other: object) -> Unknown:
        return self

    __radd__ = __sub__ = __rsub__ = __mul__ = __rmul__ = __truediv__ = __rtruediv__ = __add__

    def __neg__(self) -> Unknown:
        return self

    def __repr__(self) -> str:
        return "unknown"


UNKNOWN: Final = Unknown()


@compact
class Interval:
    """A number known to lie in `least`..`greatest`, likeliest at `nominal`. Ends may be infinite."""

    least: float
    greatest: float
    nominal: float

    def __post_init__(self) -> None:
        if not self.least <= self.nominal <= self.greatest:
            raise ValueError(f"ends out of order: {self.least} <= {self.nominal} <= {self.greatest}")

    @staticmethod
    def exact(value: float) -> Interval:
        return Interval(value, value, value)

    @staticmethod
    def between(one: float, other: float) -> Interval:
        """Anything between the two, likeliest in the middle (at the finite end where one is infinite)."""
        least, greatest = min(one, other), max(one, other)
        if isfinite(least) and isfinite(greatest):
            middle = min(max((least + greatest) / 2, least), greatest)
        else:
            middle = least if isfinite(least) else greatest
        return Interval(least, greatest, middle)

    @property
    def is_exact(self) -> bool:
        return self.least == self.greatest

    @property
    def width(self) -> float:
        return 0.0 if self.is_exact else self.greatest - self.least

    def holds(self, value: float) -> bool:
        return self.least <= value <= self.greatest

    def hull(self, other: Interval) -> Interval:
        """The smallest interval around both; likeliest halfway between the two likeliest values."""
        least, greatest = min(self.least, other.least), max(self.greatest, other.greatest)
        middle = (self.nominal + other.nominal) / 2
        return Interval(least, greatest, min(max(middle, least), greatest))

    def widened(self, below: float, above: float) -> Interval:
        return Interval(self.least - below, self.greatest + above, self.nominal)

    def at_least(self, floor: float) -> Interval:
        """The same with everything under `floor` raised to it."""
        return Interval(max(self.least, floor), max(self.greatest, floor), max(self.nominal, floor))

    @overload
    def __add__(self, other: Interval | float) -> Interval: ...
    @overload
    def __add__(self, other: Unknown) -> Unknown: ...
    def __add__(self, other: Interval | Unknown | float) -> Interval | Unknown:
        if isinstance(other, Unknown):
            return other
        if not isinstance(other, Interval):
            return Interval(self.least + other, self.greatest + other, self.nominal + other)
        return _ordered(self.least + other.least, self.greatest + other.greatest, self.nominal + other.nominal)

    def __radd__(self, other: float) -> Interval:
        return self + other

    def __neg__(self) -> Interval:
        return Interval(-self.greatest, -self.least, -self.nominal)

    @overload
    def __sub__(self, other: Interval | float) -> Interval: ...
    @overload
    def __sub__(self, other: Unknown) -> Unknown: ...
    def __sub__(self, other: Interval | Unknown | float) -> Interval | Unknown:
        if isinstance(other, Unknown):
            return other
        if not isinstance(other, Interval):
            return Interval(self.least - other, self.greatest - other, self.nominal - other)
        return _ordered(self.least - other.greatest, self.greatest - other.least, self.nominal - other.nominal)

    def __rsub__(self, other: float) -> Interval:
        return -self + other

    @overload
    def __mul__(self, other: Interval | float) -> Interval: ...
    @overload
    def __mul__(self, other: Unknown) -> Unknown: ...
    def __mul__(self, other: Interval | Unknown | float) -> Interval | Unknown:
        if isinstance(other, Unknown):
            return other
        if not isinstance(other, Interval):
            other = Interval.exact(other)
        ends = [_product(a, b) for a in (self.least, self.greatest) for b in (other.least, other.greatest)]
        return _ordered(min(ends), max(ends), _product(self.nominal, other.nominal))

    def __rmul__(self, other: float) -> Interval:
        return self * other

    @overload
    def __truediv__(self, other: Interval | float) -> Interval: ...
    @overload
    def __truediv__(self, other: Unknown) -> Unknown: ...
    def __truediv__(self, other: Interval | Unknown | float) -> Interval | Unknown:
        """Division by a number or by an interval that lies wholly on one side of 0; else ZeroDivisionError."""
        if isinstance(other, Unknown):
            return other
        if not isinstance(other, Interval):
            other = Interval.exact(other)
        if other.least <= 0 <= other.greatest:
            raise ZeroDivisionError("the divisor's interval holds 0")
        return self * Interval(1 / other.greatest, 1 / other.least, 1 / other.nominal)

    def __abs__(self) -> Interval:
        if self.least >= 0:
            return self
        if self.greatest <= 0:
            return -self
        return Interval(0.0, max(-self.least, self.greatest), abs(self.nominal))


Measure = Interval | Unknown


def exact_or_unknown(value: float | None) -> Measure:
    """A number that may not be told, as a measure."""
    return Interval.exact(value) if value is not None else UNKNOWN


def is_known(value: object) -> TypeGuard[Interval]:
    """Whether a measure is an interval, so that the checker narrows it."""
    return isinstance(value, Interval)


def known_or(fact: Measure, otherwise: Measure) -> Measure:
    """The fact where it is known, else what stands in for it."""
    return fact if is_known(fact) else otherwise


def _product(one: float, other: float) -> float:
    # 0 times an infinite end is 0 here: the end is a bound, not a value that is reached
    return 0.0 if one == 0 or other == 0 else one * other


def _ordered(least: float, greatest: float, nominal: float) -> Interval:
    # rounding may put the nominal a last digit outside its ends
    return Interval(nominal if nominal < least else least, nominal if nominal > greatest else greatest, nominal)


INFINITE: Final = Interval(inf, inf, inf)
