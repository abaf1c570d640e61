"""The sentences of a card: what it will do, the chain in order of assembly, cautions, settings, the first check."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf

from engine.answers.parts.card_parts import Alert, Name, Numbers, Part, Text, capital, known, spoken
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import SEAT_READS_MM, distance, f_number, small_mm, times, trimmed
from engine.answers.seat.chain_numbers import chain_numbers
from engine.answers.seat.iris import iris_text
from engine.answers.seat.telling import CERTAINTY_WORDS, curing_stop, link_name, unknown_line, warned_of_overhang
from engine.answers.seat.unsold import IMPOSSIBLE, TO_MAKE
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.span import Span
from engine.chains.walk import ADDED_FOCUSING, Link
from engine.facts.records import Adapter
from engine.judging.judge import Finding, Judged
from engine.judging.settings import setting_cases, settings_that_hold
from engine.physics import closeup
from engine.physics.quantities import PARTLY_MOVED

# what the first line and the marked ring have said already
SAID_ELSEWHERE = frozenset({"seated-too-far-out", "seated-too-close"})
ORDER = {"danger": 0, "caution": 1, "note": 2}
FAR_ENOUGH_MM = 1e6


def head_of(judged: Judged, numbers: Numbers, feet: bool) -> Text:
    """What the person will live with, in a few large words."""

    def show(value: float) -> str:
        return distance(value, feet)

    if judged.certainty == "unknown":
        return capital((unknown_line(judged),))
    if judged.verdict == "unusable":
        return ("No use on this body",)
    far, near = known(judged.trace.value("far_from_sensor_mm")), known(judged.trace.value("near_from_sensor_mm"))
    own = judged.measured_trace.value("travel_mm")
    moves = isinstance(own, Interval) or _helicoid(judged) is not None
    if judged.verdict == "infinity":
        if moves and near is not None and near.nominal > 0:
            return ("Infinity to ", numbers.likeliest("near_from_sensor_mm", near, show))
        return ("Reaches infinity",)
    if far is None:
        return ("Close-up only",)
    told: list[Part] = ["Stops at ", numbers.likeliest("far_from_sensor_mm", far, show)]
    if moves and near is not None and show(near.nominal) != show(far.nominal):
        told += [", near ", numbers.likeliest("near_from_sensor_mm", near, show)]
    stop = curing_stop(judged.measured_trace)
    if stop is not None:
        cure = numbers.likeliest("infinity_from_f_number", Interval.exact(stop), lambda n: f"f/{f_number(n)}", "cure")
        told += ["; infinity from ", cure]
    return tuple(told)


def subject_of(judged: Judged, numbers: Numbers) -> Text:
    """Which lens on which body, at which stop, and how sure that is."""
    told: list[Part] = [Name(judged.setup.lens.name), " on ", Name(judged.setup.body.name)]
    given = judged.trace.given["f_number"]
    if isinstance(given.value, Interval):
        told += [", at ", numbers.likeliest("f_number", given.value, lambda n: f"f/{f_number(n)}")]
        told += [" (assumed)"] if given.assumed else []
    return (*told, f". {CERTAINTY_WORDS[judged.certainty].capitalize()}.")


def stack_of(judged: Judged, knowledge: Knowledge, numbers: Numbers) -> tuple[Text, ...]:
    """Lens, pieces and body in the order they are put together."""
    rows: list[Text] = [("lens",)]
    moving = _helicoid(judged)
    for link in judged.chain.links:
        told = _named(link, knowledge, numbers)
        home = next(
            (row for row in chain_numbers(judged, knowledge.catalogue) if row.name == "helicoid_setting_mm"), None
        )
        if link is moving and home is not None:
            usual = ", by what is usual for such a lens" if judged.trace.given["lens_register_mm"].assumed else ""
            told += [", at ", numbers.likeliest(home.name, home.value, small_mm, "infinity"), f" for infinity{usual}"]
        rows.append(tuple(told))
    if not judged.chain.links:
        rows.append(("no adapter",))
    return (*rows, ("body",))


def _named(link: Link, knowledge: Knowledge, numbers: Numbers) -> list[Part]:
    """The name of a piece; of one that nobody sells, what it is and how long."""
    if isinstance(link, Adapter) and link.id == TO_MAKE and link.kind != IMPOSSIBLE:
        what, size = (
            ("a cup of ", -link.thickness_mm.shortest) if link.cup else ("a ring of ", link.thickness_mm.shortest)
        )
        if is_known(size):
            return [what, numbers.likeliest("ring_thickness_mm", size, small_mm), " to be made"]
    return [Name(link_name(link, knowledge))]


def alerts_of(judged: Judged, knowledge: Knowledge, numbers: Numbers, feet: bool) -> tuple[Alert, ...]:
    """Dangers, then cautions, then notes, each in a few words and with whom to ask."""
    rows = [
        Alert(finding.severity, _told(finding, judged, knowledge, numbers, feet))
        for finding in judged.findings
        if not (finding.decided and finding.rule.id in SAID_ELSEWHERE and judged.verdict != "unusable")
    ]
    rear = _rear(judged, numbers)
    if rear:
        rows.append(Alert("caution", rear))
    once = {(row.severity, spoken(row.text)): row for row in rows}
    return tuple(sorted(once.values(), key=lambda row: ORDER[row.severity]))


def _told(finding: Finding, judged: Judged, knowledge: Knowledge, numbers: Numbers, feet: bool) -> Text:
    rule, trace = finding.rule, judged.measured_trace
    of = rule.id
    if not finding.decided:
        lead, what = ("Not known whether ", rule.provided) if rule.provided else (
            "Not decided: ", rule.undecided or rule.because
        )  # fmt: skip
        told: list[Part] = [lead, *numbers.filled(what, trace, feet, of)]
        return (*told, f": {rule.measure}." if rule.measure else ".")
    told = [*capital(numbers.filled(rule.brief or rule.because, trace, feet, of)), "."]
    advice = knowledge.catalogue.advice.get(rule.advice or "")
    if advice is not None and advice.defer_to:
        told += [" Ask ", Name(advice.defer_to[:1].lower() + advice.defer_to[1:].rstrip(".")), "."]
    return tuple(told)


def _rear(judged: Judged, numbers: Numbers) -> Text:
    """The overhang behind the body flange, where no finding has told of it."""
    overhang, free = judged.trace.value("overhang_mm"), judged.trace.value("clear_depth_mm")
    if not isinstance(overhang, Interval):
        warned = any(row.rule.measure and row.rule.advice for row in judged.findings)
        return () if warned else ("How far the rear reaches is not known: measure it before mounting.",)
    if overhang.nominal <= 0 or isinstance(free, Interval) or warned_of_overhang(judged):
        return ()
    told = numbers.likeliest("overhang_mm", overhang, small_mm, "rear")
    return ("Rear ", told, " behind the body flange, free depth not told: look before you close up.")


def close_up_alert(judged: Judged, powers: Sequence[float], numbers: Numbers, feet: bool) -> tuple[Alert, ...]:
    """Where it is sharp with a close-up lens before it, which the rest of the card leaves out."""
    focal = known(judged.measured_trace.value("focal_length_mm"))
    if not powers or judged.verdict != "infinity":
        return ()
    power = Interval.exact(sum(powers))
    room = closeup.close_up_focus_mm(power, Interval(inf, inf, inf))
    told: list[Part] = ["All else is without the close-up lens; with "]
    told += [numbers.likeliest("dioptres", power, lambda value: f"+{trimmed(value, 2)}", "close-up")]
    if is_known(room):
        show = lambda value: distance(value, feet)  # noqa: E731
        told += [", ring at infinity: sharp ", numbers.likeliest("working_distance_mm", room, show, "close-up")]
        told += [" before it"]
    magnified = closeup.close_up_magnification(focal, power, Interval.exact(0.0)) if focal is not None else UNKNOWN
    if is_known(magnified):
        told += [", ", numbers.likeliest("magnification", magnified, times, "close-up")]
    return (Alert("note", (*told, ".")),)


def settings_of(judged: Judged, knowledge: Knowledge, numbers: Numbers, feet: bool) -> tuple[Text, ...]:
    """Who works the iris, then what the body is to be told, in general terms."""
    cases, _ = setting_cases(knowledge.catalogue.settings.values())
    trace = judged.measured_trace
    told = (numbers.filled(rule.because, trace, feet, rule.id) for rule in settings_that_hold(cases, trace))
    return ((iris_text(judged)[1],), *told)


def check_of(judged: Judged, numbers: Numbers, feet: bool) -> Text:
    """One distance that, if sharp where predicted, proves the seat; or what to measure first."""
    trace = judged.measured_trace
    if judged.certainty == "unknown":
        return ("First measure what is not known above; then ask for this card anew.",)
    show = lambda value: distance(value, feet)  # noqa: E731
    stop: Text = ("wide open",)
    if judged.setup.f_number is not None:
        at = Interval.exact(judged.setup.f_number)
        stop = ("at ", numbers.likeliest("f_number", at, lambda n: f"f/{f_number(n)}"))
    far = known(trace.value("far_from_sensor_mm"))
    if judged.verdict == "macro-only" and far is not None and 0 < far.nominal < FAR_ENOUGH_MM:
        card = numbers.likeliest("far_from_sensor_mm", far, show, "check")
        return ("Ring at infinity, ", *stop, ": a card ", card, " from the sensor mark must be sharp.")
    focal, allowance = known(trace.value("focal_length_mm")), known(trace.value("infinity_allowance_mm"))
    if judged.verdict == "infinity" and focal is not None and allowance is not None:
        least = Interval.exact(focal.greatest**2 / max(allowance.nominal, 1e-6))
        beyond = numbers.likeliest("target_distance_mm", least, show, "check")
        return (*capital(stop), ": anything beyond ", beyond, " must come sharp ", *_where(judged, numbers, feet), ".")
    if judged.verdict == "infinity":
        return (*capital(stop), ": a far horizon must come sharp at the infinity mark.")
    if judged.verdict == "macro-only":
        return ("Where it is sharp is not known: find it by tape and write it down.",)
    return ("It comes sharp nowhere.",)


def _where(judged: Judged, numbers: Numbers, feet: bool) -> Text:
    """Where on the ring or the helicoid infinity must come."""
    error, mark = judged.measured_trace.value("register_error_mm"), judged.measured_trace.value("infinity_mark_mm")
    if _helicoid(judged) is not None:
        return ("with the ring at infinity and the helicoid as set above",)
    if judged.setup.lens.focusing in PARTLY_MOVED:
        return ("at or just before the infinity mark",)
    off = error.shortest if isinstance(error, Span) else None
    at = known(mark)
    if isinstance(off, Interval) and off.nominal < -SEAT_READS_MM and at is not None:
        show = lambda value: distance(value, feet)  # noqa: E731
        return ("at the ", numbers.likeliest("scale_mark_mm", at, show, "infinity"), " mark")
    return ("at or just before the infinity mark",)


def _helicoid(judged: Judged) -> object | None:
    return next(_helicoids(judged), None)


def _helicoids(judged: Judged) -> Iterator[object]:
    return (link for link in judged.chain.links if getattr(link, "kind", "") in ADDED_FOCUSING)
