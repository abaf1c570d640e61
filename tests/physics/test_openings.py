"""What an opening or a rim cuts off, against rays drawn one by one."""

from __future__ import annotations

from math import inf, radians, tan

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.base.interval import UNKNOWN, Interval
from engine.physics import openings

exact = Interval.exact


def share_passed(height, opening, before, pupil_at, pupil_wide, rays=2001):
    """Share of the rays from a line of points across the exit pupil to an image point that pass the opening."""
    passed = 0
    for n in range(rays):
        start = pupil_wide * (n / (rays - 1) - 0.5)
        crosses = height + (start - height) * before / pupil_at
        passed += abs(crosses) <= opening / 2
    return passed / rays


@given(st.floats(5, 60), st.floats(1, 60), st.floats(1.05, 4), st.floats(1, 50))
def test_inside_the_whole_circle_every_ray_passes_and_beyond_it_some_do_not(opening, before, times, pupil_wide):
    pupil_at = before * times
    whole = openings.whole_circle_mm(exact(opening), exact(before), exact(pupil_at), exact(pupil_wide)).nominal
    if whole > 0.1:
        assert share_passed(whole / 2 * 0.999, opening, before, pupil_at, pupil_wide) == 1
    if whole > 0:
        assert share_passed(whole / 2 * 1.02 + 0.05, opening, before, pupil_at, pupil_wide) < 1


@given(st.floats(20, 60), st.floats(5, 60), st.floats(1.2, 4), st.floats(1, 15))
def test_at_the_rim_of_the_half_lit_circle_half_of_the_rays_pass(opening, before, times, pupil_wide):
    pupil_at = before * times
    half = openings.half_lit_circle_mm(exact(opening), exact(before), exact(pupil_at)).nominal
    assert share_passed(half / 2, opening, before, pupil_at, pupil_wide) == pytest.approx(0.5, abs=0.002)


def test_an_opening_on_the_far_side_of_the_pupil_shades_nothing():
    assert openings.whole_circle_mm(exact(20), exact(40), exact(30), exact(10)).nominal == inf
    assert openings.half_lit_circle_mm(UNKNOWN, exact(10), exact(30)) is UNKNOWN


def test_an_opening_that_may_lie_right_before_a_wider_pupil_may_stop_everything_down():
    found = openings.whole_circle_mm(exact(20), Interval.between(35, 45), Interval.between(40, 60), exact(30))
    assert found.least == 0


@given(st.floats(1, 60), st.floats(0, 60), st.floats(5, 100))
def test_through_the_rim_needed_the_outermost_rays_just_pass(pupil, ahead, angle):
    found = openings.rim_needed_mm(exact(pupil), exact(ahead), exact(angle)).nominal
    # a ray from the edge of the entrance pupil, aslant by half the angle
    assert found / 2 == pytest.approx(pupil / 2 + ahead * tan(radians(angle / 2)))


def test_the_pupils_of_a_symmetrical_lens():
    # p = 1, a = 0.7 f: the stop looks 0.3 f behind the front glass
    behind = openings.entrance_pupil_behind_mm(exact(50), exact(1), exact(35))
    assert behind.nominal == pytest.approx(15)
    assert openings.pupil_before_sensor_mm(exact(50), exact(1), exact(5)).nominal == pytest.approx(55)
    assert openings.pupil_width_mm(exact(50), exact(1), exact(2)).nominal == pytest.approx(25)
