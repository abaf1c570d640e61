"""The picture close up on a judged chain: at its farthest, in steps, and at its nearest."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from engine.answers.close.close_rows import Shown, assumed_note, at_extension
from engine.answers.parts.answer import Answer, Line, Told
from engine.answers.parts.wording import about, distance
from engine.answers.seat.distances import Distances
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.facts.kinds import VERDICTS
from engine.judging.judge import Judged
from engine.physics.quantities import PARTLY_MOVED

STEPS = (("at the infinity mark", 0.0), ("a third out", 1 / 3), ("two thirds out", 2 / 3), ("at its nearest", 1.0))
DRAWS = (("drawn in, the lens at infinity", 0.0), ("half drawn out", 0.5), ("drawn out, the lens at infinity", 1.0))
STEPS_FROM = 1.3  # a range of magnifications narrower than this is told by its ends
LEAST_MAGNIFICATION = 0.005  # nearer infinity than this nothing of the picture is close up


def distances_on(judged: Judged, shown: Shown) -> Distances | None:
    """The distances of the lens of a chain; None behind glass, for a lens that moves only in part, or without f."""
    lens, trace = judged.setup.lens, judged.measured_trace
    if not is_known(lens.focal_length_mm) or lens.focusing in PARTLY_MOVED:
        return None
    if any(adapter.has_glass for adapter in judged.chain.adapters):
        return None
    register = trace.value("lens_register_mm")
    own = register if is_known(register) else judged.setup.lens_mount.register_mm
    return Distances(lens.focal_length_mm.nominal, shown.facts, None, lens, own)


def nearest_line(answer: Answer, feet: bool) -> Iterator[Line]:
    """How near a lens comes whose nearest mark is known, on a seat that keeps it from infinity."""
    judged = answer.chains[0].listed.judged if answer.chains else None
    if judged is None or judged.verdict != VERDICTS[1] or judged.certainty == "unknown":
        return
    near, travel = judged.trace.value("near_from_sensor_mm"), judged.measured_trace.value("travel_mm")
    own = isinstance(travel, Interval) and travel.nominal > 0
    if own and isinstance(near, Interval) and 0 < near.nominal < inf:
        yield Line(
            "head", f"At its nearest mark it is sharp {about(near, lambda one: distance(one, feet))} from the sensor."
        )


def close_table(answer: Answer, shown: Shown) -> Told:
    """The rows of the best chain of an answer; empty where it does not come close, or that is not known."""
    judged = answer.chains[0].listed.judged if answer.chains else None
    if judged is None:
        return Told()
    lens, extension = distances_on(judged, shown), judged.measured_trace.value("extension_mm")
    if not isinstance(extension, Span):
        return Told()
    low, high = extension.shortest, extension.longest
    if lens is None or not is_known(low):
        return Told()
    by_lens = is_known(high)
    if not is_known(high):
        # its own focusing is not known: the infinity mark alone, and what the pieces between add
        seat = judged.measured_trace.value("register_error_mm")
        high = seat.longest if isinstance(seat, Span) and is_known(seat.longest) else low
    shown = replace(shown, form=judged.setup.format or shown.form)
    told = Told()
    steps: tuple[tuple[str, float], ...]
    steps = STEPS if high.nominal > STEPS_FROM * low.nominal else (STEPS[0], STEPS[-1])
    steps = steps if by_lens else DRAWS
    steps = steps if high.nominal - low.nominal > 1e-6 else (("fixed", 0.0),)
    for name, share in steps:
        x = low.nominal + share * (high.nominal - low.nominal)
        if x / lens.focal.nominal < LEAST_MAGNIFICATION:
            continue
        end = {"at its nearest": "near", "at the infinity mark": "far", "fixed": "far", DRAWS[0][0]: "far"}.get(
            name, "focus"
        )
        lead = "at the infinity mark" if name == "fixed" else name
        told += at_extension(lens, x, shown, lead, end=end, lead=lead)
    return told + assumed_note(lens) if told.lines else told
