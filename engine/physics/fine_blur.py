"""Blur that no focusing takes away: diffraction at small stops, flat glass before the sensor at wide ones; in mm."""

from __future__ import annotations

from typing import Final

from engine.base.interval import Measure
from engine.physics.enclose import enclose
from engine.physics.positive import positive

AIRY: Final = 2.44  # diameter of the first dark ring over wavelength and f-number
PLATE_BLUR: Final = 0.0045  # mm of blur a mm of glass, at PLATE_STOP, refocused
PLATE_STOP: Final = 1.4


def diffraction_blur_mm(f_number: Measure, wavelength: Measure) -> Measure:
    """2.44 * wavelength * N, a point's disc; N the effective f-number. Source: the disc of a round opening."""
    return enclose(lambda n, w: AIRY * w * n, positive(f_number), positive(wavelength))


def stop_of_diffraction(blur: Measure, wavelength: Measure) -> Measure:
    """The effective f-number whose diffraction alone makes this blur. Source: as above, solved for N."""
    return enclose(lambda c, w: c / (AIRY * w), positive(blur), positive(wavelength))


def plate_blur_mm(thickness: Measure, f_number: Measure) -> Measure:
    """Blur on the axis from a flat plate the lens was not made for, refocused: 4.5 um a mm at f/1.4, falling as 1/N^3.

    Source: optics model, flat glass (traced for a perfect lens).
    """
    return enclose(lambda t, n: t * PLATE_BLUR * (PLATE_STOP / n) ** 3, thickness, positive(f_number))
