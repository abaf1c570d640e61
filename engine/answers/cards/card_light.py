"""The density to hold back by ISO, for one card: at the stop, shutter and light told, or at usual ones."""

from __future__ import annotations

from engine.answers.exposure.lighting import shutter_s
from engine.answers.parts.card_parts import Grid, Numbers, Part, Text
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import interval, number
from engine.answers.parts.said import numbers as numbers_of
from engine.answers.parts.wording import f_number, trimmed
from engine.base.interval import Interval, Measure, is_known
from engine.judging.judge import Judged
from engine.physics import density, exposure
from grammar.questions import Question

ISO = "card-iso-"
FULL_SUN = "scene-full-sun"
ASSUMED, BOTH = " (assumed)", " (both assumed)"


def light_of(judged: Judged, question: Question, knowledge: Knowledge, figures: Numbers) -> Grid | Text:
    """Stops and the nearest filter for each ISO; words where the f-number is missing."""
    stop = _counting_stop(judged)
    if stop is None:
        return ("Density: f-number not known. Read it off the barrel, or meter without a filter.",)
    told = shutter_s(question, knowledge)
    time = told if is_known(told) else _usual_shutter(knowledge)
    if not is_known(time):
        return ("Density: shutter not known.",)
    scene, light = _scene(question, knowledge, figures)
    isos = numbers_of(question, "iso") or tuple(
        row.value.nominal for row in knowledge.catalogue.assumptions.values() if row.id.startswith(ISO)
    )
    strongest = 0.0
    heads: list[Text] = [("ISO",)]
    stops_row: list[Text] = [("stops",)]
    marks: list[Text] = [("filter",)]
    for iso in sorted(isos):
        of = f"ISO {iso:g}"
        held = exposure.stops_to_hold_back(scene, Interval.exact(stop.nominal), time, Interval.exact(iso))
        heads.append((figures.likeliest("iso", Interval.exact(iso), lambda value: f"{value:g}", of),))
        strongest = max(strongest, held.greatest) if is_known(held) else strongest
        stops, mark = _cells(held, figures, of)
        stops_row.append(stops)
        marks.append(mark)
    title: list[Part] = ["Hold back, ", figures.likeliest("shutter_s", time, _seconds)]
    assumed = (not is_known(told), question.said("light") is None)
    title += [ASSUMED] if assumed == (True, False) else []
    title += [", ", *light, BOTH if all(assumed) else ASSUMED if assumed[1] else ""]
    below = (*_counts_as(judged, stop, figures), *_infrared(strongest, knowledge))
    return Grid(tuple(title), (), (tuple(heads), tuple(stops_row), tuple(marks)), below)


def _cells(held: Measure, figures: Numbers, of: str) -> tuple[Text, Text]:
    """The stops to hold back and the filter nearest to them."""
    if not is_known(held):
        return ("not known",), ("",)
    if held.greatest <= 0:
        lacking = figures.ends("light_difference_stops", -held, lambda value: trimmed(abs(value), 1), of)
        return ("lacks ", lacking), ("none",)
    stops = figures.ends("nd_stops", held.at_least(0.0), lambda value: trimmed(value, 1), of)
    low, high = max(round(held.least), 0), max(round(held.greatest), 0)
    if not high:
        return (stops,), ("none",)
    factor = density.stops_of_name(density.factor_name(high))
    value = factor if is_known(factor) else Interval.exact(float(high))
    mark = figures.likeliest("nd_filter_stops", value, lambda _: density.factor_name(high), of)
    if low == high:
        return (stops,), (mark,)
    return (stops,), ("to ", mark)


def _counting_stop(judged: Judged) -> Interval | None:
    """The f-number that counts for exposure at the farthest focus, behind any glass; None where it is not known."""
    trace = judged.measured_trace
    if trace.given["f_number"].assumed:
        return None
    for name in ("effective_f_number_at_far", "combined_f_number"):
        value = trace.value(name)
        if isinstance(value, Interval):
            return value
    return None


def _counts_as(judged: Judged, stop: Interval, figures: Numbers) -> Text:
    """What the stop counts as, where glass or extension make it another one than is marked."""
    marked = judged.measured_trace.value("f_number")
    if not isinstance(marked, Interval) or f_number(marked.nominal) == f_number(stop.nominal):
        return ()
    shown = figures.likeliest("effective_f_number", stop, lambda value: f"f/{f_number(value)}")
    return ("Counts as ", shown, " here. ")


def _infrared(stops: float, knowledge: Knowledge) -> Text:
    """What strong density brings, in a few words; nothing where none of it is so strong."""
    strong = stops >= knowledge.catalogue.assumptions["infrared-from"].value.nominal
    return ("Strong density: one that cuts infrared too, or blacks turn brown.",) if strong else ()


def _usual_shutter(knowledge: Knowledge) -> Measure:
    facts = knowledge.catalogue.assumptions
    return exposure.shutter_of_angle_s(facts["card-frame-rate"].value, facts["usual-shutter-angle"].value)


def _scene(question: Question, knowledge: Knowledge, figures: Numbers) -> tuple[Interval, Text]:
    """The light told, else full sun, as an exposure value and as it is written."""
    said = question.said("light")
    if said and said.startswith("EV"):
        told = interval(question, "light")
        if told is not None:
            value = number(question, "light")
            exact = Interval.exact(value) if value is not None else told
            return exact, (figures.likeliest("scene_ev", exact, lambda ev: f"EV {ev:g}"),)
    rows = knowledge.catalogue.assumptions
    row = rows.get(f"scene-{said}") or rows[FULL_SUN]
    return row.value, (row.id.removeprefix("scene-").replace("-", " "),)


def _seconds(value: float) -> str:
    return f"1/{1 / value:.0f} s" if value < 0.4 else f"{trimmed(value, 1)} s"
