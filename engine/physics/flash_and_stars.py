"""A flash by its guide number, and how long stars may be exposed before their drift shows."""

from __future__ import annotations

from math import pi, sqrt
from typing import Final

from engine.base.interval import UNKNOWN, Measure, is_known
from engine.base.units import MM_PER_METRE
from engine.physics.enclose import enclose
from engine.physics.positive import positive

BASE_ISO: Final = 100.0  # what guide numbers are told for
SIDEREAL_DAY_S: Final = 86164.1  # one turn of the sky
DRIFT_PER_S: Final = 2 * pi / SIDEREAL_DAY_S  # of a star on the equator of the sky, in radians: the fastest


def f_number_for_flash(guide_m: float, distance_mm: float, iso: float) -> float:
    """N = GN/d, GN in metres at ISO 100, times the root of ISO/100. Source: definition of the guide number."""
    return guide_m * MM_PER_METRE / distance_mm * sqrt(iso / BASE_ISO)


def reach_of_flash_mm(guide_m: float, f_number: float, iso: float) -> float:
    """d = GN/N, the distance from flash to subject that is exposed right. Source: definition of the guide number."""
    return guide_m * MM_PER_METRE / f_number * sqrt(iso / BASE_ISO)


def longest_for_stars_s(focal_mm: Measure, blur_mm: Measure) -> Measure:
    """t = c/(w f): the time in which a star on the equator of the sky drifts over the allowed blur. Unknown of none.

    Source: the image of a far point moves by f times the angle; w is the turn of the sky.
    """
    if not (is_known(focal_mm) and is_known(blur_mm)):
        return UNKNOWN
    return enclose(lambda f, c: c / (DRIFT_PER_S * f), positive(focal_mm), positive(blur_mm))
