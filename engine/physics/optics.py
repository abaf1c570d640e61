"""Principal planes, front focus and pupils of a lens: from its own facts where they are known, else by construction."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from math import inf
from typing import Final

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, is_known, known_or
from engine.physics.enclose import enclose, ordered

_HEAD: Final = "construction-"
_T0, _HIATUS, _PUPIL = "-front-to-sensor", "-hiatus", "-pupil"
MODEL_ERROR: Final = "focus-model-error"
_NAMES: Final = ("hiatus_mm", "front_focal_offset_mm", "front_to_sensor_mm", "pupil_magnification")
_NO_ERROR: Final = Interval.exact(0.0)


@compact
class Construction:
    """A class of lens constructions: what front glass to sensor, T0, goes with. Shares are fractions of f."""

    t0_share: Interval
    hiatus_share: Interval
    pupil: Interval


@compact
class Optics:
    """What the distances of a lens hang on, in mm. `assumed`: which of them are assumed by construction.

    `relative_error`: what the model adds to distances worked out from assumed planes; exact 0 where none is.
    """

    hiatus_mm: Measure
    front_focal_offset_mm: Measure
    front_to_sensor_mm: Measure
    pupil_magnification: Measure
    assumed: tuple[str, ...]
    relative_error: Interval


@compact
class _Shares:
    """Hiatus, front focal offset and T0 as fractions of f, and the pupil magnification."""

    hiatus: Interval
    offset: Interval
    t0: Interval
    pupil: Interval


def constructions(assumptions: Mapping[str, Interval]) -> tuple[Construction, ...]:
    """The rows of the assumptions `construction-CLASS-front-to-sensor`, `-hiatus` and `-pupil`, by rising T0/f."""
    classes = [
        name.removeprefix(_HEAD).removesuffix(_T0)
        for name in assumptions
        if name.startswith(_HEAD) and name.endswith(_T0)
    ]
    rows = [Construction(*(assumptions[_HEAD + name + part] for part in (_T0, _HIATUS, _PUPIL))) for name in classes]
    return tuple(sorted(rows, key=lambda row: row.t0_share.least))


def resolve_optics(
    focal_length_mm: Measure,
    *,
    front_to_sensor_mm: Measure = UNKNOWN,
    hiatus_mm: Measure = UNKNOWN,
    front_focal_offset_mm: Measure = UNKNOWN,
    pupil_magnification: Measure = UNKNOWN,
    register_mm: Measure = UNKNOWN,
    assumptions: Mapping[str, Interval],
) -> Optics:
    """Everything that follows from the facts of a lens by HH' = a + T0 - 2f; what does not is assumed by construction.

    `front_to_sensor_mm`: T0, front glass to sensor with the lens at infinity. `register_mm`: the lens's register,
    which T0 is not under while the front glass stands ahead of the seat; it narrows what has to be assumed where T0
    is not known. Source: optics model, link between the facts and lens facts by construction.
    """
    f, t0, gap, offset = focal_length_mm, front_to_sensor_mm, hiatus_mm, front_focal_offset_mm
    gap = known_or(gap, offset + t0 - 2 * f)
    offset = known_or(offset, gap + 2 * f - t0)
    t0 = known_or(t0, gap - offset + 2 * f)
    assumed = [
        name for name, value in zip(_NAMES, (gap, offset, t0, pupil_magnification), strict=True) if not is_known(value)
    ]
    rows = constructions(assumptions)
    if not (assumed and rows and is_known(f)):
        return Optics(gap, offset, t0, pupil_magnification, (), _NO_ERROR)
    shares = _shares(rows, f, t0, register_mm)
    if not is_known(t0) and not is_known(offset):
        t0 = shares.t0 * f
        offset = UNKNOWN if is_known(gap) else shares.offset * f
    gap = known_or(gap, shares.hiatus * f)
    offset = known_or(offset, gap + 2 * f - t0)
    t0 = known_or(t0, gap - offset + 2 * f)
    planes_assumed = any(name != "pupil_magnification" for name in assumed)
    return Optics(
        gap,
        offset,
        t0,
        known_or(pupil_magnification, shares.pupil),
        tuple(assumed),
        assumptions[MODEL_ERROR] if planes_assumed else _NO_ERROR,
    )


def _shares(rows: Sequence[Construction], f: Interval, t0: Measure, register: Measure) -> _Shares:
    """What the classes that T0/f may belong to allow, all together."""
    shortest, longest = rows[0].t0_share.least, rows[-1].t0_share.greatest
    if is_known(t0):
        share = t0 / f
    else:
        least = max(shortest, (register / f).least) if is_known(register) else shortest
        share = Interval.between(least, max(least, longest))
    fitting = _fitting(rows, share)
    # Longer than any sample: a falls as T0/f grows, so HH' = a + T0 - 2f grows by less than T0 does.
    longer = max(0.0, share.greatest - longest)
    gaps = [row.hiatus_share.widened(0.0, longer if row is rows[-1] else 0.0) for row, _ in fitting]
    offsets = [gap - part + 2 for gap, (_, part) in zip(gaps, fitting, strict=True)]
    if len(fitting) == 1:
        likeliest, likely_pupil, likely_share = gaps[0].nominal, fitting[0][0].pupil.nominal, share.nominal
    else:
        # several classes: the thin lens lies between them all, with HH' = 0, p = 1, T0 = f
        likeliest, likely_pupil, likely_share = 0.0, 1.0, share.nominal if is_known(t0) else 1.0
    share = _around([share], likely_share)
    gap = _around(gaps, likeliest)
    return _Shares(
        hiatus=gap,
        offset=_around(offsets, gap.nominal - share.nominal + 2),
        t0=share,
        pupil=_around([row.pupil for row, _ in fitting], likely_pupil),
    )


def _fitting(rows: Sequence[Construction], share: Interval) -> list[tuple[Construction, Interval]]:
    """The classes that T0/f may belong to, each with its part of `share`. Between two classes it may be either."""
    fitting = []
    for n, row in enumerate(rows):
        below = rows[n - 1].t0_share.greatest if n else -inf
        above = rows[n + 1].t0_share.least if n + 1 < len(rows) else inf
        least, greatest = min(below, row.t0_share.least), max(above, row.t0_share.greatest)
        inside = share.greatest >= row.t0_share.least and share.least <= row.t0_share.greatest
        if inside or (share.greatest > least and share.least < greatest):
            part = Interval.between(max(share.least, least), min(share.greatest, greatest))
            fitting.append((row, part))
    return fitting


def _around(parts: Sequence[Interval], likeliest: float) -> Interval:
    """The interval around all parts, likeliest as near to `likeliest` as they allow."""
    least, greatest = min(part.least for part in parts), max(part.greatest for part in parts)
    return ordered(least, greatest, min(max(likeliest, least), greatest))


def front_focus_of_reading_mm(focal_length: Measure, room: Measure, extension: Measure) -> Measure:
    """a = w - f*f/x by one tape reading w at an extension x, above 0 ahead of the glass. Source: w = a + f*f/x."""
    if not is_known(extension) or extension.least <= 0:
        return UNKNOWN
    return enclose(lambda f, w, x: w - f * f / x, focal_length, room, extension)
