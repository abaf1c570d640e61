"""Close up: magnification, field and image distance, tubes and helicoid, close-up lenses, reversed and coupled lenses.

Lengths in mm. m is image over subject, x the extension from the far-focus position.
"""

from __future__ import annotations

from math import inf

from engine.base.interval import UNKNOWN, Measure, is_known
from engine.base.units import MM_PER_METRE
from engine.physics.enclose import enclose
from engine.physics.positive import positive


def extension_for_magnification_mm(focal_length: Measure, magnification: Measure) -> Measure:
    """x = m*f. Source: optics model, m = x/f."""
    return positive(focal_length) * magnification


def magnification_with_tube(present: Measure, focal_length: Measure, tube: Measure) -> Measure:
    """m + tube/f: what a tube adds to the magnification that the lens has by itself. Source: optics model, m = x/f."""
    return present + enclose(lambda f, x: x / f, positive(focal_length), tube)


def extension_for_subject_mm(focal_length: Measure, subject: Measure) -> Measure:
    """x = f*f/(u - f) for a subject at u from the front principal plane; 0 for one at infinity.

    From the sensor it is `focus.travel_to_mark_mm`. Source: optics model, u = f + f*f/x.
    """
    focal_length = positive(focal_length)
    if not (is_known(subject) and is_known(focal_length)) or subject.least <= focal_length.greatest:
        return UNKNOWN
    return enclose(lambda f, u: f * f / (u - f), focal_length, subject)


def extension_for_room_mm(focal_length: Measure, front_focal_offset: Measure, room: Measure) -> Measure:
    """x = f*f/(w - a) for a subject at w before the front glass. Source: optics model, w = a + f*f/x."""
    reach = room - front_focal_offset
    if not is_known(reach) or reach.least <= 0:
        return UNKNOWN
    return enclose(lambda f, z: f * f / z, positive(focal_length), reach)


def from_front_principal_mm(focal_length: Measure, extension: Measure) -> Measure:
    """u = f + f*f/x, subject to front principal plane; infinite at and beyond infinity. Source: optics model."""
    return enclose(lambda f, x: f + f * f / x if x > 0 else inf, positive(focal_length), extension)


def image_distance_mm(focal_length: Measure, magnification: Measure) -> Measure:
    """f(1 + m), rear principal plane to sensor. Source: optics model, f + x with x = m*f."""
    return enclose(lambda f, m: f * (1 + m), positive(focal_length), magnification)


def magnification_at_image_distance(focal_length: Measure, image_distance: Measure) -> Measure:
    """v/f - 1 at v from the rear principal plane; 0 where v falls short of f. Source: optics model, v = f(1 + m)."""
    return enclose(lambda f, v: max(v / f - 1, 0.0), positive(focal_length), image_distance)


def field_mm(format_side: Measure, magnification: Measure) -> Measure:
    """Width or height of the field at the subject: that of the format over m. Source: definition of magnification."""
    return enclose(lambda side, m: side / m, format_side, positive(magnification))


def objective_f_number(numerical_aperture: Measure, magnification: Measure) -> Measure:
    """m/(2 NA), the f-number that counts at the sensor behind an objective. Source: NA' = NA/m and N = 1/(2 NA')."""
    return enclose(lambda na, m: m / (2 * na), positive(numerical_aperture), positive(magnification))


def magnification_for_field(format_side: Measure, field: Measure) -> Measure:
    """m at which a field of this width or height fills the format's. Source: definition of magnification."""
    return enclose(lambda side, wide: side / wide, format_side, positive(field))


def close_up_focus_mm(power_dioptres: Measure, set_to: Measure) -> Measure:
    """Where a lens set to `set_to` focuses through a close-up lens, both from the close-up lens: 1/(P/1000 + 1/set).

    At the infinity mark 1000/P, whatever the lens. Source: thin-lens formula, the close-up lens images the subject to
    where the lens is set.
    """
    if not is_known(set_to) or set_to.least <= 0:
        return UNKNOWN
    return enclose(lambda p, at: 1 / (p / MM_PER_METRE + 1 / at), positive(power_dioptres), set_to)


def close_up_magnification(focal_length: Measure, power_dioptres: Measure, present: Measure) -> Measure:
    """m + f(1 + m)P/1000, for a thin lens touching the close-up lens; f*P/1000 at the infinity mark.

    Source: thin-lens formula, image distance f(1 + m) over the distance through the close-up lens.
    """
    return enclose(
        lambda f, p, m: m + f * (1 + m) * p / MM_PER_METRE, positive(focal_length), positive(power_dioptres), present
    )


def dioptres_of_focal(focal_length: Measure) -> Measure:
    """1000/f: a lens of this focal length used as a close-up lens. Source: definition of the dioptre."""
    return enclose(lambda f: MM_PER_METRE / f, positive(focal_length))


def coupled_magnification(rear_focal: Measure, reversed_focal: Measure) -> Measure:
    """f of the lens on the body over f of the one reversed before it, both at infinity. Source: m = f*P/1000."""
    return enclose(lambda f, r: f / r, positive(rear_focal), positive(reversed_focal))


def coupled_f_number(
    rear_focal: Measure, rear_stop: Measure, reversed_focal: Measure, reversed_stop: Measure
) -> Measure:
    """f/D of a lens at infinity with another reversed before it, D the smaller of both pupils.

    Between the two the light runs parallel, so that nothing is lost to extension. Source: a point in the focus of the
    reversed lens leaves it as a beam as wide as its pupil.
    """
    return enclose(
        lambda f, n, g, k: max(n, f * k / g),
        positive(rear_focal),
        positive(rear_stop),
        positive(reversed_focal),
        positive(reversed_stop),
    )


def coupled_depth_mm(f_number: Measure, blur: Measure, magnification: Measure) -> Measure:
    """2*N*c/(m*m): what is sharp in all before two coupled lenses, N that of the pair.

    Source: the image stays in the focus of the rear lens, so that its cone is 1/N wide; along the axis things are
    m*m as long there as before the lens.
    """
    return enclose(lambda n, c, m: 2 * n * c / (m * m), positive(f_number), positive(blur), positive(magnification))


def reversed_pupil(pupil: Measure) -> Measure:
    """Pupil magnification of a lens turned round: 1/p. Source: entrance and exit change places."""
    return enclose(lambda p: 1 / p, positive(pupil))


def through_tube_lens(marked: Measure, tube_focal: Measure, system_focal: Measure) -> Measure:
    """What an infinity objective gives behind another tube lens: marked * f_tube/f_system.

    `marked`: its magnification, or its image circle in mm behind the tube lens that its system means.
    Source: coupled lenses, f_tube over the objective's own f_system/marked.
    """
    return enclose(lambda m, f, s: m * f / s, marked, positive(tube_focal), positive(system_focal))


def objective_focal_mm(marked: Measure, system_focal: Measure) -> Measure:
    """Focal length of an infinity objective: f_system/marked. Source: definition of its mark."""
    return enclose(lambda m, s: s / m, positive(marked), positive(system_focal))


def hole_mm(focal_length: Measure, f_number: Measure) -> Measure:
    """f/N, how wide a stop laid before the glass must be; between the glasses it must look this wide from the front.

    Source: definition of the f-number.
    """
    return enclose(lambda f, n: f / n, positive(focal_length), positive(f_number))
