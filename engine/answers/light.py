"""Exposure: neutral density for a scene, what a filter or factor makes of a shutter, T-stops, stops between stops."""

from __future__ import annotations

import re
from collections.abc import Iterator

from engine.answers.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.filters import filter_rings, filter_threads
from engine.answers.knowledge import Knowledge
from engine.answers.nearby import LEAST, SURE, nearest
from engine.answers.said import interval, mentions, number, numbers, stop
from engine.answers.wording import f_number, figures, ranged, trimmed
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.physics import density, exposure
from grammar.questions import Question

BASE_ISO = 100.0
MOST_MARKS = 10


def exposed(question: Question, knowledge: Knowledge) -> Answer:
    """Every part of the exposure that the question's numbers give, then the advice that its words are about."""
    told = Told()
    for part in _parts(question, knowledge):
        told += part
    lines = list(told.lines)
    rows = nearest(question.text, knowledge.catalogue, 2, SURE if lines else LEAST)
    if not lines or mentions(question, "why", "over", "under", "wrong", "off", "crop"):
        lines += [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
    if not lines:
        lines.append(Line("ask", "For which f-number, shutter and ISO, and in what light (full sun, shade, EV)?"))
    status = ANSWERED if told.lines or rows else NO
    return Answer(
        question.text, "exposure-nd", status, tuple(lines), question=question, quantities=told.quantities
    )  # fmt: skip


def _parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    yield _t_stop(question, knowledge)
    yield _between(question)
    yield _factor(question)
    yield _marks(question)
    yield _behind_filter(question, knowledge)
    yield _prism(question, knowledge)
    yield _density(question, knowledge)
    yield _against_usual_shutter(question, knowledge)
    threads = filter_threads(question, knowledge)
    if threads:
        yield filter_rings(threads, knowledge)


def shutter_s(question: Question, knowledge: Knowledge) -> Measure:
    """The shutter time told, else the time of the usual shutter angle; unknown where neither is told."""
    text = question.said("shutter")
    match = re.search(r"(?:(\d+(?:\.\d+)?)\s*/\s*)?(\d+(?:\.\d+)?)", text or "")
    if match:
        top, bottom = match.groups()
        return Interval.exact(float(top) / float(bottom) if top else float(bottom))
    return _usual_shutter_s(question, knowledge)


def _usual_shutter_s(question: Question, knowledge: Knowledge) -> Measure:
    rate = number(question, "frame_rate")
    if rate is None:
        return UNKNOWN
    told = number(question, "angle")
    angle = Interval.exact(told) if told else knowledge.catalogue.assumptions["usual-shutter-angle"].value
    return exposure.shutter_of_angle_s(Interval.exact(rate), angle)


def _scene(question: Question, knowledge: Knowledge) -> tuple[Interval, str]:
    """The light told, as an exposure value; full sun where nothing is."""
    said = question.said("light")
    told = interval(question, "light") if said and said.startswith("EV") else None
    if told is not None:
        return told, said or ""
    row = knowledge.catalogue.assumptions.get(f"scene-{said}") if said else None
    chosen = row or knowledge.catalogue.assumptions["scene-full-sun"]
    return chosen.value, chosen.id.removeprefix("scene-").replace("-", " ")


def _density(question: Question, knowledge: Knowledge) -> Told:
    """How much light must be held back: scene EV + log2(ISO/100) - log2(N*N/t)."""
    at, time = stop(question), shutter_s(question, knowledge)
    if at is None or not is_known(time) or question.said("factor"):
        return Told()
    iso = number(question, "iso") or BASE_ISO
    scene, name = _scene(question, knowledge)
    stops = exposure.stops_to_hold_back(scene, Interval.exact(at), time, Interval.exact(iso))
    if not is_known(stops):
        return Told()
    shown = ranged(stops, lambda value: f"{value:.1f} stops")
    setting = (
        f"f/{f_number(at)}, 1/{1 / time.nominal:.0f} s, ISO {iso:g}, {name} (EV {ranged(scene, lambda v: f'{v:g}')})"
    )
    if stops.greatest <= 0:
        text = f"No ND: {setting} lacks {ranged(-stops, lambda value: f'{value:.1f} stops')} of light."
        return Told((Line("head", text),), (Quantity("light_difference_stops", abs(stops)),))
    low, high = max(round(stops.least), 0), max(round(stops.greatest), 0)
    names = " to ".join(dict.fromkeys(f"{density.density_name(n)} ({density.factor_name(n)})" for n in (low, high)))
    lines = [Line("head", f"{shown} to hold back: {setting}."), Line("fact", f"nearest filter: {names}", 1)]
    off = stops.nominal - round(stops.nominal)
    near = knowledge.catalogue.assumptions["stops-near-enough"].value.nominal
    if stops.is_exact and abs(off) > near:
        way = "lighter" if off > 0 else "darker"
        lines.append(
            Line("fact", f"that leaves the picture {abs(off):.1f} stop {way}: take it up by shutter or ISO", 1)
        )
    return Told(tuple(lines), (Quantity("nd_stops", stops),))


def _against_usual_shutter(question: Question, knowledge: Knowledge) -> Told:
    """What the shutter told lets in against the usual one at this frame rate."""
    if question.said("shutter") is None:
        return Told()
    usual, told = _usual_shutter_s(question, knowledge), shutter_s(question, knowledge)
    if not (is_known(usual) and is_known(told)) or usual == told:
        return Told()
    stops = exposure.shutter_stops(usual, told)
    if not is_known(stops):
        return Told()
    less = stops.nominal < 0
    text = (
        f"against 1/{1 / usual.nominal:.0f} s that is {abs(stops.nominal):.1f} stops {'less' if less else 'more'} light"
    )
    return Told((Line("fact", text, 1),), (Quantity("light_difference_stops", abs(stops), "shutter"),))


def _marks(question: Question) -> Told:
    """What marks of filters mean: factor, density and stops side by side."""
    marks = re.findall(r"ND\s*[\d.]+", question.said("factor") or "", re.IGNORECASE)
    if not marks or question.said("shutter"):
        return Told()
    rows, lines = [], []
    for mark in [*marks, *(f"{value:.1f}" for value in numbers(question, "numbers") if value < 5)]:
        stops = density.stops_of_name(mark)
        if is_known(stops):
            rows.append(Quantity("nd_stops", stops, mark))
            name = f"{density.factor_name(stops.nominal)} = {density.density_name(stops.nominal)}"
            lines.append(Line("head", f"{mark}: {figures(stops.nominal, 3)} stops ({name})."))
    table = []
    for n in range(1, MOST_MARKS + 1):
        rows.append(Quantity("nd_stops", Interval.exact(float(n)), density.factor_name(n)))
        table.append(f"{n} = {density.factor_name(n)} = {density.density_name(n)}")
    lines.append(
        Line("text", "Stops add, densities add, factors multiply. Stops, factor and density: " + ", ".join(table) + ".")
    )
    return Told(tuple(lines), tuple(rows))


def _behind_filter(question: Question, knowledge: Knowledge) -> Told:
    """What a shutter time becomes behind a filter."""
    time, mark = shutter_s(question, knowledge), question.said("factor")
    stops = density.stops_of_name(mark) if mark else UNKNOWN
    if not (is_known(time) and is_known(stops)) or question.said("iso"):
        return Told()
    after = exposure.shutter_behind_s(time, stops)
    if not is_known(after):
        return Told()
    text = f"{mark} is {figures(stops.nominal, 3)} stops: {_seconds(time.nominal)} becomes {_seconds(after.nominal)}."
    rows = (Quantity("shutter_s", after), Quantity("nd_stops", stops, mark))
    return Told((Line("head", text),), rows)


def _seconds(value: float) -> str:
    return f"1/{1 / value:.0f} s" if value < 0.4 else f"{figures(value, 2)} s"


def _between(question: Question) -> Told:
    """The f-number halfway between two."""
    stops = [lens.f_number for lens in question.lenses if lens.f_number is not None]
    if len(stops) != 2 or stops[0] == stops[1] or question.said("shutter"):
        return Told()
    low, high = Interval.exact(min(stops)), Interval.exact(max(stops))
    middle = exposure.f_number_between(low, high, Interval.exact(0.5))
    apart = exposure.f_number_stops(low, high)
    if not (is_known(middle) and is_known(apart)):
        return Told()
    text = (
        f"Halfway between f/{trimmed(low.nominal, 1)} and f/{trimmed(high.nominal, 1)} is"
        f" f/{trimmed(middle.nominal, 2)}."
    )
    half, third = (2 ** (part / 2) for part in (1 / 2, 1 / 3))  # a stop is the root of 2 in f-number
    more = (
        f"They are {trimmed(apart.nominal, 2)} stops apart; half a stop is {trimmed(half, 2)} times the f-number, a "
        f"third {trimmed(third, 2)}."
    )
    rows = (Quantity("f_number", middle, "halfway"), Quantity("light_difference_stops", apart, "between the two"))
    return Told((Line("head", text), Line("text", more)), rows)


def _factor(question: Question) -> Told:
    """A bellows or exposure factor in stops."""
    values = [value for value in numbers(question, "numbers", "magnification") if 1 < value < 100]
    if not values or not mentions(question, "factor", "bellows"):
        return Told()
    factor = Interval.exact(values[0])
    stops = density.stops_of_factor(factor)
    if not is_known(stops):
        return Told()
    text = (
        f"A factor of {trimmed(values[0], 2)} is {trimmed(stops.nominal, 2)} stops: log2 of it, not the factor itself."
    )
    return Told((Line("head", text),), (Quantity("light_difference_stops", stops, f"factor {values[0]:g}"),))


def _t_stop(question: Question, knowledge: Knowledge) -> Told:
    """The f-number behind a T-stop: T times the root of the transmission."""
    match = re.match(r"T(\d+(?:\.\d+)?)", question.said("aperture") or "")
    if not match:
        return Told()
    told = number(question, "transmission")
    usual = knowledge.catalogue.assumptions["usual-transmission"].value
    share = Interval.exact(told / 100) if told else usual
    value = exposure.f_number_of_t_stop(Interval.exact(float(match[1])), share)
    if not is_known(value):
        return Told()
    case = f"transmission {share.nominal * 100:.0f} %"
    text = f"T{match[1]} is about f/{trimmed(value.nominal, 2)} at {share.nominal * 100:.0f} % transmission."
    lines = [Line("head", text), Line("text", "Expose by T; work out depth of field by the f-number.")]
    if told is None:
        often = f"{usual.least * 100:.0f} to {usual.greatest * 100:.0f} %"
        lines.append(Line("ask", f"What transmission has the lens? It is seldom told; {often} is usual."))
    return Told(tuple(lines), (Quantity("f_number", value, case),))


def _prism(question: Question, knowledge: Knowledge) -> Told:
    """Lenses marked for a prism that is not there."""
    mounts = knowledge.catalogue.mounts
    if not any(
        "prism-behind" in mounts[id_].traits for lens in question.lenses for id_ in lens.ids[:1] if id_ in mounts
    ):
        return Told()
    light = knowledge.catalogue.assumptions["prism-light"].value
    text = f"Without the prism it passes about {trimmed(light.nominal, 2)} stop more than marked: close it by that."
    return Told((Line("head", text),), (Quantity("light_difference_stops", light, "prism"),))
