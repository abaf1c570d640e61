"""The focus ring marked anew for one chain, or a helicoid's settings; in words where that cannot be worked out."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import isinf

from engine.answers.parts.card_parts import Figure, Grid, Numbers, Text, span_start
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import SEAT_READS_MM, distance, small_mm, times
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.base.span import Span
from engine.base.units import MM_PER_FOOT
from engine.chains.walk import ADDED_FOCUSING, Chain
from engine.facts.records import Adapter
from engine.judging.judge import Judged
from engine.physics.focus import travel_to_mark_mm
from engine.physics.quantities import PARTLY_MOVED
from engine.physics.trace import Given, Trace

MOST_ROWS = 5
MOST_MARKS = 9  # of those told
METRES, FEET = "card-mark-metres-", "card-mark-feet-"
FROM_SENSOR = "focus_from_sensor_mm"
NOT_KNOWN: Text = ("not known",)
SIZED = 0.1  # magnification from which the size says more than the distance


def scale_of(
    judged: Judged, knowledge: Knowledge, numbers: Numbers, feet: bool, engraved: Sequence[float] = ()
) -> Grid | Text:
    """What each mark of the ring means on this chain; by the helicoid where the chain has one.

    `engraved`: the marks that the ring is told to bear, mm; none: those usual for such a lens.
    """
    lens = judged.setup.lens
    if lens.focusing in PARTLY_MOVED:
        return ("This lens does not focus by moving whole, so its ring cannot be worked out. Mark it by tape.",)
    if not is_known(lens.focal_length_mm):
        return ("Focal length not known: read it off the barrel, then the ring can be marked anew.",)
    if span_start(judged.measured_trace.value("register_error_mm")) is None:
        return ("Register not known: measure flange to sharp image, then the ring can be marked anew.",)
    moving = next((link for link in judged.chain.links if getattr(link, "kind", "") in ADDED_FOCUSING), None)
    if isinstance(moving, Adapter):
        return _by_helicoid(judged, moving, knowledge, numbers, feet)
    travel = judged.trace.value("travel_mm")
    if isinstance(travel, Interval) and travel.greatest <= 0:
        return _fixed(judged, numbers, feet)
    return _by_marks(judged, _marks(judged, knowledge, feet, engraved), numbers, feet)


def _by_marks(judged: Judged, marks: Sequence[tuple[float, Interval]], numbers: Numbers, feet: bool) -> Grid | Text:
    show = lambda value: distance(value, feet)  # noqa: E731
    rows = [_row(judged, ("∞",), "ring at infinity", Interval.exact(0.0), numbers, show)]
    for mark, travel in marks:
        of = f"ring at {_engraved(mark, feet)}"
        engraved = numbers.likeliest("scale_mark_mm", Interval.exact(mark), lambda at: _engraved(at, feet), of)
        rows.append(_row(judged, (engraved,), of, travel, numbers, show))
    if any(row[1] == NOT_KNOWN for row in rows[1:]):
        return ("How the glass in the chain moves the image is not known: mark the ring by tape.",)
    wide = any(len(row) > 2 for row in rows)
    full = tuple((*row, ("",)) if wide and len(row) == 2 else row for row in rows)
    columns = ("ring", "sharp at", "may be") if wide else ("ring", "sharp at")
    return Grid(("Ring, from the sensor mark",), columns, full)


def _engraved(mark_mm: float, feet: bool) -> str:
    """A mark as rings bear it: whole feet where it is so many, else as any distance."""
    whole = round(mark_mm / MM_PER_FOOT)
    return f"{whole} ft" if feet and whole and abs(mark_mm - whole * MM_PER_FOOT) < 0.5 else distance(mark_mm, feet)


def _row(
    judged: Judged, lead: Text, of: str, travel: Interval, numbers: Numbers, show: Callable[[float], str]
) -> tuple[Text, ...]:
    likely, whole = _sharp_at(judged.measured_trace, travel), _sharp_at(judged.trace, travel)
    if likely is None:
        return (lead, NOT_KNOWN)
    if _is_past(judged, travel):
        return (lead, ("nothing sharp",))
    out = span_start(_at(judged.measured_trace, travel).value("extension_mm"))
    at_infinity = isinstance(out, Interval) and out.nominal + travel.nominal < SEAT_READS_MM
    first = "∞" if at_infinity or isinf(likely.nominal) else numbers.likeliest(FROM_SENSOR, likely, show, of)
    if whole is None or show(whole.least) == show(whole.greatest):
        return (lead, (first,))
    second = numbers.ends(FROM_SENSOR, whole, show, f"{of}, may be")
    return (lead, (first,), (_short(second),))


def _short(figure: Figure) -> Figure:
    return Figure(figure.quantity, figure.text.replace(" to infinity", " to ∞"))


def _is_past(judged: Judged, travel: Interval) -> bool:
    """Whether the ring at this mark puts the lens farther in than infinity needs and depth of focus forgives."""
    extension = span_start(_at(judged.measured_trace, travel).value("extension_mm"))
    allowance = judged.measured_trace.value("infinity_allowance_mm")
    if not isinstance(extension, Interval) or not isinstance(allowance, Interval):
        return False
    return extension.nominal + travel.nominal < -allowance.nominal


def _at(trace: Trace, travel: Interval) -> Trace:
    return Trace({**trace.given, "travel_mm": Given(travel, "focusing travel of the mark")})


def _sharp_at(trace: Trace, travel: Interval) -> Interval | None:
    value = _at(trace, travel).value("near_from_sensor_mm")
    return value if isinstance(value, Interval) else None


def _marks(judged: Judged, knowledge: Knowledge, feet: bool, engraved: Sequence[float]) -> list[tuple[float, Interval]]:
    """At most a handful of marks that the ring can have, and the travel of each: from far to near, evenly taken.

    Nearer than the lens's own nearest mark, or than its travel takes it, there is none; one so far that depth of
    focus does not tell it from infinity says nothing. Those that are told are all of them there.
    """
    trace, lens = judged.measured_trace, judged.setup.lens
    focal, gap = trace.value("focal_length_mm"), trace.value("hiatus_mm")
    allowance = trace.value("infinity_allowance_mm")
    if not isinstance(focal, Interval) or not isinstance(gap, Interval):
        return []
    travel = trace.value("travel_mm")
    most = travel if isinstance(travel, Interval) else trace.value("usual_travel_mm")
    least = allowance.nominal if isinstance(allowance, Interval) else 0.0
    head = FEET if feet else METRES
    marks = list(engraved) or [
        row.value.nominal for row in knowledge.catalogue.assumptions.values() if row.id.startswith(head)
    ]
    if is_known(lens.close_focus_mm) and not engraved:
        marks.append(lens.close_focus_mm.nominal)
    found: list[tuple[float, Interval]] = []
    for mark in sorted(set(marks), reverse=True):
        out = travel_to_mark_mm(Interval.exact(mark), Interval.exact(focal.nominal), Interval.exact(gap.nominal))
        if not is_known(out) or (out.nominal < least and not engraved):
            continue
        if isinstance(most, Interval) and out.nominal > most.greatest + 1e-6:
            continue
        found.append((mark, out))
    return _evenly(found, MOST_MARKS if engraved else MOST_ROWS - 1)


def _evenly(rows: list[tuple[float, Interval]], most: int) -> list[tuple[float, Interval]]:
    if len(rows) <= most:
        return rows
    step = (len(rows) - 1) / (most - 1)
    return [rows[round(n * step)] for n in range(most)]


def _by_helicoid(judged: Judged, moving: Adapter, knowledge: Knowledge, numbers: Numbers, feet: bool) -> Grid | Text:
    """Settings of the helicoid with the lens's own ring at infinity."""
    short, long = moving.thickness_mm.shortest, moving.thickness_mm.longest
    error = span_start(judged.measured_trace.value("register_error_mm"))
    if not (is_known(short) and is_known(long)) or not isinstance(error, Interval):
        return ("How far the helicoid moves is not known: measure it fully in and fully out.",)
    show = lambda value: distance(value, feet)  # noqa: E731
    home = short.nominal - error.nominal  # where it stands for infinity
    first = home if short.nominal <= home <= long.nominal else short.nominal
    rows = []
    for n in range(MOST_ROWS):
        at = first + (long.nominal - first) * n / (MOST_ROWS - 1)
        set_to = replace(moving, thickness_mm=Span.fixed(Interval.exact(at)))
        links = tuple(set_to if link is moving else link for link in judged.chain.links)
        still = replace(judged.setup, lens=replace(judged.setup.lens, travel_mm=Interval.exact(0.0)))
        again = knowledge.judge_chain(Chain(links, {}), still)
        far = again.measured_trace.value("far_from_sensor_mm")
        if not isinstance(far, Interval):
            return ("What the helicoid does to this lens cannot be worked out. Mark it by tape.",)
        of = f"helicoid at {small_mm(at)}"
        setting = numbers.likeliest("helicoid_setting_mm", Interval.exact(at), small_mm, of)
        sharp: Text = ("∞",) if isinf(far.nominal) else (numbers.likeliest(FROM_SENSOR, far, show, of),)
        large = again.measured_trace.value("far_magnification")
        image: Text = ("",)
        if isinstance(large, Interval) and large.nominal >= SIZED:
            image = (numbers.likeliest("far_magnification", large, times, of),)
        rows.append(((setting,), sharp, image))
    title = ("Ring at ∞, from the sensor mark",)
    if all(row[-1] == ("",) for row in rows):
        return Grid(title, ("helicoid", "sharp at"), tuple(row[:-1] for row in rows))
    return Grid(title, ("helicoid", "sharp at", "image to thing"), tuple(rows))


def _fixed(judged: Judged, numbers: Numbers, feet: bool) -> Text:
    far = judged.measured_trace.value("far_from_sensor_mm")
    if not isinstance(far, Interval):
        return ("Focus is fixed; where is not known. Find it by tape.",)
    if isinf(far.nominal):
        return ("Focus is fixed at infinity.",)
    show = lambda value: distance(value, feet)  # noqa: E731
    return ("Focus is fixed at ", numbers.likeliest(FROM_SENSOR, far, show, "fixed"), " from the sensor mark.")
