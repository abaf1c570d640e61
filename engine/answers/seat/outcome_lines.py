"""What a chain makes of the lens, a line each: mark of infinity, share of the frame lit, crop, and the first check."""

from __future__ import annotations

from math import isinf
from typing import Final

from engine.answers.parts.wording import (
    FULL,
    SEAT_READS_MM,
    about,
    distance,
    f_number,
    percent,
    ranged,
    small_mm,
    trimmed,
)
from engine.base.interval import Interval, Measure, is_known
from engine.base.span import Span
from engine.facts.records import Format
from engine.judging.judge import Judged
from engine.physics import coverage
from engine.physics.trace import Given
from grammar.questions import Question

FIRST_CHECK: Final = "first check: "  # how the line begins that tells it


def mark_line(judged: Judged, feet: bool = False) -> str | None:
    """Where infinity falls on the scale of a lens that sits too close, and the shim that puts it back."""
    off, at = mark_of(judged, feet)
    if at is None:
        return None
    text = f"infinity would be sharp at the {at} mark of its scale"
    return f"{text}; a shim of {small_mm(-off)} puts it back" if judged.verdict == "infinity" else text


def mark_of(judged: Judged, feet: bool = False) -> tuple[float, str | None]:
    """By how much a lens sits too close, mm, and the mark of its scale at which infinity then falls; None for none."""
    trace = judged.measured_trace
    error, mark = trace.value("register_error_mm"), trace.value("infinity_mark_mm")
    if "no-focusing" in judged.setup.lens_mount.traits:
        return 0.0, None  # it has no scale
    if not isinstance(error, Span) or not error.is_fixed or not is_known(error.shortest):
        return 0.0, None
    off = error.shortest.nominal
    if off > -SEAT_READS_MM or not isinstance(mark, Interval) or isinf(mark.nominal):
        return off, None
    return off, about(mark, lambda value: distance(value, feet))


def with_mark(judged: Judged, question: Question) -> str:
    """What comes behind the outcome where it is asked: by how much the seat is off, at which mark infinity falls."""
    asked = judged.verdict == "infinity" and question.mentions("infinity-falls-at", "where-on-scale")
    at = mark_of(judged, question.feet)[1] if asked else None
    error = judged.measured_trace.value("register_error_mm") if question.mentions("off-by-asked") else None
    if isinstance(error, Span) and error.is_fixed and is_known(error.shortest):
        off = error.shortest.nominal
        way = "too far out" if off > 0 else "too close"
        return f", {small_mm(abs(off))} {way}" if abs(off) > SEAT_READS_MM else ", just right"
    return f", at the {at} mark of its scale" if at is not None else ""


def typical_cover_line(judged: Judged, circle: Interval | None) -> str | None:
    """The share lit where no focal length is told, by the circle that such lenses usually throw; None if it is all."""
    form = judged.setup.format
    if form is None or circle is None:
        return None
    lit = lit_of(circle, form)
    if not is_known(lit) or lit.least > FULL:
        return None
    return _lights(judged, lit, circle, form.name)


def coverage_line(judged: Judged) -> str | None:
    """How much of the frame is lit."""
    trace, form = judged.trace, judged.setup.format
    circle, lit = trace.value("image_circle_at_far_mm"), trace.value("lit_share")
    if form is None or not isinstance(circle, Interval) or not isinstance(lit, Interval):
        return None
    return _lights(judged, lit, circle, form.name)


def lit_of(circle: Measure, form: Format) -> Measure:
    """The share of a format that a circle lights, from 0 to 1."""
    return coverage.lit_share(circle, Interval.exact(form.width_mm), Interval.exact(form.height_mm))


def _lights(judged: Judged, lit: Interval, circle: Interval, name: str) -> str:
    """The share of a format that is lit, and by which circle; of one that is only known at its least, at least so.

    Where the body may also have a smaller format, how much of that.
    """
    given = judged.trace.given["image_circle_mm"]
    held = _held(lit, name, given)
    smaller = judged.setup.smaller_format
    share = lit_of(circle, smaller) if smaller is not None and lit.least <= FULL else None
    if smaller is not None and isinstance(share, Interval):
        of_smaller = _held(share, smaller.name, given)
        held += f"{' and ' if share.least > FULL else ', '}{of_smaller.removeprefix('lights ')}"
    if given.at_least:
        return f"{held}: circle at least {trimmed(circle.least, 1)} mm (how much more such lenses throw is not known)"
    size = ranged(circle, lambda value: f"{trimmed(value, 1)} mm")
    return f"{held}: circle {size}{' (typical of such lenses)' if given.assumed else ''}"


def _held(lit: Interval, name: str, given: Given) -> str:
    if lit.least > FULL:
        return f"covers {name}"
    share = f"at least {percent(lit.least)}" if given.at_least else ranged(lit, percent)
    return f"lights {share} of {name}"


def crop_line(judged: Judged) -> str | None:
    """The crop factor, and what the focal length looks like on full frame; None where the crop changes nothing."""
    trace = judged.measured_trace
    crop, equal = trace.value("crop_factor"), trace.value("equivalent_focal_mm")
    if judged.setup.format is None or not isinstance(crop, Interval) or not isinstance(equal, Interval):
        return None
    if abs(crop.nominal - 1) < 0.01:
        return None
    return f"crop factor {trimmed(crop.nominal, 2)} on {judged.setup.format.name}: looks like {equal.nominal:.0f} mm"


def check_line(judged: Judged, feet: bool = False) -> str | None:
    """One distance that, if sharp where predicted, proves the seat."""
    trace = judged.measured_trace
    focal, allowance = trace.value("focal_length_mm"), trace.value("infinity_allowance_mm")
    far = trace.value("far_from_sensor_mm")
    stop = "wide open" if judged.setup.f_number is None else f"at f/{f_number(judged.setup.f_number)}"
    if judged.verdict == "macro-only" and isinstance(far, Interval) and 0 < far.nominal < 1e6:
        return (
            f"{FIRST_CHECK}focus ring at infinity, {stop}: a card {distance(far.nominal, feet)} "
            "from the sensor must be sharp"
        )
    if judged.verdict == "infinity" and isinstance(focal, Interval) and isinstance(allowance, Interval):
        least = focal.nominal**2 / max(allowance.nominal, 1e-6)
        return (
            f"{FIRST_CHECK}{stop}, something farther than {distance(least, feet)} must come sharp "
            "at or just before the infinity mark"
        )
    return None
