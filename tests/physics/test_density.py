"""Neutral density: the three counts and the marks agree, and stacks of filters are the best there are."""

from __future__ import annotations

from itertools import combinations
from math import inf, log10

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.base.interval import UNKNOWN, Interval
from engine.physics import density
from engine.physics.picking import THOUSANDTHS

exact = Interval.exact
NEAR = exact(1 / 6)


@pytest.mark.parametrize(
    ("name", "stops"),
    [
        ("ND8", 3), ("ND 0.9", 3), ("nd0.9", 3), ("0.9", 3), ("ND 1.5", 5), ("ND32", 5), ("ND 2.4", 8), ("ND256", 8),
        ("ND1000", 10), ("ND 3.0", 10), ("ND500", 9), ("ND32000", 15), ("ND 4.5", 15), ("8x", 3), ("ND-64", 6),
        ("ND400", 8.644), ("ND 0.1", 0.3333), ("ND1", 0),
    ],
)  # fmt: skip
def test_marks_stand_for_stops(name, stops):
    assert density.stops_of_name(name).nominal == pytest.approx(stops, abs=5e-4)


@pytest.mark.parametrize("name", ["", "ND", "ND0", "polariser", "ND 0.9.1", "UV 1", "ND-"])
def test_what_is_no_mark_is_unknown(name):
    assert density.stops_of_name(name) is UNKNOWN


@given(st.integers(1, 20))
def test_a_filter_is_named_two_ways_and_read_back(stops):
    assert density.stops_of_name(density.density_name(stops)).nominal == pytest.approx(stops)
    assert density.stops_of_name(density.factor_name(stops)).nominal == pytest.approx(stops)


def test_names_of_common_filters():
    assert [density.factor_name(n) for n in (1, 3, 6, 8, 9, 10, 15)] == [
        "ND2", "ND8", "ND64", "ND256", "ND500", "ND1000", "ND32000",
    ]  # fmt: skip
    assert [density.density_name(n) for n in (1, 3, 10)] == ["ND 0.3", "ND 0.9", "ND 3.0"]
    assert density.factor_name(inf) == density.density_name(inf) == ""


def test_densities_add_where_factors_multiply():
    assert density.density_of_stops(exact(2) + exact(3)).nominal == pytest.approx(0.6 + 0.9, abs=0.006)
    assert density.density_of_stops(exact(1)).nominal == pytest.approx(0.30103, abs=1e-5)


@given(st.floats(-30, 30))
def test_stops_density_and_factor_are_each_others_way_back(stops):
    factor, dense = density.factor_of_stops(exact(stops)), density.density_of_stops(exact(stops))
    assert density.stops_of_factor(factor).nominal == pytest.approx(stops, abs=1e-9)
    assert dense.nominal / log10(2) == pytest.approx(stops, abs=1e-9)


def test_what_is_not_known_stays_so():
    for formula in (density.stops_of_factor, density.factor_of_stops, density.density_of_stops):
        assert formula(UNKNOWN) is UNKNOWN
    assert density.stops_of_factor(exact(0)) is UNKNOWN
    assert density.split_stops(UNKNOWN, [exact(3)], NEAR) is UNKNOWN
    assert density.factor_of_stops(exact(5000)).nominal == inf


def named(*names):
    return [density.stops_of_name(name) for name in names]


def chosen(wanted, filters):
    found = density.split_stops(exact(wanted), filters, NEAR)
    return found.pieces, round(found.left.nominal, 6)


def test_one_filter_that_is_near_enough_goes_before_two_that_are_exact():
    assert chosen(8.1, named("ND8", "ND 1.5", "ND 2.4")) == ((2,), 0.1)


def test_filters_are_stacked_where_none_alone_is_near():
    assert chosen(11.83, named("ND4", "ND8", "ND 3.0")) == ((2, 0), -0.17)


def test_of_two_as_near_the_darker_is_taken():
    assert chosen(8.5, named("ND 2.4", "ND 2.7")) == ((1,), -0.5)


def test_nothing_to_hold_back_takes_no_filter():
    assert chosen(0, named("ND2")) == ((), 0)
    assert chosen(-2, named("ND2")) == ((), -2)
    assert chosen(3, []) == ((), 3)


def test_a_filter_of_unknown_strength_is_left_out():
    assert chosen(3, [UNKNOWN, exact(3)]) == ((1,), 0)


def test_tolerances_of_the_filters_stay_in_what_is_left():
    found = density.split_stops(Interval(8, 9, 8.5), [Interval(8, 8.6, 8.3), exact(5)], NEAR)
    assert found.total == Interval(8, 8.6, 8.3)
    assert (found.left.least, found.left.greatest) == (pytest.approx(-0.6), pytest.approx(1.0))


def slowly(wanted, sizes, near):
    """The best stack by trying each: misses beyond `near` first, then fewest, nearest, darker, strongest, first."""

    def rank(places):
        total = sum(sizes[n] for n in places)
        miss = abs(total - wanted)
        strongest = tuple(-sizes[n] for n in places)
        return max(miss - near, 0), len(places), miss, total < wanted, strongest, places

    order = sorted(range(len(sizes)), key=lambda n: (-sizes[n], n))
    stacks = (places for count in range(len(sizes) + 1) for places in combinations(order, count))
    return min(rank(places) for places in stacks)[-1]


@settings(deadline=None)
@given(
    st.integers(-2000, 25000),
    st.lists(st.integers(1, 50).map(lambda n: n * 200), max_size=8),
    st.integers(0, 600),
)
def test_the_stack_is_the_best_of_all_stacks(wanted, sizes, near):
    found = density.split_stops(
        exact(wanted / THOUSANDTHS), [exact(n / THOUSANDTHS) for n in sizes], exact(near / THOUSANDTHS)
    )
    assert found.pieces == slowly(wanted, sizes, near)
