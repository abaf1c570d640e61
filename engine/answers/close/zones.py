"""Which stop holds a wanted zone sharp, and where to focus for it."""

from __future__ import annotations

from math import inf, isinf

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import numbers
from engine.answers.parts.wording import distance, f_number, trimmed
from engine.answers.seat.distances import Distances
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import depth, exposure
from grammar.questions import Question

ENDLESS = "infinity"
NO_IRIS = "no-iris-beyond"  # of the facts: the f-number


def zone_of(question: Question) -> tuple[float, float] | None:
    """Near and far end of the zone that shall be sharp, in mm; the far one may be infinite."""
    told = question.said("zone")
    ends = numbers(question, "zone")
    if told is None or not ends:
        return None
    return (ends[0], inf) if ENDLESS in told or len(ends) == 1 else (ends[0], ends[1])


def next_on_ring(needed: float, facts: Catalogue) -> tuple[float | None, str]:
    """The full stop that is enough, and the words for it; None where no iris closes so far."""
    if needed > facts.assumptions[NO_IRIS].value.greatest:
        return None, ", smaller than any iris closes: it cannot be held in one picture"
    ring = exposure.next_full_stop(needed)
    return ring, f", so f/{f_number(ring)} on the ring"


def stop_for_zone(
    lens: Distances,
    zone: tuple[float, float],
    blur: Interval,
    form: Format,
    at: float | None,
    feet: bool,
    facts: Catalogue,
) -> Told:
    """The f-number that just holds the zone, the next stop on the ring, and the distance to set."""
    near, far = Interval.exact(zone[0]), Interval(zone[1], zone[1], zone[1])
    needed = depth.f_number_for_zone(near, far, lens.focal, blur)
    focus = depth.focus_for_zone_mm(near, far)
    if not (is_known(needed) and is_known(focus)) or isinf(needed.nominal):
        return Told()
    ends = f"{distance(zone[0], feet)} to {ENDLESS if isinf(zone[1]) else distance(zone[1], feet)}"
    case = f"{trimmed(lens.focal.nominal, 1)} mm, {form.name}, sharp from {ends}"
    rows = [Quantity("f_number", needed, case), Quantity("focus_from_sensor_mm", focus, case)]
    text = f"{case}: f/{f_number(needed.nominal)} at least"
    ring, words = next_on_ring(needed.nominal, facts)
    text += words
    if ring is not None:
        rows.append(Quantity("f_number", Interval.exact(ring), f"{case}, next full stop"))
        text += f", focused at {distance(focus.nominal, feet)}"
    told = Told((Line("head", f"{text}."),), tuple(rows))
    if at is None:
        return told
    enough = "is enough" if at >= needed.nominal * 0.97 else "is not enough"
    return Told((Line("head", f"f/{f_number(at)} {enough} for {ends}."),)) + told
