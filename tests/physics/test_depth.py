"""Depth of field against worked answers, traced blur, and the laws that tie its formulas together."""

from __future__ import annotations

from math import inf

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from engine.base.interval import INFINITE, UNKNOWN, Interval, is_known
from engine.physics import depth, focus

exact = Interval.exact
EVEN = exact(1)


def diagonal_part(width, height):
    """The blur that still counts as sharp on a format."""
    return focus.allowed_blur_mm(exact(width), exact(height), exact(1442))


def far_limit_mm(subject, *facts):
    """The farthest sharp point: the subject and the depth behind it."""
    return subject + depth.depth_behind_mm(subject, *facts)


SUPER_16, FOUR_THIRDS, FULL_FRAME = diagonal_part(12.52, 7.41), diagonal_part(17.3, 13.0), diagonal_part(36, 24)


def test_hyperfocal_distance_of_a_cine_lens_on_super_16():
    found = depth.hyperfocal_mm(exact(12.5), exact(4), SUPER_16)
    assert found.nominal == pytest.approx(3884.3, rel=2e-3)
    near = depth.near_limit_mm(found, exact(12.5), exact(4), SUPER_16, EVEN)
    assert near.nominal == pytest.approx(1942.1, rel=2e-3)


def test_limits_of_a_fast_normal_lens_at_two_metres():
    facts = (exact(25), exact(1.4), FOUR_THIRDS, EVEN)
    assert depth.near_limit_mm(exact(2000), *facts).nominal == pytest.approx(1875.5, rel=1e-3)
    assert far_limit_mm(exact(2000), *facts).nominal == pytest.approx(2142.2, rel=1e-3)


def test_limits_from_the_sensor_lie_near_those_from_the_lens():
    facts = (exact(25), Interval(-8, 8, 0), exact(1.4), FOUR_THIRDS, EVEN)
    near = depth.near_limit_from_sensor_mm(exact(2000), *facts)
    far = depth.far_limit_from_sensor_mm(exact(2000), *facts)
    assert near.nominal == pytest.approx(1875.5, rel=0.005)
    assert far.nominal == pytest.approx(2142.2, rel=0.005)
    assert near.width < 3  # the planes move subject and limit together
    assert far.width < 3


@pytest.mark.parametrize(
    ("m", "f_number", "blur", "total"),
    [(1, 8, FULL_FRAME, 0.96), (1, 8, FOUR_THIRDS, 0.48), (0.5, 2.8, FULL_FRAME, 1.008)],
)
def test_close_up_depth(m, f_number, blur, total):
    found = depth.close_up_depth_mm(exact(m), exact(f_number), blur, EVEN)
    assert found.nominal == pytest.approx(total, rel=2e-3)


def test_a_large_exit_pupil_leaves_less_depth_close_up():
    even = depth.close_up_depth_mm(exact(1), exact(8), exact(0.03), EVEN)
    assert depth.close_up_depth_mm(exact(1), exact(8), exact(0.03), exact(1.7)).nominal < even.nominal


def test_focused_at_infinity_the_near_limit_is_a_focal_length_short_of_hyperfocal():
    facts = (exact(50), exact(4), exact(0.03))
    near = depth.near_limit_mm(INFINITE, *facts, EVEN)
    assert near.nominal == pytest.approx(depth.hyperfocal_mm(*facts).nominal - 50)
    assert far_limit_mm(INFINITE, *facts, EVEN) == INFINITE
    from_sensor = depth.near_limit_from_sensor_mm(INFINITE, exact(50), exact(3), exact(4), exact(0.03), EVEN)
    assert from_sensor.nominal == pytest.approx(near.nominal + 53)


def test_a_subject_that_may_be_at_infinity_has_a_finite_near_limit():
    facts = (exact(50), Interval(-5, 5, 0), exact(4), exact(0.03), EVEN)
    near = depth.near_limit_from_sensor_mm(Interval(10000, inf, 30000), *facts)
    assert 0 < near.least < near.nominal < near.greatest < inf
    assert depth.far_limit_from_sensor_mm(Interval(10000, inf, 30000), *facts).greatest == inf


def test_the_traced_blur_of_far_points_is_the_blur_its_hyperfocal_distance_allows(traced):
    seen = 0
    for lens in traced["lenses"].values():
        for x, rows in lens["far_blur"].items():
            for stop, disc in rows:
                if disc is None or float(x) < 0.5:
                    continue
                f = exact(lens["f"])
                found = depth.hyperfocal_mm(f, exact(stop), exact(disc)).nominal - lens["f"]
                set_to = lens["f"] ** 2 / float(x)
                assert found / set_to == pytest.approx(1, abs=0.021 if stop >= 2.8 else 0.085)
                blur = depth.point_blur_mm(INFINITE, exact(lens["f"] + set_to), f, exact(stop), EVEN)
                assert blur.nominal == pytest.approx(focus.far_blur_mm(exact(float(x)), exact(stop)).nominal)
                seen += 1
    assert seen > 25


def test_traced_lenses_are_sharp_from_limit_to_limit_within_the_models_error(traced):
    """A point whose image lies `off` behind or before the sensor is blurred by c: the limits for c are that point."""
    f8, seen = 1, 0  # the rows: first order, traced at f/8, wide open
    for lens in traced["lenses"].values():
        f, p, gap = lens["f"], lens["pupil_magnification"], lens["hiatus"]
        for middle, others in (("2.0", ("1.9", "1.98", "2.02", "2.1")), ("5.0", ("4.9", "4.98", "5.02", "5.1"))):
            if lens["x"][middle][f8] is None:
                continue
            subject = lens["x"][middle][f8][0]
            for other in others:
                if lens["x"][other][f8] is None:
                    continue
                off = float(other) - float(middle)
                wanted = lens["x"][other][f8][0] - off  # from the sensor, which stays where it was
                blur = p * f / 8 * abs(off) / (p * f + float(other))
                facts = (exact(subject), exact(f), exact(gap), exact(8), exact(blur), exact(p))
                limit = depth.near_limit_from_sensor_mm if off > 0 else depth.far_limit_from_sensor_mm
                found = limit(*facts)
                assert found.nominal == pytest.approx(wanted, rel=0.01)
                # the depth itself, which is a small difference, is told as well
                assert found.nominal - subject == pytest.approx(wanted - subject, rel=0.03)
                seen += 1
    assert seen > 60


def test_what_is_not_known_or_cannot_be_is_unknown():
    good = [exact(2000), exact(50), exact(4), exact(0.03), EVEN]
    formulas = (depth.near_limit_mm, depth.depth_ahead_mm, depth.depth_behind_mm,
                depth.total_depth_mm)  # fmt: skip
    for formula in formulas:
        for n in range(5):
            assert formula(*good[:n], UNKNOWN, *good[n + 1 :]) is UNKNOWN
        assert formula(exact(40), *good[1:]) is UNKNOWN  # inside the focal length
        assert formula(*good[:3], exact(20), EVEN) is UNKNOWN  # a blur larger than the pupil
        assert formula(*good[:4], Interval(0, 1, 0.5)) is UNKNOWN
    assert depth.near_limit_from_sensor_mm(exact(190), exact(50), exact(0), *good[2:]) is UNKNOWN
    assert depth.far_limit_from_sensor_mm(UNKNOWN, exact(50), exact(0), *good[2:]) is UNKNOWN
    assert depth.near_limit_from_sensor_mm(exact(2000), exact(50), UNKNOWN, *good[2:]) is UNKNOWN
    assert depth.hyperfocal_mm(exact(50), exact(0), exact(0.03)) is UNKNOWN
    assert depth.point_blur_mm(exact(40), exact(2000), exact(50), exact(4), EVEN) is UNKNOWN


FOCALS, STOPS, BLURS, PUPILS = st.floats(4, 300), st.floats(0.95, 32), st.floats(0.003, 0.06), st.floats(0.5, 2)


@given(FOCALS, STOPS, BLURS)
def test_focused_at_hyperfocal_everything_from_half_of_it_is_sharp(f, n, c):
    facts = (exact(f), exact(n), exact(c))
    found = depth.hyperfocal_mm(*facts)
    assert depth.near_limit_mm(found, *facts, EVEN).nominal == pytest.approx(found.nominal / 2)
    assert far_limit_mm(found, *facts, EVEN).nominal > 1e9 * found.nominal
    assert far_limit_mm(found + 0.01 * found.nominal, *facts, EVEN) == INFINITE


@given(FOCALS, st.floats(1.5, 5000), STOPS, BLURS, PUPILS)
def test_at_either_limit_the_blur_is_just_what_is_allowed(f, times, n, c, p):
    subject, facts = exact(f * times), (exact(f), exact(n), exact(c), exact(p))
    for limit in (depth.near_limit_mm(subject, *facts), far_limit_mm(subject, *facts)):
        assert is_known(limit)
        if limit.nominal < 1e6 * f:
            found = depth.point_blur_mm(limit, subject, exact(f), exact(n), exact(p))
            assert found.nominal == pytest.approx(c, rel=1e-4)


@given(FOCALS, st.floats(1.5, 5000), STOPS, BLURS, PUPILS)
def test_limits_and_depths_tell_the_same(f, times, n, c, p):
    subject, facts = exact(f * times), (exact(f), exact(n), exact(c), exact(p))
    ahead, behind = depth.depth_ahead_mm(subject, *facts), depth.depth_behind_mm(subject, *facts)
    far = far_limit_mm(subject, *facts).nominal
    assert depth.near_limit_mm(subject, *facts).nominal == pytest.approx(subject.nominal - ahead.nominal, rel=1e-9)
    assert depth.total_depth_mm(subject, *facts).nominal == ahead.nominal + behind.nominal
    assert ahead.nominal < behind.nominal
    if far < 1e6 * f:
        assert far == pytest.approx(subject.nominal + behind.nominal, rel=1e-6)


@given(FOCALS, st.floats(0.05, 3), STOPS, BLURS, PUPILS)
def test_close_up_depth_is_total_depth_but_for_a_share_that_vanishes(f, m, n, c, p):
    assume(n * c / f < 0.3 * m)
    whole = depth.total_depth_mm(exact(f * (1 + 1 / m)), exact(f), exact(n), exact(c), exact(p))
    simple = depth.close_up_depth_mm(exact(m), exact(n), exact(c), exact(p))
    assert simple.nominal == pytest.approx(whole.nominal * (1 - (n * c / (f * m)) ** 2), rel=1e-6)


@given(FOCALS, st.floats(-0.35, 0.9), st.floats(0.001, 0.95))
def test_the_subject_is_found_from_the_sensor(f, gap_share, m):
    gap = exact(f * gap_share)
    distance = focus.from_sensor_mm(exact(f), gap, exact(m * f))
    found = depth.front_principal_to_subject_mm(distance, exact(f), gap)
    assert found.nominal == pytest.approx(f * (1 + 1 / m), rel=1e-6)


@st.composite
def intervals(draw, least, greatest):
    low, high = sorted((draw(st.floats(least, greatest)), draw(st.floats(least, greatest))))
    return Interval(low, high, min(max(low + (high - low) * draw(st.floats(0, 1)), low), high))


def inside(interval, share):
    return exact(min(interval.least + interval.width * share, interval.greatest))


FACTS = (intervals(8, 90), intervals(1, 22), intervals(0.004, 0.06), intervals(0.6, 1.8))
SHARES = st.lists(st.floats(0, 1), min_size=6, max_size=6)


def held(whole, point):
    """Whether the interval holds the value but for rounding, which grows as a far limit nears infinity."""
    value = point.nominal
    if value == inf:
        return whole.greatest == inf
    slack = 1e-9 * max(abs(value), 1) + 1e-14 * value * value
    return whole.least - slack <= value <= whole.greatest + slack


@given(intervals(100, 20000), *FACTS, SHARES)
def test_limits_hold_every_value_inside_their_inputs(subject, f, n, c, p, shares):
    inputs = (subject, f, n, c, p)
    at = [inside(value, share) for value, share in zip(inputs, shares, strict=False)]
    for formula in (depth.near_limit_mm, depth.depth_ahead_mm, depth.depth_behind_mm,
                    depth.total_depth_mm):  # fmt: skip
        whole = formula(*inputs)
        assert is_known(whole)
        assert held(whole, formula(*at))


@given(intervals(100, 20000), intervals(100, 20000), *FACTS, SHARES)
def test_blur_holds_every_value_inside_its_inputs(point, subject, f, n, c, p, shares):
    inputs = (point, subject, f, n, p)
    at = [inside(value, share) for value, share in zip(inputs, shares, strict=False)]
    whole = depth.point_blur_mm(*inputs)
    assert is_known(whole)
    assert held(whole, depth.point_blur_mm(*at))


@given(intervals(150, 20000), intervals(-30, 40), *FACTS, SHARES)
def test_limits_from_the_sensor_hold_every_value_inside_their_inputs(distance, gap, f, n, c, p, shares):
    inputs = (distance, f, gap, n, c, p)
    at = [inside(value, share) for value, share in zip(inputs, shares, strict=True)]
    for formula in (depth.near_limit_from_sensor_mm, depth.far_limit_from_sensor_mm):
        whole, point = formula(*inputs), formula(*at)
        if is_known(whole) and is_known(point):
            assert held(whole, point)


def test_zone_of_a_depth_is_focused_at_its_subject() -> None:
    near, far = depth.zone_around_mm(Interval.exact(1500.0), Interval.exact(200.0))
    assert is_known(near)
    assert is_known(far)
    assert far.nominal - near.nominal == pytest.approx(200.0)
    at = depth.focus_for_zone_mm(near, far)
    assert is_known(at)
    assert at.nominal == pytest.approx(1500.0)
