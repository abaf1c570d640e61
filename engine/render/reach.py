"""From where to where a stack is sharp, and what its ring reads: the numbers that the scales are drawn from."""

from __future__ import annotations

from collections.abc import Sequence
from math import floor, inf, isfinite, log10
from typing import Final

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.base.span import Span
from engine.base.units import MM_PER_FOOT, MM_PER_INCH
from engine.judging.judge import Judged
from engine.physics.focus import from_sensor_mm, travel_to_mark_mm
from engine.physics.quantities import PARTLY_MOVED
from engine.render.stack import measure, nominal

FAR: Final = 1e7  # 10 km: nobody tells it from infinity
MARKS: Final = 8
NOTHING: Final = 1e-9
INCHES: Final = 36  # below so many, a distance is told in inches


@compact
class Reach:
    """Lengths in mm at the likeliest values; None: not known.

    `low`, `high`: nearest and farthest sharp plane from the sensor, `high` infinite where far things are sharp;
    `carried`: only because the depth of focus forgives the rest. `shortest`: the extension with the ring at its
    infinity stop; `travel`: what the ring adds to it. `own_ring`: it is the lens's, not a helicoid's of the stack.
    """

    moves_whole: bool
    focal: float | None
    hiatus: float
    shortest: float | None
    travel: float | None
    own_ring: bool
    glass: bool
    far: Measure
    near: Measure
    low: float | None
    high: float | None
    carried: bool
    front: float | None  # front glass from the sensor, at the far end
    inside: bool  # at the near end the subject would stand inside the lens
    feet: bool = False  # distances are told in feet and inches

    def sharp_at(self, advance: float) -> float:
        """What is sharp, from the sensor, the ring so far from its infinity stop; infinite at and past infinity."""
        if self.focal is None or self.shortest is None:
            raise ValueError("nothing is known of what is sharp")
        extension = self.shortest + advance
        if extension <= NOTHING:
            return inf
        value = from_sensor_mm(Interval.exact(self.focal), Interval.exact(self.hiatus), Interval.exact(extension))
        return value.nominal if is_known(value) and value.nominal < FAR else inf

    def engraved_at(self, mark: float) -> float | None:
        """How far from the infinity stop the lens's own scale has this mark; None where it cannot have it."""
        if self.focal is None:
            return None
        if mark == inf:
            return 0.0
        exact = (Interval.exact(value) for value in (mark, self.focal, self.hiatus))
        return nominal(travel_to_mark_mm(*exact))

    def marked_anew_at(self, mark: float) -> float | None:
        """Where the mark belongs on this stack; None where the ring does not come to it."""
        own = self.engraved_at(mark)
        if own is None or self.shortest is None:
            return None
        at = own - self.shortest
        return max(at, 0.0) if -1e-7 <= at <= (self.travel if self.travel is not None else inf) + 1e-7 else None


def reach_of(judged: Judged, feet: bool = False) -> Reach:
    """The reach of a judged chain, at the likeliest values. `feet`: how its distances are to be told."""
    trace, setup = judged.trace, judged.setup
    whole = setup.lens.focusing not in PARTLY_MOVED
    span = trace.value("extension_mm")
    extension = span if isinstance(span, Span) else Span.fixed(UNKNOWN)
    shortest = nominal(extension.shortest)
    own = nominal(measure(trace, "travel_mm"))
    seat = trace.value("seat_mm")
    settable = 0.0
    if isinstance(seat, Span) and is_known(seat.shortest) and is_known(seat.longest):
        settable = seat.longest.nominal - seat.shortest.nominal
    far, near = measure(trace, "far_from_sensor_mm"), measure(trace, "near_from_sensor_mm")
    focal, hiatus = nominal(measure(trace, "focal_length_mm")), nominal(measure(trace, "hiatus_mm")) or 0.0
    allowance = nominal(measure(trace, "infinity_allowance_mm"))
    own_ring = own is None or own > 0
    low, high = nominal(near), nominal(far)
    carried = False
    if low is not None and high is not None:
        low, high = min(low, high), max(low, high)
    longest = nominal(extension.longest)
    if low is not None and focal and shortest is not None and longest is not None and shortest < focal < longest:
        low = min(low, 4 * focal + hiatus)  # between the two ends it comes as near as life size
    low, high = (inf if end is not None and end > FAR else end for end in (low, high))
    if high is not None and isfinite(high) and shortest is not None and allowance is not None and shortest <= allowance:
        high, carried = inf, True
    front_far, front_near = measure(trace, "far_from_front_glass_mm"), measure(trace, "near_from_front_glass_mm")
    return Reach(
        whole, focal, hiatus, shortest, own if own_ring else settable or None, own_ring, trace.value("glass") is True,
        far, near, low, high, carried, _front(far, front_far, near, front_near),
        is_known(front_near) and front_near.nominal < 0, feet,
    )  # fmt: skip


def _front(far: Measure, front_far: Measure, near: Measure, front_near: Measure) -> float | None:
    """The front glass from the sensor: the farthest sharp plane told from both, or else the nearest."""
    for sensor, glass in ((far, front_far), (near, front_near)):
        if is_known(sensor) and is_known(glass) and sensor.nominal < FAR and glass.nominal < FAR:
            return sensor.nominal - glass.nominal
    return None


def roundest(low: float, high: float) -> float:
    """The number with the fewest figures in low..high, both above 0."""
    power = floor(log10(high))
    for digit in range(8):
        for step in (5, 2, 1):
            unit = step * 10.0 ** (power - digit)
            at = floor(high / unit + 1e-9) * unit
            if at >= low * (1 - 1e-12) and at > 0:
                return float(f"{at:.12g}")
    return high


def round_marks(reach: Reach) -> tuple[float, ...]:
    """Round distances that the ring comes to, about evenly along it, far ones first; up to life size."""
    if reach.travel is None or reach.shortest is None or reach.focal is None or reach.glass:
        return ()
    least, greatest = max(-reach.shortest, 0.0), min(reach.travel, reach.focal - reach.shortest)
    if greatest <= least:
        return ()
    marks = [inf] if -NOTHING <= -reach.shortest <= reach.travel else []
    step = (greatest - least) / MARKS
    for n in range(MARKS):
        one, other = reach.sharp_at(least + (n + 0.75) * step), reach.sharp_at(least + (n + 0.25) * step)
        if isfinite(one) and one > 0:
            unit = unit_mm(one, reach.feet)
            value = roundest(one / unit, (other if isfinite(other) else 2 * one) / unit) * unit
            if value not in marks:
                marks.append(value)
    return tuple(marks)


def engraved_marks(reach: Reach, judged: Judged, marks: Sequence[float]) -> tuple[float, ...]:
    """The marks of the lens's own scale, far ones first: those told, else its infinity stop and its nearest mark."""
    if not reach.own_ring:
        return ()
    told = tuple(sorted({mark for mark in marks if mark > 0}, reverse=True))
    if told:
        return tuple(mark for mark in told if reach.engraved_at(mark) is not None)
    nearest = nominal(judged.setup.lens.close_focus_mm)
    found = (inf, nearest) if nearest is not None else (inf,)
    return tuple(mark for mark in found if reach.engraved_at(mark) is not None)


def unit_mm(mark: float, feet: bool) -> float:
    """The unit in which a distance is told, in mm: what is round in it makes a good mark."""
    if feet:
        return MM_PER_INCH if mark < INCHES * MM_PER_INCH else MM_PER_FOOT
    return 1.0 if mark < 50 else 10.0 if mark < 1000 else 1000.0


def to_figures(mark: float, count: int, feet: bool) -> float:
    """A distance in mm rounded to `count` figures in the unit in which it is told."""
    unit = unit_mm(mark, feet)
    return float(f"{mark / unit:.{count}g}") * unit if isfinite(mark) else mark


def mark_text(mark: float, feet: bool = False) -> str:
    """A distance as it stands on a ring: '∞', '1.2 m', '45 cm', '8 mm'; '4 ft', '18 in'."""
    if mark == inf:
        return "∞"
    if feet:
        unit = unit_mm(mark * (1 + 1e-9), True)
        return f"{mark / unit:.4g} {'in' if unit == MM_PER_INCH else 'ft'}"
    if mark >= 1000:
        return f"{mark / 1000:.4g} m"
    if mark >= 50:
        return f"{mark / 10:.4g} cm"
    return f"{mark:.4g} mm"
