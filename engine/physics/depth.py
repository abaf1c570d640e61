"""Depth of field: hyperfocal distance, near and far limits, total depth, and the blur of a point elsewhere.

Everything follows from two facts: the image of a point at u lies f*f/(u - f) behind the rear focal point, and its beam
comes from the exit pupil, p*f ahead of that point and p*f/N wide. Lengths in mm; N the marked f-number, c the blur that
still counts as sharp, p the pupil magnification, m = f/(u - f). Distances from the front principal plane unless told.
"""

from __future__ import annotations

from collections.abc import Callable
from math import inf, sqrt

from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.physics import focus
from engine.physics.enclose import enclose, ordered
from engine.physics.positive import positive


def hyperfocal_mm(focal_length: Measure, f_number: Measure, blur: Measure) -> Measure:
    """H = f*f/(N*c) + f: focused there, far points are blurred by just c. The pupils do not enter.

    Source: optics model, blur of a far point, |x|/N = c with u = f + f*f/x.
    """
    return enclose(lambda f, n, c: f * f / (n * c) + f, positive(focal_length), positive(f_number), positive(blur))


def depth_ahead_mm(
    subject: Measure, focal_length: Measure, f_number: Measure, blur: Measure, pupil: Measure
) -> Measure:
    """What is sharp on the near side of the subject: N*c(1 + m/p) / (m(m + N*c/f)).

    Source: similar triangles through the exit pupil; with p = 1 the trade's u - u*f*f/(f*f + N*c(u - f)).
    """
    return _enclosed(_ahead, subject, focal_length, f_number, blur, pupil)


def depth_behind_mm(
    subject: Measure, focal_length: Measure, f_number: Measure, blur: Measure, pupil: Measure
) -> Measure:
    """What is sharp beyond the subject: N*c(1 + m/p) / (m(m - N*c/f)), infinite from the hyperfocal distance on.

    Source: as for the near side.
    """
    return _enclosed(_behind, subject, focal_length, f_number, blur, pupil)


def total_depth_mm(
    subject: Measure, focal_length: Measure, f_number: Measure, blur: Measure, pupil: Measure
) -> Measure:
    """Both together: 2*N*c(1 + m/p) / (m*m - (N*c/f)^2), the same from whichever plane. Source: as for its parts."""
    return _enclosed(_total, subject, focal_length, f_number, blur, pupil)


def focus_for_zone_mm(near: Measure, far: Measure) -> Measure:
    """2*a*b/(a + b), where to focus for all from a to b to be sharp; 2*a where b is infinite.

    Source: optics model, near and far limit with 1/near + 1/far = 2/s.
    """
    return enclose(lambda a, b: 2 * a if b == inf else 2 * a * b / (a + b), positive(near), far)


def zone_around_mm(subject: Measure, total: Measure) -> tuple[Measure, Measure]:
    """The near and the far end of the zone of this depth that is focused at the subject.

    a = (s - d + sqrt(s*s + d*d))/2 and b = a + d, from 2*a*b/(a + b) = s. Source: as for where to focus.
    """
    near = enclose(lambda s, d: (s - d + sqrt(s * s + d * d)) / 2, positive(subject), positive(total))
    return near, near + total


def f_number_for_zone(near: Measure, far: Measure, focal_length: Measure, blur: Measure) -> Measure:
    """f*f(1/a - 1/b)s / (2c(s - f)), the widest stop at which all from a to b is sharp, focused at s.

    Source: optics model, near and far limit with 1/near - 1/far = 2*N*c(s - f)/(s*f*f).
    """

    def stop(a: float, b: float, f: float, c: float) -> float:
        s = 2 * a if b == inf else 2 * a * b / (a + b)
        return f * f * (1 / a - 1 / b) * s / (2 * c * (s - f)) if s > f else inf

    return enclose(stop, positive(near), far, positive(focal_length), positive(blur))


def f_number_for_depth(wanted: Measure, magnification: Measure, blur: Measure, pupil: Measure) -> Measure:
    """D*m*m / (2*c(1 + m/p)): the f-number at which so much is sharp in all close up. Source: `close_up_depth_mm`."""
    return enclose(
        lambda d, m, c, p: d * m * m / (2 * c * (1 + m / p)),
        positive(wanted), positive(magnification), positive(blur), positive(pupil),
    )  # fmt: skip


def magnification_for_depth(total: Measure, focal_length: Measure, f_number: Measure, blur: Measure) -> Measure:
    """m at which so much is sharp in all, the pupils even: the positive root of T*m*m - 2*N*c*m - (2*N*c + T*k*k) = 0.

    k = N*c/f. Source: the total depth, 2*N*c(1 + m)/(m*m - k*k) = T, solved for m.
    """

    def size(t: float, f: float, n: float, c: float) -> float:
        b, k = 2 * n * c, n * c / f
        return (b + sqrt(b * b + 4 * t * (b + t * k * k))) / (2 * t)

    return enclose(size, positive(total), positive(focal_length), positive(f_number), positive(blur))


def f_number_for_point(
    point: Measure, subject: Measure, focal_length: Measure, blur: Measure, pupil: Measure
) -> Measure:
    """The f-number at which a point is blurred as much as is allowed. Source: `point_blur_mm`, which goes as 1/N."""
    return point_blur_mm(point, subject, focal_length, Interval.exact(1.0), pupil) / blur


def close_up_depth_mm(magnification: Measure, f_number: Measure, blur: Measure, pupil: Measure) -> Measure:
    """2*N*c(1 + m/p) / (m*m): total depth where N*c is small against the extension; the focal length drops out.

    Source: the total depth with (N*c/f)^2 left out; with p = 1 the trade's 2*N*c(1 + m)/(m*m).
    """
    return enclose(
        lambda m, n, c, p: 2 * n * c * (1 + m / p) / (m * m),
        positive(magnification), positive(f_number), positive(blur), positive(pupil),
    )  # fmt: skip


def near_limit_mm(subject: Measure, focal_length: Measure, f_number: Measure, blur: Measure, pupil: Measure) -> Measure:
    """The nearest sharp point, f + f*f(1 - N*c/(p*f)) / (x + N*c) with x = f*f/(u - f). The subject may be infinite.

    Source: similar triangles through the exit pupil.
    """
    return _enclosed(_near, subject, focal_length, f_number, blur, pupil)


def front_principal_to_subject_mm(distance: Measure, focal_length: Measure, hiatus: Measure) -> Measure:
    """u of a subject at D from the sensor: f + (S + sqrt(S*S - 4*f*f))/2 with S = D - 2f - HH', the larger root.

    Unknown where even the likeliest distance is nearer than the lens can focus (under 4f + HH'). Source: optics model,
    scale marks, and u = f + f*f/x.
    """
    if not (is_known(distance) and is_known(focal_length) and is_known(hiatus)) or focal_length.least <= 0:
        return UNKNOWN
    if distance.nominal - hiatus.nominal < 4 * focal_length.nominal:
        return UNKNOWN
    nearest = 2 * focal_length.least  # at life size; what is nearer cannot be in focus at all

    def subject(at: float, focal: float, gap: float) -> float:
        spread = at - 2 * focal - gap
        if spread == inf:
            return inf
        if spread < 2 * focal:
            return nearest
        return focal + (spread + sqrt(spread * spread - 4 * focal * focal)) / 2

    return enclose(subject, distance, focal_length, hiatus)


def near_limit_from_sensor_mm(
    distance: Measure, focal_length: Measure, hiatus: Measure, f_number: Measure, blur: Measure, pupil: Measure
) -> Measure:
    """The nearest sharp point from the sensor, for a subject at `distance` from the sensor (may be infinite).

    Limit and subject are told from the same plane, so what lies between them is the depth ahead.
    Source: optics model, D = u + HH' + f + x.
    """
    subject = front_principal_to_subject_mm(distance, focal_length, hiatus)
    if not (is_known(subject) and is_known(distance)):
        return UNKNOWN
    if distance.greatest < inf:
        return distance - depth_ahead_mm(subject, focal_length, f_number, blur, pupil)
    image = focal_length + focus.travel_to_mark_mm(distance, focal_length, hiatus)
    return near_limit_mm(subject, focal_length, f_number, blur, pupil) + (image + hiatus)


def far_limit_from_sensor_mm(
    distance: Measure, focal_length: Measure, hiatus: Measure, f_number: Measure, blur: Measure, pupil: Measure
) -> Measure:
    """The farthest sharp point from the sensor, for a subject at `distance` from it. Source: as for the near."""
    subject = front_principal_to_subject_mm(distance, focal_length, hiatus)
    return distance + depth_behind_mm(subject, focal_length, f_number, blur, pupil)


def point_blur_mm(
    point: Measure, subject: Measure, focal_length: Measure, f_number: Measure, pupil: Measure
) -> Measure:
    """Blur of a point at v with the lens focused at u: f*f|u - v| / (N(u - f)(v - f + f/p)); |x|/N for v infinite.

    Either may be infinite. Source: similar triangles through the exit pupil.
    """
    if not (is_known(point) and is_known(subject) and is_known(focal_length)):
        return UNKNOWN
    if min(point.least, subject.least) <= focal_length.greatest:
        return UNKNOWN
    found = enclose(_blur, point, subject, positive(focal_length), positive(f_number), positive(pupil))
    if is_known(found) and point.least <= subject.greatest and subject.least <= point.greatest:
        return ordered(0.0, found.greatest, found.nominal)  # the two may be at one distance
    return found


def _blur(point: float, subject: float, focal: float, stop: float, pupil: float) -> float:
    if point == inf:
        return focal * focal / (stop * (subject - focal))
    # written so that an infinite subject gives its limit
    off = abs(1.0 - (point - focal) / (subject - focal))
    return focal * focal * off / (stop * (point - focal + focal / pupil))


def _near(subject: float, focal: float, stop: float, blur: float, pupil: float) -> float:
    extension, slack = focal * focal / (subject - focal), stop * blur
    return focal + focal * focal * (1 - slack / (pupil * focal)) / (extension + slack)


def _ahead(subject: float, focal: float, stop: float, blur: float, pupil: float) -> float:
    magnified, slack = focal / (subject - focal), stop * blur
    reach = magnified * (magnified + slack / focal)
    return slack * (1 + magnified / pupil) / reach if reach > 0 else inf


def _behind(subject: float, focal: float, stop: float, blur: float, pupil: float) -> float:
    magnified, slack = focal / (subject - focal), stop * blur
    reach = magnified * (magnified - slack / focal)
    return slack * (1 + magnified / pupil) / reach if reach > 0 else inf


def _total(subject: float, focal: float, stop: float, blur: float, pupil: float) -> float:
    return _ahead(subject, focal, stop, blur, pupil) + _behind(subject, focal, stop, blur, pupil)


def _enclosed(
    formula: Callable[..., float], subject: Measure, focal: Measure, stop: Measure, blur: Measure, pupil: Measure
) -> Measure:
    """One of the formulas above on intervals, while the subject lies beyond f and N*c under p*f; else unknown.

    There each formula rises or falls steadily in every input, as its derivatives show.
    """
    stop, blur, pupil, focal = positive(stop), positive(blur), positive(pupil), positive(focal)
    if not (is_known(subject) and is_known(focal) and is_known(stop) and is_known(blur) and is_known(pupil)):
        return UNKNOWN
    if subject.least <= focal.greatest or stop.greatest * blur.greatest >= pupil.least * focal.least:
        return UNKNOWN
    return enclose(formula, subject, focal, stop, blur, pupil)
