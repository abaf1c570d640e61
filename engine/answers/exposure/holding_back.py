"""The light to hold back: in stops, density and factor, by the filters at hand, with what strong density brings."""

from __future__ import annotations

from engine.answers.exposure.lighting import BASE_ISO, ZERO, Light, held, seconds, setting
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import f_number, figures, listed, ranged, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, Unknown, is_known
from engine.physics import density, exposure
from grammar.questions import Question

LIGHT_ENOUGH = "light-enough"  # mentioned where that is asked
LOWEST_ISO, WIDEST_STOP = "lowest-iso", "widest-stop"  # of the facts
LEAST_LACKING = 1 / 3  # stops; less is taken up by shutter or ISO
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
        return _lacking(light, stops, "No, not light enough: " if mentions(question, LIGHT_ENOUGH) else "No ND: ")
    if stops.least < 0:
        shown = f"up to {stops.greatest:.1f} stops"
    if mentions(question, "without-density") and not light.filters:
        return _had(stops, 0.0, light, knowledge) + Told((Line("fact", setting(light), 1),))
    needed = mentions(question, "nd-needed") and not mentions(question, "strong-enough")
    yes = "Yes: " if stops.least > 0 and needed else ""
    if mentions(question, LIGHT_ENOUGH):
        yes = "Yes, light enough: " if stops.least >= 0 else "In the brighter part of that light, yes: "
    head = f"{yes}{shown} of ND to hold back: {setting(light)}."
    told = Told((Line("head", head),), (Quantity("nd_stops", stops),)) + by_filters(stops, light, knowledge)
    had = light.variable.greatest if light.variable is not None else number(question, "stops")
    if had is None and light.filters and mentions(question, "strong-enough"):
        told = _enough(stops, held(light).nominal, light, knowledge) + told
    elif had is not None and not (light.variable is not None and stops.greatest <= had):
        told = _had(stops, had, light, knowledge) + told
    if _is_fixed(question, knowledge):
        told += Told((Line("note", "Its iris is fixed: light is held back by density, shutter and ISO alone."),))
    return told


def _enough(stops: Interval, had: float, light: Light, knowledge: Knowledge) -> Told:
    """Whether the filters told do: not where a third of a stop or more is lacking, nor well where they are too dark."""
    if stops.least > had + LEAST_LACKING:
        return _had(stops, had, light, knowledge, "No: ")
    if stops.greatest > had + LEAST_LACKING:
        return _had(stops, had, light, knowledge, "In a part of that light only: ")
    spare = had - stops
    if spare.least <= LEAST_LACKING:
        return Told((Line("head", f"Yes: {trimmed(had, 1)} stops of ND are enough."),))
    text = (
        f"Yes, and more than enough: {trimmed(had, 1)} stops of ND leave the picture "
        f"{ranged(spare, lambda value: f'{value:.1f}')} stops too dark."
    )
    return Told((Line("head", text),), (Quantity("light_difference_stops", spare, f"behind {had:g} stops"),))


def _had(stops: Interval, had: float, light: Light, knowledge: Knowledge, lead: str = "") -> Told:
    """What remains where only so many stops of density are at hand, and what takes it up: the stop or the shutter."""
    lacks = stops - had
    if lacks.greatest <= 0 or light.counted is None:
        return Told((Line("head", f"{trimmed(had, 1)} stops of ND are enough."),))
    shown = ranged(lacks, lambda value: f"{max(value, 0.0):.1f}")
    text = f"{lead}{trimmed(had, 1)} stops of ND leave {shown} stops too much light: "
    text = text if had else f"Without a filter {shown} stops too much light: "
    lacks = lacks.at_least(0.0)  # in the dark part of a light nothing is to be held back
    closed = exposure.f_number_after(light.counted, lacks)
    shorter = exposure.shutter_behind_s(light.shutter, -lacks)
    rows = [Quantity("light_difference_stops", lacks, f"behind {had:g} stops")]
    if is_known(closed) and is_known(shorter):
        iso = exposure.iso_for(light.scene, light.counted, light.shutter, Interval.exact(had))
        text += f"close to f/{ranged(closed, f_number)}, or {ranged(shorter, seconds)}"
        lowest = knowledge.catalogue.assumptions[LOWEST_ISO].value.least
        settable = is_known(iso) and iso.greatest >= lowest
        text += f", or ISO {ranged(iso, lambda value: figures(value, 2))}." if settable and is_known(iso) else "."
        rows += [Quantity("iso", iso, f"behind {had:g} stops")] if is_known(iso) else []
        rows += [Quantity("f_number", closed, f"behind {had:g} stops")]
        rows += [Quantity("shutter_s", shorter, f"behind {had:g} stops")]
    return Told((Line("head", text),), tuple(rows))


def by_filters(stops: Interval, light: Light, knowledge: Knowledge) -> Told:
    """By which filters so much is held back: those told, else the nearest mark and those of the gear file."""
    told = Told()
    if light.filters:
        told += _split(stops, light.filters, knowledge)
        picked = _picked(stops, light.filters, knowledge)
        if 0 < len(picked) < len(light.filters):
            told += _taken_up(replace(light, filters=picked), knowledge)
        told += _taken_up(light, knowledge)
    elif light.variable is None:
        told += _nearest(stops, knowledge)
        told += _split(stops, light.owned, knowledge, "of yours ") if light.owned else Told()
    if light.variable is not None:
        beside = held(light) if light.filters else ZERO
        lead = f"with {listed(light.filters)}, " if light.filters else ""
        told += _by_variable(stops - beside, light.variable, lead)
    return told + infrared(max(stops.greatest, 0.0), knowledge)


def _by_variable(stops: Interval, variable: Interval, lead: str = "") -> Told:
    """Whether a variable filter reaches so far down, and so far up, with what else is told before it."""
    weakest = f"from {trimmed(variable.least, 1)} " if variable.least > 0 else ""
    ends = f"{lead}the variable one goes {weakest}to {trimmed(variable.greatest, 1)} stops"
    if stops.greatest < variable.least:
        over = variable.least - stops.greatest
        text = f"{ends}: {over:.1f} stops too dark even at its weakest; take it off"
    elif stops.least > variable.greatest:
        lacks = stops.least - variable.greatest
        whole = round(lacks)
        named = f"stack a fixed one, {density.density_name(whole)} ({density.factor_name(whole)}) is nearest, or "
        text = f"{ends}: {lacks:.1f} stops lack; {named if whole else ''}close the iris by as much"
    elif variable.least <= stops.least and stops.greatest <= variable.greatest:
        text = f"{ends}: that is within it"
    else:
        text = f"{ends}: within it for a part of that light"
    rows = [Quantity("nd_stops", variable, "variable filter")]
    if stops.least > variable.greatest:
        rows.append(Quantity("light_difference_stops", stops - variable.greatest, "left over"))
    return Told((Line("fact", text, 1),), tuple(rows))


def _lacking(light: Light, stops: Interval, lead: str) -> Told:
    """What would do where there is too little light."""
    assert light.counted is not None
    lacking = ranged(-stops, lambda value: f"{value:.1f} stops")
    told = Told(
        (Line("head", f"{lead}{setting(light)} lacks {lacking} of light."),),
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
    rows: tuple[Quantity, ...] = (Quantity("nd_stops", picked.total, "filters stacked"),)
    if not picked.pieces:
        return Told((Line("fact", "of your filters none: each would take away more than it should", 1),), rows)
    names = listed([marks[place] for place in picked.pieces])
    verb = "stack" if len(picked.pieces) > 1 else "take"
    text = f"{whose}{verb} {names}: {figures(picked.total.nominal, 3)} stops"
    if abs(left) > near.nominal:
        plural = "s" if abs(left) >= 1.05 else ""
        text += f", {abs(left):.1f} stop{plural} {'lighter' if left > 0 else 'darker'} than wanted"
        rows += (Quantity("light_difference_stops", Interval.exact(abs(left)), "left over"),)
    return Told((Line("fact", text, 1),), rows) + _all_stacked(marks, picked.pieces)


def _picked(stops: Interval, marks: tuple[str, ...], knowledge: Knowledge) -> tuple[str, ...]:
    """Those of the filters told that are to be stacked."""
    known = [mark for mark in marks if is_known(density.stops_of_name(mark))]
    near = knowledge.catalogue.assumptions["stops-near-enough"].value
    picked = density.split_stops(stops, [density.stops_of_name(mark) for mark in known], near)
    return () if isinstance(picked, Unknown) else tuple(known[place] for place in picked.pieces)


def _taken_up(light: Light, knowledge: Knowledge) -> Told:
    """The ISO or the shutter that goes with all the filters told, at the other settings as they are."""
    if light.counted is None or not is_known(light.shutter):
        return Told()  # 'which of these for 5 stops' tells no exposure
    behind, iso = held(light), Interval.exact(light.iso or BASE_ISO)
    found = exposure.iso_for(light.scene, light.counted, light.shutter, behind)
    time = exposure.shutter_for_s(light.scene, light.counted, iso, behind)
    if not (is_known(found) and is_known(time)):
        return Told()
    case = f"behind {listed(light.filters)}"
    text = f"{case}: right at ISO {ranged(found, lambda value: figures(value, 2))}, or at {ranged(time, seconds)}"
    closed = exposure.f_number_for(light.scene, light.shutter, iso, behind)
    rows = [Quantity("iso", found, case), Quantity("shutter_s", time, case)]
    if is_known(closed) and closed.greatest >= knowledge.catalogue.assumptions[WIDEST_STOP].value.least:
        text += f", or at {light.counted_name[:1] if light.counted_name[:1] == 'T' else 'f/'}{ranged(closed, f_number)}"
        rows.append(Quantity("f_number", closed, case))
    return Told((Line("fact", text, 1),), tuple(rows))


def _all_stacked(marks: tuple[str, ...], picked: tuple[int, ...]) -> Told:
    """What all the filters at hand hold back together, where fewer are wanted here."""
    if len(marks) < 2 or len(picked) == len(marks):
        return Told()
    held = [stops for mark in marks if is_known(stops := density.stops_of_name(mark))]
    total = sum(stops.nominal for stops in held)
    text = f"all of them stacked, {listed(marks)}, hold back {figures(total, 3)} stops"
    return Told((Line("fact", text, 1),), (Quantity("nd_stops", Interval.exact(total), "all stacked"),))


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
