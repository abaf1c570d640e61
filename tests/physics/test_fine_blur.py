"""Diffraction against its textbook disc, and the blur of flat plates against traces."""

from __future__ import annotations

import pytest

from engine.base.interval import UNKNOWN, Interval
from engine.physics import fine_blur

exact = Interval.exact


def test_green_light_at_f16_makes_a_disc_of_two_hundredths():
    assert fine_blur.diffraction_blur_mm(exact(16), exact(0.00055)).nominal == pytest.approx(0.02147, abs=1e-5)
    found = fine_blur.stop_of_diffraction(exact(0.03), exact(0.00055))
    assert fine_blur.diffraction_blur_mm(found, exact(0.00055)).nominal == pytest.approx(0.03)
    assert fine_blur.stop_of_diffraction(exact(0), exact(0.00055)) is UNKNOWN


def test_plates_blur_as_traced_and_are_never_told_too_harmless(traced_glass):
    for row in traced_glass["plate_blur"]:
        found = fine_blur.plate_blur_mm(exact(row["thickness"]), exact(row["f_number"])).nominal
        assert 0.985 <= found / row["disc"] <= 1.13
