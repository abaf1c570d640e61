"""One judged chain in words: what the person will live with first, then seat, iris, clearance, cautions, checks."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from engine.answers.parts.answer import Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import (
    SEAT_READS_MM,
    about,
    distance,
    f_number,
    listed,
    quantity_text,
    ranged,
    small_mm,
    times,
)
from engine.answers.seat.finder import for_finder
from engine.base.interval import Interval, Unknown, is_known
from engine.base.span import Span
from engine.chains.ring_map import Joint
from engine.chains.walk import ADDED_FOCUSING, Chain
from engine.facts.records import Adapter
from engine.judging.judge import Finding, Judged
from engine.physics.trace import Trace

_SIDED = "{register_error_mm} off"  # by how much a seat is off, either way
VERDICT_WORDS = {
    "infinity": "reaches infinity",
    "macro-only": "close-up only",
    "unusable": "no use",
}
CERTAINTY_WORDS = {
    "certain": "certain",
    "likely": "likely",
    "borderline": "borderline",
    "unknown": "a fact is missing",
}


def chain_title(judged: Judged, knowledge: Knowledge) -> str:
    """The chain in order from the lens: 'C to E-mount cup + ...'."""
    parts = [link_name(for_finder(link, judged, knowledge), knowledge) for link in judged.chain.links]
    return " + ".join(parts) if parts else "straight on, no adapter"


def link_name(link: Adapter | Joint, knowledge: Knowledge) -> str:
    """One link of a chain in words: the adapter by its name, a joint by how the two mounts meet."""
    if isinstance(link, Adapter):
        return link.name
    front, rear = (knowledge.catalogue.mounts[name].designation for name in (link.front, link.rear))
    if link.kind == "held":
        return f"held against {rear}, which takes no {front} lens"
    return f"screwed straight into {rear}" if link.kind == "thread" else f"{front} bayonet seated in {rear}"


def template(text: str, trace: Trace, feet: bool = False) -> str:
    """A rule's sentence with its quantities filled in; how far a seat is off is told with the side it is off to."""
    error = trace.value("register_error_mm") if _SIDED in text else None
    if isinstance(error, Span) and is_known(error.shortest):
        text = text.replace(_SIDED, _off(error.shortest.nominal))
    out: list[str] = []
    for n, part in enumerate(text.replace("}", "{").split("{")):
        out.append(quantity_text(part, trace.value(part), feet) if n % 2 else part)
        if n % 2 and part == "infinity_from_f_number" and curing_stop(trace) is None:
            out.append(", which it does not close to,")
    return "".join(out)


def curing_stop(trace: Trace) -> float | None:
    """The f-number from which depth of focus reaches infinity; None where the lens does not close that far."""
    stop, smallest = trace.value("infinity_from_f_number"), trace.value("smallest_stop")
    if not isinstance(stop, Interval) or not isinstance(smallest, Interval):
        return None
    return stop.nominal if 0 < stop.nominal <= smallest.nominal else None


def life_line(judged: Judged, feet: bool = False) -> str:
    """What the person will live with: 'reaches infinity', 'stops at 3.6 m', 'close-up only, at 17 cm'."""
    trace = judged.measured_trace
    far, near = judged.trace.value("far_from_sensor_mm"), judged.trace.value("near_from_sensor_mm")
    if judged.certainty == "unknown":
        return unknown_line(judged)
    if judged.verdict == "infinity":
        text = VERDICT_WORDS["infinity"]
        if isinstance(near, Interval) and 0 < near.nominal < inf and is_known(trace.value("travel_mm")):
            text += f", and comes as near as {distance(near.nominal, feet)} from the sensor"
        elif _has_focusing(judged.chain) and isinstance(near, Interval) and near.nominal < inf:
            text += f", and with the helicoid out to {distance(near.nominal, feet)} from the sensor"
        return text
    if judged.verdict == "unusable":
        return _why_unusable(judged)
    if isinstance(far, Interval):
        show = lambda value: distance(value, feet)  # noqa: E731
        text = f"stops at {about(far, show)} from the sensor"
        stop = curing_stop(trace)
        if stop is not None:
            text += f"; infinity from f/{f_number(stop)}"
        return text
    return "close-up only: how close depends on the focal length"


def unknown_line(judged: Judged) -> str:
    """What comes out provided that the facts which are missing allow it, and what if they do not."""
    clauses = [finding.rule.provided for finding in judged.findings if not finding.decided and finding.rule.provided]
    provided = listed(list(dict.fromkeys(clauses))) or "the facts that are missing allow it"
    if judged.best == judged.worst:
        return VERDICT_WORDS[judged.best]
    return f"{VERDICT_WORDS[judged.best]}, provided {provided}; else {VERDICT_WORDS[judged.worst]}"


def _why_unusable(judged: Judged) -> str:
    for finding in judged.findings:
        if finding.limits == "unusable" and finding.decided:
            return "no use: " + template(finding.rule.because, judged.measured_trace)
    return "no use"


def _has_focusing(chain: Chain) -> bool:
    return any(adapter.kind in ADDED_FOCUSING for adapter in chain.adapters)


def seat_line(judged: Judged) -> str:
    """Seat and margin in one line."""
    seat, error = judged.measured_trace.value("seat_mm"), judged.trace.value("register_error_mm")
    if not isinstance(seat, Span) or not isinstance(error, Span):
        return ""
    if isinstance(error.shortest, Unknown) or isinstance(error.longest, Unknown):
        return f"seat {_seat_text(seat)}; how far off that is cannot be told without the lens's register"
    if not error.is_fixed:
        low, high = error.shortest.nominal, error.longest.nominal
        return f"seat {_seat_text(seat)}: settable from {_off(low)} to {_off(high)}{_at_infinity(judged, low, high)}"
    low, high = error.shortest.least, error.shortest.greatest
    middle = error.shortest.nominal
    by = "by what such lenses differ" if judged.trace.given["lens_register_mm"].assumed else "in the making"
    spread = f", give or take {small_mm(max(high - middle, middle - low))} {by}" if high - low > SEAT_READS_MM else ""
    return f"seat {_seat_text(seat)}: {_off(middle)}{spread}"


def _at_infinity(judged: Judged, low: float, high: float) -> str:
    """How long the one piece that is drawn out stands for infinity."""
    moving = [adapter for adapter in judged.chain.adapters if not adapter.thickness_mm.is_fixed]
    if len(moving) != 1 or not low < 0 < high or not is_known(moving[0].thickness_mm.shortest):
        return ""
    rings = moving[0].fixed_mm
    at = moving[0].thickness_mm.shortest.nominal - low - rings
    which = f"the {moving[0].kind}" if rings else "it"
    return f"; infinity with {which} at {small_mm(at)}, {small_mm(-low)} out"


def _off(error_mm: float) -> str:
    if abs(error_mm) < SEAT_READS_MM:
        return "just right"
    return f"{small_mm(abs(error_mm))} too {'far out' if error_mm > 0 else 'close'}"


def _seat_text(seat: Span) -> str:
    shortest, longest = seat.shortest, seat.longest
    if isinstance(shortest, Unknown) or isinstance(longest, Unknown):
        return "not known"
    if not seat.is_fixed:
        return f"{small_mm(shortest.nominal)} to {small_mm(longest.nominal)}"
    if shortest.nominal < 0:
        return f"{small_mm(-shortest.nominal)} inside the body flange"
    return small_mm(shortest.nominal)


def margin_line(judged: Judged) -> str | None:
    """'0.26 mm too far; f/8.7 cures it on this format', or how much room is left."""
    if judged.setup.judged_format is None:
        return None
    trace = judged.measured_trace
    allowance, extension = trace.value("infinity_allowance_mm"), trace.value("extension_mm")
    if not isinstance(allowance, Interval) or not isinstance(extension, Span):
        return None
    shortest = extension.shortest
    if isinstance(shortest, Unknown):
        return None
    name = judged.setup.judged_format.name
    given = trace.given["f_number"]
    at = f"at f/{f_number(given.value.nominal)}" if isinstance(given.value, Interval) else ""
    at += " (assumed)" if given.assumed else ""
    over = shortest.nominal - allowance.nominal
    forgives = f"depth of focus {at} on {name} forgives {small_mm(allowance.nominal)}"
    if over > 0:
        cure = curing_stop(trace)
        more = f"; f/{f_number(cure)} would cure it" if cure is not None else ""
        return f"{forgives}, {small_mm(over)} less than is needed{more}"
    return forgives


def focus_lines(judged: Judged, feet: bool = False) -> Iterator[str]:
    """From where to where it focuses, with magnification."""
    if judged.verdict == "unusable" or (judged.verdict != "macro-only" and not _has_focusing(judged.chain)):
        return
    trace = judged.trace
    show = lambda value: distance(value, feet)  # noqa: E731
    far_front = trace.value("far_from_front_glass_mm")
    m_far, m_near = trace.value("far_magnification"), trace.value("near_magnification")
    near = trace.value("near_from_sensor_mm")
    if judged.verdict == "macro-only" and isinstance(far_front, Interval) and far_front.greatest > 0:
        text = f"at its farthest {ranged(far_front.at_least(0.0), show)} ahead of the front glass"
        if isinstance(m_far, Interval):
            text += f", magnification {ranged(m_far, times)}"
        yield text
    if isinstance(near, Interval) and isinstance(m_near, Interval):
        yield f"at its nearest {about(near, show)} from the sensor, magnification {ranged(m_near, times)}"


def warned_of_overhang(judged: Judged) -> bool:
    """Whether a finding tells how far the rear reaches behind the body's flange."""
    return any(finding.decided and "{overhang_mm}" in finding.rule.because for finding in judged.findings)


def clearance_line(judged: Judged) -> str:
    """The overhang behind the body flange as one caliper number; nothing where a caution tells it."""
    if warned_of_overhang(judged):
        return ""
    overhang = judged.trace.value("overhang_mm")
    allowed = judged.trace.value("clear_depth_mm")
    if not isinstance(overhang, Interval):
        if any(finding.rule.measure and finding.rule.advice for finding in judged.findings):
            return ""  # a caution says what to measure
        return "rear: how far it reaches is not known; measure it from the lens flange before mounting"
    told = (
        f"rear: {small_mm(overhang.nominal)} behind the body flange"
        if overhang.nominal > 0
        else "rear: does not reach past the body flange"
    )
    if isinstance(allowed, Interval):
        return f"{told}; {small_mm(allowed.nominal)} is free there"
    return f"{told}; how much is free there is not published, so look before you close up"


def finding_lines(judged: Judged, knowledge: Knowledge, feet: bool = False) -> Iterator[Line]:
    """Cautions and notes, dangers first; undecided ones with the measurement that decides."""
    order = {"danger": 0, "caution": 1, "note": 2}
    for finding in sorted(judged.findings, key=lambda row: order[row.severity]):
        if finding.rule.id in ("seated-too-far-out", "seated-too-close") and finding.decided:
            continue  # the line about the seat has said it
        yield Line(finding.severity, finding_text(finding, judged, knowledge, feet))


def finding_text(finding: Finding, judged: Judged, knowledge: Knowledge, feet: bool = False) -> str:
    """What a rule found in words, with what would decide it and whom to ask; `feet`: distances in feet."""
    rule = finding.rule
    if not finding.decided:
        text = template(rule.undecided or rule.because, judged.measured_trace, feet)
        return f"not decided: {text}." + (f" To decide it, {rule.measure}." if rule.measure else "")
    text = template(rule.because, judged.measured_trace, feet) + "."
    if rule.measure and not rule.undecided:
        text += f" Measure {rule.measure}."
    advice = knowledge.catalogue.advice.get(rule.advice or "")
    if advice is not None and advice.defer_to:
        text += f" If in doubt ask {advice.defer_to[:1].lower()}{advice.defer_to[1:].rstrip('.')}."
    return text


def variants_text(judged: Judged) -> str | None:
    twins = [name for row in judged.chain.variants.values() for name in row]
    return f"also sold as {listed(twins)}" if twins else None
