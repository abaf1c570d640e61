"""Formulas on intervals: everything they may give, and nothing where something is unknown."""

from __future__ import annotations

from engine.base.interval import UNKNOWN, Interval
from engine.physics.enclose import enclose, widened_by_share

exact = Interval.exact


def test_a_steady_formula_is_enclosed_by_its_corners():
    found = enclose(lambda a, b: a / b, Interval(2, 6, 4), Interval(1, 2, 2))
    assert found == Interval(1, 6, 2)


def test_an_unknown_input_gives_unknown():
    assert enclose(lambda a, b: a + b, exact(1), UNKNOWN) is UNKNOWN
    assert widened_by_share(UNKNOWN, exact(0)) is UNKNOWN
    assert widened_by_share(exact(5), UNKNOWN) is UNKNOWN


def test_no_error_leaves_a_value_as_it_is_and_an_error_goes_both_ways():
    assert widened_by_share(exact(200), exact(0)) == exact(200)
    assert widened_by_share(exact(200), Interval(0, 0.01, 0)) == Interval(198, 202, 200)
    assert widened_by_share(exact(-200), Interval(0, 0.01, 0)) == Interval(-202, -198, -200)
