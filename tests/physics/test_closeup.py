"""Close-up numbers against worked answers and each other; stacks of tubes against trying all of them."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.base.interval import INFINITE, UNKNOWN, Interval
from engine.physics import closeup, focus

exact = Interval.exact


@pytest.mark.parametrize(("tube", "m"), [(10, 0.34), (16, 0.46), (26, 0.66)])
def test_a_tube_adds_its_length_over_the_focal_length(tube, m):
    assert closeup.magnification_with_tube(exact(0.14), exact(50), exact(tube)).nominal == pytest.approx(m)


def test_magnification_wanted_and_extension_needed():
    assert closeup.extension_for_magnification_mm(exact(50), exact(0.5)) == exact(25)
    assert closeup.extension_for_subject_mm(exact(85), exact(2000)).nominal == pytest.approx(3.7728, abs=1e-4)
    assert closeup.extension_for_subject_mm(exact(85), INFINITE) == exact(0)


def test_life_size_is_two_focal_lengths_from_the_lens():
    assert closeup.from_front_principal_mm(exact(75), exact(75)) == exact(150)
    assert closeup.from_front_principal_mm(exact(16), exact(5)).nominal == pytest.approx(67.2)
    assert closeup.from_front_principal_mm(exact(16), exact(0)) == INFINITE


def test_image_distance_of_a_reversed_lens_on_bellows():
    assert closeup.image_distance_mm(exact(55), exact(5)) == exact(330)
    found = closeup.magnification_at_image_distance(exact(55), Interval.between(150 + 46.5, 200 + 46.5))
    assert (found.least, found.greatest) == (pytest.approx(2.5727, abs=1e-4), pytest.approx(3.4818, abs=1e-4))


def test_the_field_is_the_format_over_the_magnification():
    assert closeup.field_mm(exact(36), exact(0.5)) == exact(72)
    assert closeup.magnification_for_field(exact(17.3), exact(34.6)).nominal == pytest.approx(0.5)
    assert closeup.field_mm(exact(36), exact(0)) is UNKNOWN


def test_a_close_up_lens_focuses_at_its_own_focal_length_whatever_the_lens():
    assert closeup.close_up_focus_mm(exact(0.5), INFINITE).nominal == pytest.approx(2000)
    assert closeup.close_up_focus_mm(exact(2), exact(500)).nominal == pytest.approx(250)
    assert closeup.close_up_magnification(exact(85), exact(0.5), exact(0)).nominal == pytest.approx(85 / 2000)
    assert closeup.close_up_focus_mm(exact(-1), exact(500)) is UNKNOWN
    assert closeup.close_up_focus_mm(exact(1), exact(0)) is UNKNOWN


@given(st.floats(8, 300), st.floats(0.25, 20), st.floats(1.2, 400))
def test_a_close_up_lens_agrees_with_the_thin_lens_of_both_together(f, power, times):
    set_to = times * f  # in front of both
    present, image = f / (set_to - f), f * set_to / (set_to - f)
    subject = closeup.close_up_focus_mm(exact(power), exact(set_to)).nominal
    assert 1 / subject + 1 / image == pytest.approx(1 / f + power / 1000)  # thin lenses in contact
    found = closeup.close_up_magnification(exact(f), exact(power), exact(present))
    assert found.nominal == pytest.approx(image / subject)


def test_coupled_lenses_magnify_by_the_ratio_of_their_focal_lengths():
    found = closeup.coupled_magnification(exact(200), exact(50))
    assert found == exact(4)
    as_close_up = closeup.close_up_magnification(exact(200), closeup.dioptres_of_focal(exact(50)), exact(0))
    assert as_close_up.nominal == pytest.approx(found.nominal)


def test_a_lens_turned_round_swaps_its_pupils():
    assert closeup.reversed_pupil(exact(1.25)) == exact(0.8)
    assert closeup.reversed_pupil(Interval(0, 1, 0.5)) is UNKNOWN


def test_another_tube_lens_changes_magnification_and_circle_alike():
    assert closeup.through_tube_lens(exact(10), exact(135), exact(200)).nominal == pytest.approx(6.75)
    circle = closeup.through_tube_lens(Interval.between(18, 25), exact(135), exact(200))
    assert (circle.least, circle.greatest) == (pytest.approx(12.15), pytest.approx(16.875))
    objective = closeup.objective_focal_mm(exact(10), exact(200))
    assert closeup.coupled_magnification(exact(135), objective).nominal == pytest.approx(6.75)


def test_a_paper_stop_is_the_focal_length_over_the_f_number():
    assert closeup.hole_mm(exact(85), exact(8)) == exact(10.625)


@given(st.floats(8, 300), st.floats(0.01, 5))
def test_extension_image_and_subject_distance_fit_together(f, m):
    x = closeup.extension_for_magnification_mm(exact(f), exact(m))
    subject = closeup.from_front_principal_mm(exact(f), x)
    assert closeup.extension_for_subject_mm(exact(f), subject).nominal == pytest.approx(m * f)
    assert subject.nominal == pytest.approx(f * (1 + 1 / m))
    image = closeup.image_distance_mm(exact(f), exact(m))
    assert closeup.magnification_at_image_distance(exact(f), image).nominal == pytest.approx(m)
    whole = focus.from_sensor_mm(exact(f), exact(0), x)
    assert subject.nominal + image.nominal == pytest.approx(whole.nominal)


def test_what_is_not_known_stays_so():
    assert closeup.extension_for_subject_mm(exact(85), exact(80)) is UNKNOWN
    assert closeup.magnification_with_tube(UNKNOWN, exact(50), exact(10)) is UNKNOWN
    assert closeup.image_distance_mm(exact(55), UNKNOWN) is UNKNOWN
