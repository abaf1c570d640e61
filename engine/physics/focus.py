"""Where a lens is in focus at a given extension, and what that does to light and blur. Lengths in mm, unit focusing."""

from __future__ import annotations

from math import hypot, inf, log2, sqrt

from engine.base.interval import INFINITE, UNKNOWN, Measure, is_known
from engine.base.span import Span
from engine.physics.enclose import enclose, ordered


def _reach(focal: float, extension: float) -> float:
    """f*f/x, the subject's distance ahead of the front focal point; infinite at and beyond infinity."""
    return focal * focal / extension if extension > 0 else inf


def _thin_distance(focal: float, extension: float) -> float:
    return 2 * focal + _reach(focal, extension) + extension


def from_sensor_mm(focal_length: Measure, hiatus: Measure, extension: Measure) -> Measure:
    """D = 2f + HH' + f*f/x + x, subject to sensor. At x <= 0 infinite: nothing nearer than infinity is in focus.

    D falls with x up to x = f (life size, D = 4f + HH') and rises after it. Source: optics model, formulas.
    """
    if is_known(extension) and extension.greatest <= 0:
        return INFINITE
    if not (is_known(focal_length) and is_known(hiatus) and is_known(extension)):
        return UNKNOWN
    turning = min(max(focal_length.least, extension.least), extension.greatest)
    return ordered(
        _thin_distance(focal_length.least, turning) + hiatus.least,
        max(_thin_distance(focal_length.greatest, x) for x in (extension.least, extension.greatest)) + hiatus.greatest,
        _thin_distance(focal_length.nominal, extension.nominal) + hiatus.nominal,
    )


def from_front_glass_mm(focal_length: Measure, front_focal_offset: Measure, extension: Measure) -> Measure:
    """w = a + f*f/x, subject to the front glass (working distance); infinite at x <= 0, below 0 inside the lens.

    Source: optics model, formulas.
    """
    if is_known(extension) and extension.greatest <= 0:
        return INFINITE
    return enclose(lambda f, a, x: a + _reach(f, x), focal_length, front_focal_offset, extension)


def magnification(focal_length: Measure, extension: Measure) -> Measure:
    """m = x/f, image over subject; 0 at and beyond infinity. Source: optics model, formulas."""
    return enclose(lambda f, x: max(x, 0.0) / f, focal_length, extension)


def infinity_mark_mm(focal_length: Measure, hiatus: Measure, extension: Measure) -> Measure | None:
    """The mark of the lens's scale at which infinity is sharp, where it sits too close; None where it does not.

    2f + HH' + f*f/|d| + |d|, read from the sensor as marks are. Source: optics model, formulas.
    """
    if is_known(extension) and extension.least >= 0:
        return None
    return from_sensor_mm(focal_length, hiatus, -extension)


def travel_to_mark_mm(mark: Measure, focal_length: Measure, hiatus: Measure) -> Measure:
    """x of a mark of the lens's scale: (S - sqrt(S*S - 4f*f))/2 with S = mark - 2f - HH'; 0 at the infinity mark.

    Unknown where even the likeliest mark is nearer than the lens can focus (under 4f + HH').
    Source: optics model, formulas (the smaller root: x < f).
    """
    if not (is_known(mark) and is_known(focal_length) and is_known(hiatus)):
        return UNKNOWN
    if mark.nominal - 2 * focal_length.nominal - hiatus.nominal < 2 * focal_length.nominal:
        return UNKNOWN

    def travel(at: float, focal: float, gap: float) -> float:
        spread = at - 2 * focal - gap
        if spread == inf:
            return 0.0
        if spread <= 2 * focal:
            return focal  # at life size: the nearest that the smaller root reaches
        # 2f*f/(S + root) is the same root without the loss of digits at far marks
        return 2 * focal * focal / (spread + sqrt(spread * spread - 4 * focal * focal))

    return enclose(travel, mark, focal_length, hiatus)


def remarked_mm(mark: Measure, focal_length: Measure, hiatus: Measure, error: Measure) -> Measure:
    """What a mark of the scale means where the lens sits `error` too far out (below 0 too close).

    D at x of the mark + d; infinite where nothing real is sharp. Unknown for marks the lens cannot be set to. Source:
    optics model, scale marks and distance from the sensor; it falls steadily in d up to life size.
    """
    own = travel_to_mark_mm(mark, focal_length, hiatus)
    if not (is_known(own) and is_known(focal_length) and is_known(hiatus) and is_known(error)):
        return UNKNOWN
    if own.greatest + error.greatest > focal_length.least:
        return from_sensor_mm(focal_length, hiatus, own + error)  # past life size D turns: an interval that holds it

    def meant(at: float, focal: float, gap: float, off: float) -> float:
        spread = max(at - 2 * focal - gap, 2 * focal)
        travel = 0.0 if spread == inf else 2 * focal * focal / (spread + sqrt(spread * spread - 4 * focal * focal))
        x = travel + off
        return 2 * focal + gap + focal * focal / x + x if x > 0 else inf

    return enclose(meant, mark, focal_length, hiatus, error)


def effective_f_number(f_number: Measure, magnification: Measure, pupil: Measure) -> Measure:
    """N(1 + m/p): the f-number that counts for exposure close up. Source: optics model, formulas."""
    if is_known(pupil) and pupil.least <= 0:
        return UNKNOWN
    return enclose(lambda n, m, p: n * (1 + m / p), f_number, magnification, pupil)


def light_lost_stops(magnification: Measure, pupil: Measure) -> Measure:
    """2*log2(1 + m/p): stops of light that the extension costs; of none below m = 0. Source: optics model, formulas."""
    if (is_known(pupil) and pupil.least <= 0) or (is_known(magnification) and magnification.least < 0):
        return UNKNOWN
    return enclose(lambda m, p: 2 * log2(1 + m / p), magnification, pupil)


def infinity_miss_mm(extension: Span) -> Measure:
    """How far the nearest setting stays from x = 0: 0 where one reaches it, on either side above 0."""
    shortest, longest = extension.shortest, extension.longest
    if is_known(shortest) and shortest.least >= 0:
        return shortest
    return enclose(lambda low, high: max(low, -high, 0.0), shortest, longest)


def far_blur_mm(extension: Measure, f_number: Measure) -> Measure:
    """|x|/N, the blur of a far point: by the marked f-number, for the far beam keeps its cone wherever the sensor is.

    Within 2 % from f/2.8 up where |x| is 0.5 or more, to 8 % low at f/1.4. Source: optics model, blur.
    """
    return abs(extension) / f_number if is_known(extension) else UNKNOWN


def allowed_blur_mm(width: Measure, height: Measure, divisor: Measure) -> Measure:
    """c, the blur that still counts as sharp: diagonal of the area used over `divisor`. Source: the design."""
    return enclose(lambda w, h, n: hypot(w, h) / n, width, height, divisor)


def infinity_allowance_mm(f_number: Measure, blur: Measure, factor: Measure) -> Measure:
    """N*c/k: how far x may be from 0 with far points still sharp, counted ahead of glass of factor k (1: no glass).

    Source: optics model, depth of focus; behind glass the blur of a far point is k*|x|/N.
    """
    return f_number * blur / factor if is_known(f_number) and is_known(blur) else UNKNOWN


def infinity_from_f_number(miss: Measure, blur: Measure, factor: Measure) -> Measure:
    """k*|x|/c: the least f-number of the lens whose allowance holds infinity. Source: optics model, blur."""
    return abs(miss) * factor / blur if is_known(miss) and is_known(factor) else UNKNOWN


def through_glass_mm(distance: Measure, behind: Measure, counted: Measure, image_shift: Measure) -> Measure:
    """D with glass, from D of the bare lens at the same x: the sensor is displaced by d, not by what d counts.

    D = 2f + HH' + f*f/x - shift + e + d and x = e + `counted`, so D(x) + d - `counted` - shift.
    Source: optics model, converter behind the lens.
    """
    if is_known(distance) and distance == INFINITE:
        return INFINITE
    if is_known(behind) and behind == counted:
        return distance - image_shift
    return distance + (behind - counted) - image_shift


def model_error_at(error: Measure, magnified: Measure) -> Measure:
    """The relative error of w: twice that of D closer than half life size. Source: optics model, acceptance table."""
    if not (is_known(error) and is_known(magnified)):
        return UNKNOWN
    return error * 2 if magnified.greatest > 0.5 else error
