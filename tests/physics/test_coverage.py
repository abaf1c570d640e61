"""Image circles over frames: exact shares against counting, growth against traced circles."""

from __future__ import annotations

from itertools import pairwise
from math import hypot, inf, pi, radians, tan

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.base.interval import UNKNOWN, Interval
from engine.physics import coverage
from tests.examples import examples

exact = Interval.exact


def counted_shares(circle, width, height, right, up, steps=150):
    """Least and greatest share of a frame inside a circle by counting cells: those wholly in, and those partly in.

    Slow and obviously right; what lies between the two is the error of the counting, no more.
    """
    xs = [right + width * (i / steps - 0.5) for i in range(steps + 1)]
    ys = [up + height * (j / steps - 0.5) for j in range(steps + 1)]
    inside, touched, square = 0, 0, circle * circle / 4
    for x0, x1 in pairwise(xs):
        far_x, near_x = max(x0 * x0, x1 * x1), 0.0 if x0 <= 0 <= x1 else min(x0 * x0, x1 * x1)
        for y0, y1 in pairwise(ys):
            inside += far_x + max(y0 * y0, y1 * y1) <= square
            touched += near_x + (0.0 if y0 <= 0 <= y1 else min(y0 * y0, y1 * y1)) <= square
    return inside / steps**2, touched / steps**2


@settings(max_examples=examples(60), deadline=None)
@given(st.floats(1, 60), st.floats(3, 40), st.floats(3, 40), st.floats(-15, 15), st.floats(-15, 15))
def test_the_lit_share_is_what_counting_gives(circle, width, height, right, up):
    found = coverage.lit_share_off_centre(circle, width, height, right, up)
    least, greatest = counted_shares(circle, width, height, right, up)
    assert least - 1e-9 <= found <= greatest + 1e-9


def test_a_shifted_frame_is_the_frame_off_the_circles_centre():
    found = coverage.lit_share_shifted(Interval.between(20, 30), exact(17.3), exact(13), 3, 0)
    assert found.least == coverage.lit_share_off_centre(20, 17.3, 13, 3, 0)
    assert found.greatest == coverage.lit_share_off_centre(30, 17.3, 13, 3, 0)
    assert found.least < coverage.lit_share(exact(20), exact(17.3), exact(13)).least


def test_a_circle_inside_the_frame_lights_its_own_area_and_one_around_it_lights_all():
    assert coverage.lit_share_off_centre(10, 36, 24, 0, 0) == pytest.approx(pi * 25 / (36 * 24))
    assert coverage.lit_share_off_centre(hypot(36, 24), 36, 24, 0, 0) == pytest.approx(1)
    assert coverage.lit_share_off_centre(inf, 36, 24, 0, 0) == 1
    assert coverage.lit_share_off_centre(0, 36, 24, 0, 0) == 0
    assert coverage.lit_share_off_centre(10, 36, 24, 100, 0) == 0


@given(st.floats(1, 60), st.floats(0, 10), st.floats(3, 40), st.floats(3, 40))
def test_a_larger_circle_never_lights_less(circle, more, width, height):
    found = coverage.lit_share(Interval.between(circle, circle + more), exact(width), exact(height))
    assert 0 <= found.least <= found.nominal <= found.greatest <= 1
    assert found.least == pytest.approx(coverage.lit_share_off_centre(circle, width, height, 0, 0))


def test_an_unknown_circle_lights_an_unknown_share():
    assert coverage.lit_share(UNKNOWN, exact(36), exact(24)) is UNKNOWN


def test_traced_circles_lie_in_the_interval_stated(traced_glass, assumptions):
    known, blind = assumptions["circle-growth"], assumptions["circle-growth-without-pupil"]
    for row in traced_glass["circles"]:
        for pupil in (exact(row["pupil_magnification"]), UNKNOWN):
            found = coverage.image_circle_mm(exact(1), exact(row["x"]), exact(row["f"]), pupil, known, blind)
            for growth in row["growth"]:
                assert found.least <= growth <= found.greatest


def test_at_infinity_the_circle_is_what_it_is_whatever_the_lens(assumptions):
    growth = assumptions["circle-growth"]
    assert coverage.image_circle_mm(exact(21), exact(0), UNKNOWN, UNKNOWN, growth, growth) == exact(21)


def test_crop_factors_are_counted_by_diagonal():
    assert coverage.crop_factor(exact(36), exact(24)).nominal == pytest.approx(1)
    found = coverage.crop_factor(exact(17.3), exact(13.0))
    assert found.nominal == pytest.approx(2.0, abs=0.001)
    assert coverage.equivalent(exact(25), found).nominal == pytest.approx(50, abs=0.05)
    assert coverage.equivalent(UNKNOWN, found) is UNKNOWN


def test_the_largest_crop_touches_the_circle_or_the_frame():
    width, height = coverage.largest_crop_mm(exact(14.5), 17.3, 13.0, 16 / 9)
    assert hypot(width.nominal, height.nominal) == pytest.approx(14.5)
    assert width.nominal / height.nominal == pytest.approx(16 / 9)
    width, height = coverage.largest_crop_mm(exact(60), 36, 24, 16 / 9)
    assert (width.nominal, height.nominal) == pytest.approx((36, 20.25))
    assert coverage.largest_crop_mm(UNKNOWN, 36, 24, 1.5)[1] is UNKNOWN


def test_a_crop_of_half_the_frame_is_punched_in_twice():
    found = coverage.punch_in(exact(36), exact(24), exact(18), exact(12))
    assert found == exact(2)
    assert coverage.pixels_left((6000, 4000), 36, 24, 18, 12) == (3000, 2000)


@settings(max_examples=examples(60), deadline=None)
@given(
    st.floats(5, 60), st.floats(5, 40), st.floats(5, 40), st.floats(0.4, 2.5), st.floats(0, 8), st.floats(0, 8)
)  # fmt: skip
def test_no_larger_crop_off_centre_is_clean(circle, width, height, aspect, right, up):
    wide, high = (side.nominal for side in coverage.largest_crop_mm(exact(circle), width, height, aspect, right, up))
    assert wide <= width + 1e-9
    assert high <= height + 1e-9
    if high > 0:
        assert wide / high == pytest.approx(aspect)
        assert coverage.lit_share_off_centre(circle, wide, high, right, up) == pytest.approx(1)
    larger = (wide + 0.02 * aspect, high + 0.02)
    dark = coverage.lit_share_off_centre(circle, *larger, right, up) < 1
    assert dark or larger[0] > width or larger[1] > height


@given(st.floats(4, 300), st.floats(3, 60), st.floats(0, 100))
def test_the_angle_of_view_takes_in_the_side_at_the_image_distance(focal, side, extension):
    found = coverage.angle_of_view_deg(exact(side), exact(focal), exact(extension))
    assert 2 * (focal + extension) * tan(radians(found.nominal / 2)) == pytest.approx(side)


def test_a_normal_lens_sees_forty_six_degrees():
    found = coverage.angle_of_view_deg(exact(hypot(36, 24)), exact(50), exact(0))
    assert found.nominal == pytest.approx(46.79, abs=0.01)
