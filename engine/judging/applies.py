"""Whether a rule's condition holds on a trace: at the nominal values, and over everything that is not known."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from functools import cache
from typing import Any, Final

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Unknown
from engine.base.span import Span
from engine.physics.trace import Trace, Value
from grammar.conditions import (
    Both,
    Compare,
    Condition,
    Difference,
    Either,
    Ends,
    Has,
    Known,
    Name,
    Not,
    Number,
    OneOf,
    Product,
    Sum,
    Term,
    Text,
)  # fmt: skip

EDGE_MM: Final = 1e-6  # two lengths this close are at the edge: either side may be true


@compact
class Holds:
    """`now`: at the nominal values, None where undecided. `extent`: yes | no | sometimes | unknown."""

    now: bool | None
    extent: str


YES: Final = Holds(True, "yes")
NO: Final = Holds(False, "no")
UNDECIDED: Final = Holds(None, "unknown")
_NEGATED: Final = {"yes": "no", "no": "yes", "sometimes": "sometimes", "unknown": "unknown"}


def holds(condition: Condition, trace: Trace) -> Holds:
    """Kleene's logic over what is known; a comparison with something that does not apply is false."""
    return _BY_KIND[type(condition)](condition, trace)


def _both(condition: Both, trace: Trace) -> Holds:
    return _all(holds(part, trace) for part in condition.parts)


def _either(condition: Either, trace: Trace) -> Holds:
    return _negated(_all(_negated(holds(part, trace)) for part in condition.parts))


def _not(condition: Not, trace: Trace) -> Holds:
    return _negated(holds(condition.part, trace))


def _known(condition: Known, trace: Trace) -> Holds:
    return YES if (not is_unknown(trace.value(condition.name))) is condition.known else NO


def _one_of(condition: OneOf, trace: Trace) -> Holds:
    return _same_word(trace.value(condition.name), condition.choices)


def _has(condition: Has, trace: Trace) -> Holds:
    value = trace.value(condition.name)
    if is_unknown(value):
        return UNDECIDED
    return YES if isinstance(value, tuple) and condition.word in value else NO


def is_unknown(value: Value) -> bool:
    """Whether nothing is known of a value: of a span, neither end."""
    if isinstance(value, Span):
        return isinstance(value.shortest, Unknown) and isinstance(value.longest, Unknown)
    return isinstance(value, Unknown)


def _all(parts: Iterable[Holds]) -> Holds:
    """All of the parts; what comes after one that does not hold, now or ever, is not looked at."""
    now: bool | None = True
    extents = set()
    for part in parts:
        if part.extent == "no" and part.now is False:
            return NO
        extents.add(part.extent)
        if part.now is False or (now and part.now is None):
            now = part.now
    for extent in ("no", "unknown", "sometimes"):
        if extent in extents:
            return Holds(now, extent)
    return Holds(now, "yes")


def _negated(part: Holds) -> Holds:
    return Holds(None if part.now is None else not part.now, _NEGATED[part.extent])


def _same_word(value: Value, choices: tuple[str, ...]) -> Holds:
    if is_unknown(value) or value == "unknown":
        return UNDECIDED
    if isinstance(value, tuple):
        return YES if any(word in choices for word in value) else NO
    return YES if value in choices else NO


def _compare(condition: Compare, trace: Trace) -> Holds:
    left, right = side(condition.left, trace), side(condition.right, trace)
    if type(left) is Interval and type(right) is Interval:  # nearly every comparison is of two lengths
        return _ordered(left, right, condition.op)
    if left is None or right is None:
        return NO  # it does not apply
    if isinstance(left, bool) or isinstance(right, bool):
        return _equal_words(_flag(left), _flag(right), condition.op)
    if isinstance(left, str) or isinstance(right, str):
        return _equal_words(left, right, condition.op)
    one, other = _measure(left), _measure(right)
    if isinstance(one, Unknown) or isinstance(other, Unknown):
        return UNDECIDED
    return _ordered(one, other, condition.op)


def _flag(value: Value) -> Value:
    return {"yes": True, "no": False}.get(value, value) if isinstance(value, str) else value


def _equal_words(left: Value, right: Value, op: str) -> Holds:
    if is_unknown(left) or is_unknown(right) or "unknown" in (left, right):
        return UNDECIDED
    return YES if (left == right) is (op == "=") else NO


def _measure(value: Value) -> Interval | Unknown:
    if isinstance(value, Span):
        return value.hull()
    return value if isinstance(value, Interval) else UNKNOWN


def _ordered(one: Interval, other: Interval, op: str) -> Holds:
    if op in ("<", "<="):
        return _ordered(other, one, ">" if op == "<" else ">=")
    if op in ("=", "!="):
        same = abs(one.nominal - other.nominal) <= EDGE_MM
        apart = one.least > other.greatest + EDGE_MM or other.least > one.greatest + EDGE_MM
        exact = one.is_exact and other.is_exact
        extent = "no" if apart else "yes" if exact and same else "sometimes"
        result = Holds(same, extent)
        return result if op == "=" else _negated(result)
    now = one.nominal > other.nominal if op == ">" else one.nominal >= other.nominal
    if one.least > other.greatest + EDGE_MM:
        return Holds(now, "yes")
    if one.greatest < other.least - EDGE_MM:
        return Holds(now, "no")
    if one.is_exact and other.is_exact and op == ">=" and one.least > other.greatest:
        return Holds(now, "yes")
    return Holds(now, "sometimes")


def side(term: Term, trace: Trace) -> Value:
    """The value of one side of a comparison; None where it does not apply."""
    if isinstance(term, Name):
        return trace.value(term.name)
    if isinstance(term, Number):
        return _exactly(term.value)
    if isinstance(term, Text):
        return term.text
    if isinstance(term, Ends):
        value = trace.value(term.name)
        if isinstance(value, Span):
            return value.shortest if term.end == "shortest" else value.longest
        return value
    left, right = side(term.left, trace), side(term.right, trace)
    if left is None or right is None:
        return None
    one, other = _measure(left), _measure(right)
    if isinstance(one, Unknown) or isinstance(other, Unknown):
        return UNKNOWN
    if isinstance(term, Sum):
        return one + other
    if isinstance(term, Difference):
        return one - other
    if isinstance(term, Product):
        return one * other
    return UNKNOWN if other.holds(0.0) else one / other


@cache
def _exactly(value: float) -> Interval:
    return Interval.exact(value)


_BY_KIND: Final[Mapping[type[Any], Callable[[Any, Trace], Holds]]] = {
    Both: _both, Either: _either, Not: _not, Known: _known, OneOf: _one_of, Has: _has, Compare: _compare,
}  # fmt: skip
