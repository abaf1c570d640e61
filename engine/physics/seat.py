"""How far a lens sits from where its register wants it: seats, registers, and glass between them. Lengths in mm."""

from __future__ import annotations

from engine.base.interval import UNKNOWN, Measure, is_known
from engine.base.span import Span
from engine.physics.enclose import enclose


def seat_error_mm(thickness: Measure, front_register: Measure, rear_register: Measure) -> Measure:
    """What one piece adds to the register error: above 0 too far out, below 0 too close.

    The registers are those of the mounts it joins. Source: definition of register; signs as in the design.
    """
    return thickness - (front_register - rear_register)


def right_seat_mm(lens_register: Measure, body_register: Measure, image_shift: Measure) -> Measure:
    """The seat at which d is 0: lens register - body register, less what glass brings the image nearer.

    Below 0 the lens seat lies inside the body flange. Source: optics model, converter behind the lens.
    """
    return lens_register - body_register - image_shift


def extension_behind_glass_mm(behind: Measure, factor: Measure, converter_focal: Measure | None) -> Measure:
    """What an extension behind glass of factor k counts at the lens: d/(k*k - k*d/q), d/(k*k) where q is not known.

    `converter_focal` is the glass's own focal length q, above 0 for a reducer. Unknown where d reaches k*q, beyond
    which the glass forms no image on the sensor. Source: optics model, converter behind the lens.
    """
    if is_known(behind) and behind.is_exact and behind.nominal == 0:
        return behind
    if not (is_known(behind) and is_known(factor)):
        return UNKNOWN
    if factor.least <= 0:
        return UNKNOWN
    if not is_known(converter_focal):
        return enclose(lambda d, k: d / (k * k), behind, factor)
    if converter_focal.least <= 0 <= converter_focal.greatest:
        return UNKNOWN
    room = enclose(lambda d, k, q: k - d / q, behind, factor, converter_focal)
    if not is_known(room) or room.least <= 0:
        return UNKNOWN
    return enclose(lambda d, k, q: d / (k * k - k * d / q), behind, factor, converter_focal)


def glass_magnification(behind: Measure, factor: Measure, converter_focal: Measure | None) -> Measure:
    """The magnification that the glass itself works at, k - d/q; k where its focal length q is not known.

    Source: optics model, converter behind the lens (m = (k - d/q) x/f).
    """
    if is_known(behind) and behind.is_exact and behind.nominal == 0:
        return factor
    if not is_known(converter_focal):
        return factor
    if converter_focal.least <= 0 <= converter_focal.greatest:
        return UNKNOWN
    return enclose(lambda d, k, q: k - d / q, behind, factor, converter_focal)


def extension(before: Span, behind: Span, factor: Measure, converter_focal: Measure | None, travel: Measure) -> Span:
    """x, how far the lens is out from its far-focus position, at the shortest and the longest setting of everything.

    `before` and `behind` are the register errors ahead of the glass (whole) and behind it; `travel` is the lens's own
    focusing. Source: optics model, converter behind the lens ("they add").
    """
    return Span(
        before.shortest + extension_behind_glass_mm(behind.shortest, factor, converter_focal),
        before.longest + extension_behind_glass_mm(behind.longest, factor, converter_focal) + travel,
    )


def glass_shift_mm(thickness: Measure, index: Measure) -> Measure:
    """t(1 - 1/n): how far a flat plate in the rear space moves focus away from the lens.

    Added glass lowers the extension by that, removed glass raises it. Source: optics model, flat glass.
    """
    return enclose(lambda t, n: t * (1 - 1 / n), thickness, index)
