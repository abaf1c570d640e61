"""A flash by its guide number, and stars that drift: against the definitions, and nothing made of what is not known."""

from __future__ import annotations

from math import pi, sqrt

import pytest

from engine.base.interval import UNKNOWN, Interval, is_known
from engine.physics.flash_and_stars import f_number_for_flash, longest_for_stars_s, reach_of_flash_mm


@pytest.mark.parametrize(("guide", "distance_mm", "iso"), [(36.0, 3000.0, 100.0), (24.0, 1500.0, 400.0)])
def test_stop_and_distance_of_a_flash_make_the_guide_number(guide: float, distance_mm: float, iso: float) -> None:
    stop = f_number_for_flash(guide, distance_mm, iso)
    assert stop * distance_mm / 1000 == pytest.approx(guide * sqrt(iso / 100))
    assert reach_of_flash_mm(guide, stop, iso) == pytest.approx(distance_mm)


def test_a_star_drifts_over_the_blur_in_that_time() -> None:
    time = longest_for_stars_s(Interval.exact(24.0), Interval.exact(0.03))
    assert is_known(time)
    assert time.nominal * 2 * pi / 86164.1 * 24 == pytest.approx(0.03)


def test_where_focal_length_or_blur_is_not_known_no_time_is_told() -> None:
    assert not is_known(longest_for_stars_s(Interval.exact(24.0), UNKNOWN))
    assert not is_known(longest_for_stars_s(UNKNOWN, Interval.exact(0.03)))
