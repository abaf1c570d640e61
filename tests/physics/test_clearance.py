"""Parts that pass each other or meet."""

from __future__ import annotations

from math import inf

import pytest

from engine.base.interval import UNKNOWN, Interval
from engine.base.span import Span
from engine.physics import clearance

exact = Interval.exact


def test_the_rear_stands_behind_the_body_flange_by_what_the_seat_leaves_of_its_reach():
    assert clearance.overhang_mm(exact(12), Span.fixed(exact(4))).nominal == 8
    # a cup sinks the lens: the seat is below 0
    assert clearance.overhang_mm(exact(4), Span.fixed(exact(-0.474))).nominal == pytest.approx(4.474)


def test_a_helicoid_is_judged_at_its_shortest():
    assert clearance.overhang_mm(exact(20), Span(exact(17), exact(31))).nominal == 3


def test_what_is_left_is_the_free_depth_less_the_overhang():
    assert clearance.clearance_mm(exact(10), exact(8)).nominal == 2
    assert clearance.clearance_mm(exact(10), exact(12)).nominal == -2


def test_an_unknown_reach_leaves_the_clearance_unknown():
    assert clearance.overhang_mm(UNKNOWN, Span.fixed(exact(4))) is UNKNOWN
    assert clearance.clearance_mm(exact(10), UNKNOWN) is UNKNOWN


def test_with_the_depth_unknown_only_a_rear_ahead_of_the_flange_is_known_to_clear():
    assert clearance.clearance_mm(UNKNOWN, exact(2)) is UNKNOWN
    assert clearance.clearance_mm(UNKNOWN, exact(-3)) == Interval(3, inf, 3)
    assert clearance.clearance_mm(UNKNOWN, Interval(-1, 1, 0)) is UNKNOWN


def test_round_parts_pass_by_the_difference_of_their_diameters():
    assert clearance.width_left_mm(exact(30.4), exact(30)).nominal == pytest.approx(0.4)
    assert clearance.width_left_mm(UNKNOWN, exact(30)) is UNKNOWN


def test_a_long_thread_bottoms_before_it_seats():
    assert clearance.thread_depth_left_mm(exact(4.0), exact(4.75)).nominal == pytest.approx(-0.75)
