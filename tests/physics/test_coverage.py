"""Image circles over frames: exact shares against counting, growth against traced circles."""

from __future__ import annotations

from math import hypot, inf, pi

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine.base.interval import UNKNOWN, Interval
from engine.physics import coverage

exact = Interval.exact


def counted_share(circle, width, height, right, up, steps=200):
    """Share of a frame inside a circle by counting cells: slow and obviously right."""
    inside = 0
    for i in range(steps):
        x = right + width * ((i + 0.5) / steps - 0.5)
        for j in range(steps):
            y = up + height * ((j + 0.5) / steps - 0.5)
            inside += x * x + y * y <= circle * circle / 4
    return inside / steps**2


@settings(max_examples=40, deadline=None)
@given(st.floats(1, 60), st.floats(3, 40), st.floats(3, 40), st.floats(-15, 15), st.floats(-15, 15))
def test_the_lit_share_is_what_counting_gives(circle, width, height, right, up):
    found = coverage.lit_share_off_centre(circle, width, height, right, up)
    assert found == pytest.approx(counted_share(circle, width, height, right, up), abs=0.01)


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


def test_traced_circles_grow_as_stated(traced_glass, assumptions):
    known, blind = assumptions["circle-growth"], assumptions["circle-growth-without-pupil"]
    for row in traced_glass["circles"]:
        for pupil in (exact(row["pupil_magnification"]), UNKNOWN):
            found = coverage.image_circle_mm(exact(1), exact(row["x"]), exact(row["f"]), pupil, known, blind)
            for growth in row["growth"]:
                assert found.least - 1e-3 <= growth <= found.greatest + 1e-3


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
