"""What an opening between lens and sensor, or a rim before the lens, cuts off the picture. Lengths in mm.

The beam of an image point fills the exit pupil, E = p*f/N wide and L = p*f + x before the sensor. An opening B wide at
z before the sensor, on the way from the pupil, cuts it by similar triangles from the pupil's edges.
"""

from __future__ import annotations

from math import inf, radians, tan

from engine.base.interval import UNKNOWN, Measure, is_known
from engine.physics.enclose import enclose, ordered
from engine.physics.positive import positive


def pupil_before_sensor_mm(focal_length: Measure, pupil: Measure, extension: Measure) -> Measure:
    """L = p*f + x, exit pupil to sensor. Source: optics model, image circle (the pupil lies p*f ahead of far focus)."""
    return positive(pupil) * positive(focal_length) + extension if is_known(extension) else UNKNOWN


def pupil_width_mm(focal_length: Measure, pupil: Measure, f_number: Measure) -> Measure:
    """E = p*f/N. Source: definitions of f-number and pupil magnification."""
    return enclose(lambda f, p, n: p * f / n, positive(focal_length), positive(pupil), positive(f_number))


def whole_circle_mm(opening: Measure, before_sensor: Measure, pupil_at: Measure, pupil_wide: Measure) -> Measure:
    """The circle inside which the opening takes no light at all: (B*L - E*z)/(L - z), at least 0.

    Infinite where the pupil stands between opening and sensor: such an opening shades nothing. Source: similar
    triangles from the far edge of the exit pupil.
    """
    found = enclose(_whole, opening, before_sensor, positive(pupil_at), pupil_wide)
    if not (is_known(found) and is_known(opening) and is_known(before_sensor) and is_known(pupil_at)):
        return found
    met = pupil_at.least <= before_sensor.greatest < pupil_at.greatest
    if met and is_known(pupil_wide) and pupil_wide.greatest > opening.least:
        # an opening narrower than the pupil may lie right before it: then it stops the whole picture down
        return ordered(0.0, found.greatest, found.nominal)
    return found


def half_lit_circle_mm(opening: Measure, before_sensor: Measure, pupil_at: Measure) -> Measure:
    """The circle at whose rim half of the beam is left: B*L/(L - z). Source: triangles from the pupil's middle."""
    return enclose(lambda b, z, at: _whole(b, z, at, 0.0), opening, before_sensor, positive(pupil_at))


def _whole(opening: float, before: float, pupil_at: float, pupil_wide: float) -> float:
    if before >= pupil_at:
        return inf
    return max((opening * pupil_at - pupil_wide * before) / (pupil_at - before), 0.0)


def entrance_pupil_behind_mm(focal_length: Measure, pupil: Measure, front_focal_offset: Measure) -> Measure:
    """How far the entrance pupil lies behind the front glass: f/p - a, at least 0.

    Source: Newton's formula, the stop seen from the front lies f/p behind the front focal point; that lies a ahead of
    the front glass.
    """
    return enclose(lambda f, p, a: max(f / p - a, 0.0), positive(focal_length), positive(pupil), front_focal_offset)


def rim_needed_mm(entrance_pupil: Measure, ahead: Measure, angle_deg: Measure) -> Measure:
    """How wide a rim `ahead` of the entrance pupil must be to shade no corner: E + 2*ahead*tan(angle/2).

    `angle_deg`: the diagonal angle of view. Source: similar triangles from the edges of the entrance pupil.
    """
    return enclose(
        lambda wide, far, angle: wide + 2 * far * tan(radians(angle) / 2), positive(entrance_pupil), ahead, angle_deg
    )
