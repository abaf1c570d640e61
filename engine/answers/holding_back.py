"""The light to hold back: in stops, density and factor, by the filters at hand, with what strong density brings."""

from __future__ import annotations

from engine.answers.answer import Line, Quantity, Told
from engine.answers.knowledge import Knowledge
from engine.answers.lighting import BASE_ISO, ZERO, Light, seconds, setting
from engine.answers.owned import own_lens
from engine.answers.wording import figures, listed, ranged, trimmed
from engine.base.interval import Interval, Unknown, is_known
from engine.physics import density, exposure
from grammar.questions import Question

CUT_INFRARED = "Take one that cuts infrared too, or add a cut filter, and try it on black cloth first."


def held_back(light: Light, question: Question, knowledge: Knowledge) -> Told:
    """How much light must be held back: scene EV + log2(ISO/100) - log2(N*N/t), and by which filters."""
    assert light.counted is not None
    iso = Interval.exact(light.iso or BASE_ISO)
    stops = exposure.stops_to_hold_back(light.scene, light.counted, light.shutter, iso)
    if not is_known(stops):
        return Told()
    shown = ranged(stops, lambda value: f"{value:.1f} stops")
    if stops.greatest <= 0:
        return _lacking(light, stops)
    if stops.least < 0:
        shown = f"up to {stops.greatest:.1f} stops"
    told = Told((Line("head", f"{shown} to hold back: {setting(light)}."),), (Quantity("nd_stops", stops),))
    if light.filters:
        told += _split(stops, light.filters, knowledge)
    else:
        told += _nearest(stops, knowledge)
        told += _split(stops, light.owned, knowledge, "of yours ") if light.owned else Told()
    told += infrared(max(stops.greatest, 0.0), knowledge)
    if _is_fixed(question, knowledge):
        told += Told((Line("note", "Its iris is fixed: light is held back by density, shutter and ISO alone."),))
    return told


def _lacking(light: Light, stops: Interval) -> Told:
    """What would do where there is too little light."""
    assert light.counted is not None
    lacking = ranged(-stops, lambda value: f"{value:.1f} stops")
    told = Told(
        (Line("head", f"No ND: {setting(light)} lacks {lacking} of light."),),
        (Quantity("light_difference_stops", abs(stops)),),
    )
    iso = exposure.iso_for(light.scene, light.counted, light.shutter, ZERO)
    time = exposure.shutter_for_s(light.scene, light.counted, Interval.exact(light.iso or BASE_ISO), ZERO)
    if is_known(iso) and is_known(time):
        text = f"ISO {ranged(iso, lambda value: figures(value, 2))} would do, or {ranged(time, seconds)}"
        told += Told((Line("fact", text, 1),), (Quantity("iso", iso), Quantity("shutter_s", time)))
    return told


def _nearest(stops: Interval, knowledge: Knowledge) -> Told:
    """The marks of the nearest whole filter, and what it leaves."""
    low, high = max(round(stops.least), 0), max(round(stops.greatest), 0)
    if high == 0:
        return Told((Line("fact", "less than half a stop: no filter, take it up by shutter or ISO", 1),))
    names = " to ".join(
        dict.fromkeys(f"{density.density_name(n)} ({density.factor_name(n)})" for n in (low, high) if n)
    )
    exact = density.density_of_stops(stops)
    factor = density.factor_of_stops(stops)
    lines = [Line("fact", f"nearest filter: {names}", 1)]
    rows: list[Quantity] = []
    if is_known(exact) and is_known(factor) and exact.least >= 0:
        lines.append(Line("fact", (
            f"exactly: density {ranged(exact, lambda value: trimmed(value, 2))}, "
            f"factor {ranged(factor, lambda value: figures(value, 2))}"
        ), 1))  # fmt: skip
        rows += [Quantity("nd_density", exact), Quantity("nd_factor", factor)]
    off = stops.nominal - round(stops.nominal)
    near = knowledge.catalogue.assumptions["stops-near-enough"].value.nominal
    if stops.is_exact and abs(off) > near:
        way = "lighter" if off > 0 else "darker"
        text = f"that leaves the picture {abs(off):.1f} stop {way}: take it up by shutter or ISO"
        lines.append(Line("fact", text, 1))
    return Told(tuple(lines), tuple(rows))


def _split(stops: Interval, marks: tuple[str, ...], knowledge: Knowledge, whose: str = "") -> Told:
    """Which of the filters at hand to stack."""
    odd = [mark for mark in marks if not is_known(density.stops_of_name(mark))]
    if odd:
        text = (
            f"Left out, their strength is not known: {listed(odd)}. Write it as a factor (ND64) or a density (ND 1.8)"
        )
        return Told((Line("note", f"{text}."),)) + _split(
            stops, tuple(mark for mark in marks if mark not in odd), knowledge, whose
        )
    near = knowledge.catalogue.assumptions["stops-near-enough"].value
    picked = density.split_stops(stops, [density.stops_of_name(mark) for mark in marks], near)
    if isinstance(picked, Unknown):
        return Told()
    left = picked.left.nominal
    rows = (Quantity("nd_stops", picked.total, "filters stacked"),)
    if not picked.pieces:
        return Told((Line("fact", "of your filters none: each would take away more than it should", 1),), rows)
    names = listed([marks[place] for place in picked.pieces])
    verb = "stack" if len(picked.pieces) > 1 else "take"
    text = f"{whose}{verb} {names}: {figures(picked.total.nominal, 3)} stops"
    if abs(left) > near.nominal:
        plural = "s" if abs(left) >= 1.05 else ""
        text += f", {abs(left):.1f} stop{plural} {'lighter' if left > 0 else 'darker'} than wanted"
    return Told((Line("fact", text, 1),), rows)


def infrared(stops: float, knowledge: Knowledge) -> Told:
    """The caution that goes with strong density; nothing below where it begins."""
    row = knowledge.catalogue.assumptions["infrared-from"]
    if stops < row.value.nominal:
        return Told()
    text = f"{row.says[:1].upper()}{row.says[1:]}. {CUT_INFRARED}"
    return Told((Line("caution", text),))


def _is_fixed(question: Question, knowledge: Knowledge) -> bool:
    lens = own_lens(question.lens, knowledge.catalogue)
    told = question.lens is not None and "fixed iris" in question.lens.traits
    return told or (lens is not None and lens.iris == "fixed")
