"""Exposure: neutral density for a scene, what a filter or factor makes of a shutter, T-stops, stops between stops."""

from __future__ import annotations

import re
from collections.abc import Iterator
from math import inf

from engine.answers.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.exposing import exposed_parts
from engine.answers.filter_effects import rear_filter
from engine.answers.filters import front_filters
from engine.answers.holding_back import infrared
from engine.answers.knowledge import Knowledge
from engine.answers.lighting import seconds, shutter_s
from engine.answers.nearby import LEAST, SURE, nearest
from engine.answers.said import mentions, number, numbers, stop
from engine.answers.wording import figures, trimmed
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.physics import density, exposure
from grammar.questions import Question

MOST_MARKS = 10


HALVES = ("halfway", "half way", "between", "half a stop", "half stop", "click", "middle")


def exposed(question: Question, knowledge: Knowledge) -> Answer:
    """Every part of the exposure that the question's numbers give, then the advice that its words are about."""
    told = Told()
    for part in _parts(question, knowledge):
        told += part
    lines = list(told.lines)
    rows = nearest(question.text, knowledge.catalogue, 2, SURE if lines else LEAST)
    if not lines or mentions(question, "why", "over", "under", "wrong", "off", "crop"):
        lines += [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
    if mentions(question, "nd", "filter") and question.said("frame_rate") and stop(question) is None:
        lines.append(Line("ask", "For which f-number? Then the density to hold back can be told.", wants="stop"))
    if not lines:
        ask = "For which f-number, shutter and ISO, and in what light (full sun, shade, EV)?"
        lines.append(Line("ask", ask, wants="stop"))
    status = ANSWERED if told.lines or rows else NO
    return Answer(
        question.text, "exposure-nd", status, tuple(lines), question=question, quantities=told.quantities
    )  # fmt: skip


def _parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    yield _t_stop(question, knowledge)
    yield _t_against_f(question)
    yield _between(question)
    yield _factor(question)
    if question.topic == "infrared":
        yield infrared(inf, knowledge)
    yield _marks(question, knowledge)
    yield _behind_filter(question, knowledge)
    yield _prism(question, knowledge)
    yield from exposed_parts(question, knowledge)
    yield rear_filter(question, knowledge)
    yield front_filters(question, knowledge)


def _marks(question: Question, knowledge: Knowledge) -> Told:
    """What marks of filters mean: factor, density and stops side by side."""
    marks = re.findall(r"ND\s*[\d.]+", question.said("factor") or "", re.IGNORECASE)
    if not marks or is_known(shutter_s(question, knowledge)):
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
    strongest = max((row.value.nominal for row in rows[: len(lines) - 1]), default=0.0)
    return Told(tuple(lines), tuple(rows)) + infrared(strongest, knowledge)


def _behind_filter(question: Question, knowledge: Knowledge) -> Told:
    """What a shutter time becomes behind a filter."""
    time, mark = shutter_s(question, knowledge), question.said("factor")
    stops = density.stops_of_name(mark) if mark else UNKNOWN
    held = number(question, "stops")
    if not mark and held is not None:
        mark, stops = "The density", Interval.exact(held)
    if not (is_known(time) and is_known(stops)) or question.said("iso") or stop(question) is not None:
        return Told()
    after = exposure.shutter_behind_s(time, stops)
    if not is_known(after):
        return Told()
    text = f"{mark} is {figures(stops.nominal, 3)} stops: {seconds(time.nominal)} becomes {seconds(after.nominal)}."
    rows = (Quantity("shutter_s", after), Quantity("nd_stops", stops, mark))
    return Told((Line("head", text),), rows)


def _t_against_f(question: Question) -> Told:
    """How far a T-stop and an f-number told beside it are apart, both taken as what lets light through."""
    match, at = re.match(r"T(\d+(?:\.\d+)?)", question.said("aperture") or ""), stop(question)
    if match is None or at is None or question.said("shutter"):
        return Told()
    apart = exposure.f_number_stops(Interval.exact(min(at, float(match[1]))), Interval.exact(max(at, float(match[1]))))
    if not is_known(apart):
        return Told()
    text = f"T{match[1]} and f/{trimmed(at, 2)} are {trimmed(apart.nominal, 2)} stops apart, if all light came through."
    return Told((Line("head", text),), (Quantity("light_difference_stops", apart, f"T{match[1]} and f/{at:g}"),))


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
    told = (
        (Line("head", text), Line("text", more))
        if mentions(question, *HALVES)
        else (Line("head", more), Line("text", text))
    )
    return Told(told, rows)


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
