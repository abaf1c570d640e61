"""Exposure: neutral density for a scene, what a filter or factor makes of a shutter, T-stops, stops between stops."""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from math import inf

from engine.answers.close.own_and_tubes import with_size_grown
from engine.answers.exposure.by_flash import by_flash
from engine.answers.exposure.by_stars import by_stars
from engine.answers.exposure.exposing import exposed_parts
from engine.answers.exposure.filter_tried import filter_tried
from engine.answers.exposure.handheld import handheld
from engine.answers.exposure.holding_back import by_filters, infrared
from engine.answers.exposure.lamps import in_step_with_lamps
from engine.answers.exposure.light_alike import between_angles, between_rates, between_scenes, filter_as_stop
from engine.answers.exposure.lighting import light_of, shutter_s, shutter_still, variable_stops
from engine.answers.exposure.marks_compared import are_compared, compared, same_or_not, summed_as, taken_for
from engine.answers.exposure.metered_outside import is_metered, metered_outside
from engine.answers.exposure.metered_stop import stop_to_set
from engine.answers.exposure.other_filters import taken_by_others
from engine.answers.exposure.plain_ring import plain_ring_light
from engine.answers.exposure.slow_motion import slow_motion
from engine.answers.exposure.stop_steps import steps_between, stops_from
from engine.answers.exposure.stops_apart import brighter_of
from engine.answers.exposure.t_stop_told import t_stop_told
from engine.answers.exposure.t_stops import t_stops_apart
from engine.answers.exposure.two_stops import between_two
from engine.answers.lost_by_seat import lost_by_seat
from engine.answers.parts.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.nearby import LEAST, SURE, nearest
from engine.answers.parts.said import mentions, number, numbers, stop
from engine.answers.parts.wording import figures, ranged, trimmed
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.crop_factors import exposure_stays
from engine.answers.picture.filter_effects import rear_filter
from engine.answers.picture.filters import front_filters
from engine.answers.picture.frames import frames_named
from engine.answers.picture.stops_by_crop import stops_by_crop
from engine.answers.words.advice import advice_lines, of_their_kind
from engine.base.interval import Interval, is_known
from engine.physics import density
from grammar.questions import Question

MOST_MARKS = 10
MOST_DENSITY = 5  # a bare number from here up is no density
MOST_STOPS = 20.0  # no stack of filters is stronger


FIXED = "fixed-iris"


def exposed(question: Question, knowledge: Knowledge) -> Answer:
    """Every part of the exposure that the question's numbers give, then the advice that its words are about."""
    question = with_size_grown(question, knowledge)
    tried = filter_tried(question, knowledge)
    metered = mentions(question, "hand-meter") and not question.adapters
    spoken_of = metered or (question.follows and mentions(question, "crop-or-sensor"))
    cropped = spoken_of and frames_named(question, knowledge.catalogue)
    likened = not cropped and mentions(question, "likened-stops")
    told = tried + (exposure_stays(stop(question)) if cropped else Told())
    told += stops_by_crop(question, knowledge.catalogue) if likened else Told()
    rest, seated = lost_by_seat(question, knowledge)
    told += seated
    seated_alone = seated.lines and not is_metered(question)
    for part in _parts(rest, knowledge) if cropped or tried.lines or seated_alone or not told.lines else ():
        told += part
    lines = list(told.lines)
    if not lines:
        kind = of_their_kind(question, knowledge)
        lines += advice_lines([row for row in kind if FIXED in row.traits])
    rows = nearest(question.text, knowledge.catalogue, 2, SURE if lines else LEAST)
    if not lines or mentions(question, "meter-doubt"):
        lines += [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
    rated = mentions(question, "nd-or-filter") and question.said("frame_rate")
    if rated and not _has_stop(question) and not told.lines:
        lines.append(Line("ask", "For which f-number? Then the density to hold back can be told.", wants="stop"))
    if not lines:
        ask = "For which f-number, shutter and ISO, and in what light (full sun, shade, EV)?"
        lines.append(Line("ask", ask, wants="stop"))
    status, quantities = ANSWERED if told.lines or rows else NO, told.quantities
    return Answer(question.text, "exposure-nd", status, tuple(lines), question=question, quantities=quantities)


def _has_stop(question: Question) -> bool:
    return stop(question) is not None or question.said("aperture") is not None


def _parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    # what hands allow, a bare factor, a reading that stands for the scene, lamps and flash are no exposure of a scene
    for part in (
        plain_ring_light, slow_motion, handheld, _factor, stop_to_set, metered_outside, in_step_with_lamps, by_flash
    ):  # fmt: skip
        alone = part(question, knowledge)
        if alone.lines:
            yield alone
            return
    stars = by_stars(question, knowledge)
    if stars.lines:
        if question.said("iso") is not None and _has_stop(question):
            yield from exposed_parts(question, knowledge)
        yield stars
        return
    yield t_stops_apart(question)
    yield brighter_of(question, knowledge.catalogue)
    exposed_by_it = is_known(shutter_s(question, knowledge)) and not mentions(question, "as-f-number")
    yield Told() if exposed_by_it else t_stop_told(question, knowledge)
    yield between_two(question)
    yield stops_from(question)
    yield between_scenes(question, knowledge) + between_rates(question, knowledge)
    yield between_angles(question)
    yield filter_as_stop(question)
    yield steps_between(question)
    if question.topic == "infrared":
        yield infrared(inf, knowledge)
    yield taken_by_others(question, knowledge)
    yield _marks(question, knowledge)
    yield _in_ev(question, knowledge)
    yield _variable(question, knowledge)
    yield _prism(question, knowledge)
    yield from exposed_parts(question, knowledge)
    yield t_stop_told(question, knowledge) if exposed_by_it else Told()
    yield rear_filter(question, knowledge)
    yield front_filters(question, knowledge)


def _in_ev(question: Question, knowledge: Knowledge) -> Told:
    """What a light that is told by name is in EV, where no setting is told."""
    light = light_of(question, knowledge)
    if not mentions(question, "in-ev") or question.said("light") is None or light.counted is not None:
        return Told()
    name = f"{light.scene_name[:1].upper()}{light.scene_name[1:]}"
    text = f"{name}: EV {ranged(light.scene, lambda ev: f'{ev:g}')} at ISO 100."
    return Told((Line("head", text),), (Quantity("scene_ev", light.scene),))


def _variable(question: Question, knowledge: Knowledge) -> Told:
    """What a variable filter holds back, from its weakest to its strongest."""
    ends = variable_stops(question)
    if ends is None or is_known(shutter_s(question, knowledge)):
        return Told()
    wanted = number(question, "stops") or _bare_stops(question)
    if wanted is not None:
        held = by_filters(Interval.exact(wanted), light_of(question, knowledge), knowledge)
        head = Line("head", f"{trimmed(wanted, 2)} stops wanted:")
        return Told((head,)) + held + Told((), (Quantity("nd_stops", Interval.exact(wanted), "wanted"),))
    if ends.least == 0:
        told = (
            f"Variable, {question.said('variable')} ({density.density_name(ends.greatest)}): its weakest is not told."
        )
        return Told((Line("head", told),))
    text = (
        f"{question.said('variable')}, variable: {figures(ends.least, 3)} to {figures(ends.greatest, 3)} stops "
        f"({density.density_name(ends.least)} to {density.density_name(ends.greatest)})."
    )
    return Told((Line("head", text),), (Quantity("nd_stops", ends, "variable filter"),))


def _bare_stops(question: Question) -> float | None:
    """'Variable maxes at 5, need 8.6': beside what a filter holds back a number alone is of stops too."""
    alone = [value for value in numbers(question, "numbers") if 0 < value <= MOST_STOPS]
    return alone[0] if len(alone) == 1 else None


def _is_only_density(question: Question) -> bool:
    """Whether stops and ND are spoken of and no setting."""
    told = [key for key, _ in question.values if key not in ("stops", "numbers")]
    others = [piece for piece in question.adapters if piece not in question.before_lens]
    return (
        mentions(question, "nd-or-neutral", "as-factor", "my-filters")
        and not told
        and not others
        and stop(question) is None
    )


def _marks(question: Question, knowledge: Knowledge) -> Told:
    """What marks of filters mean: factor, density and stops side by side; of several what they hold back together."""
    marks = re.findall(r"ND\s*[\d.]+", question.said("factor") or "", re.IGNORECASE)
    wanted = number(question, "stops")
    if wanted is not None and not marks and _is_only_density(question):
        name = f"{density.factor_name(wanted)} = {density.density_name(wanted)}"
        told = Told(
            (Line("head", f"{figures(wanted, 3)} stops of ND are {name}."),),
            (Quantity("nd_stops", Interval.exact(wanted)),),
        )
        return told + by_filters(Interval.exact(wanted), light_of(question, knowledge), knowledge)
    changes = question.stops or glass_factor(question, knowledge.catalogue)
    changed = mentions(question, "overexposed", "underexposed") and not mentions(question, "split-over")
    changes = changes or changed
    # 'an nd64 and an nd8, stacked thats?' in a talk: what they are together, and not what the scene asks for
    stacked = question.follows and len(marks) > 1 and mentions(question, "added-up") and not question.stops
    exposing = changes or is_known(shutter_s(question, knowledge)) or shutter_still(question)
    if not marks or (exposing and not stacked):
        return Told()
    summed = wanted is not None and mentions(question, "added-up") and not mentions(question, "is-wanted")
    guessed = len(marks) == 1 and wanted is not None and not mentions(question, "is-wanted", "stops-to-take")
    if wanted is not None and not summed and not guessed and not mentions(question, "same-light"):
        head = Line("head", f"{trimmed(wanted, 2)} stops wanted:")
        return Told((head,)) + by_filters(Interval.exact(wanted), light_of(question, knowledge), knowledge)
    bare = (f"{value:.1f}" for value in numbers(question, "numbers") if value < MOST_DENSITY)
    rows, lines = _each_mark([*marks, *bare])
    if summed and wanted is not None:
        rows.append(Quantity("nd_stops", Interval.exact(wanted), "told in stops"))
        lines.append(Line("head", f"And {trimmed(wanted, 2)} stops as told."))
    held = [row.value.nominal for row in rows if row.name == "nd_stops" and is_known(row.value)]
    total = sum(held)
    alike = (guessed or mentions(question, "same-light")) and not mentions(question, "added-up")
    held += [wanted] if alike and wanted is not None else []
    if are_compared(question, len(held)):
        lines.insert(0, Line("head", compared(rows)))
    elif len(held) > 1 and alike:
        lines.insert(0, Line("head", taken_for(total, wanted) if guessed and wanted is not None else same_or_not(held)))
    elif len(held) > 1:
        name = f"factor {figures(2**total, 3)}, {density.factor_name(total)} = {density.density_name(total)}"
        lines.insert(0, Line("head", f"{summed_as(question, total)} {figures(total, 3)} stops ({name})."))
        rows.insert(0, Quantity("nd_stops", Interval.exact(total), "together"))
    return Told(tuple(lines), tuple(rows)) + _table_of_marks() + infrared(total, knowledge)


def _each_mark(marks: Sequence[str]) -> tuple[list[Quantity], list[Line]]:
    """Stops, factor and density of each mark that is one, a line for each that differs."""
    rows: list[Quantity] = []
    lines: list[Line] = []
    for mark in marks:
        stops = density.stops_of_name(mark)
        if not is_known(stops):
            continue
        rows.append(Quantity("nd_stops", stops, mark))
        name = f"{density.factor_name(stops.nominal)} = {density.density_name(stops.nominal)}"
        factor = density.factor_of_stops(stops)
        if is_known(factor):
            rows.append(Quantity("nd_factor", factor, mark))
            name = f"factor {figures(factor.nominal, 3)}, {name}"
        line = Line("head", f"{mark}: {figures(stops.nominal, 3)} stops ({name}).")
        lines += [line] if line not in lines else []
    return rows, lines


def _table_of_marks() -> Told:
    """The marks of whole stops, beside what holds of all."""
    whole = range(1, MOST_MARKS + 1)
    table = ", ".join(f"{n} = {density.factor_name(n)} = {density.density_name(n)}" for n in whole)
    text = f"Stops add, densities add, factors multiply. Stops, factor and density: {table}."
    rows = (Quantity("nd_stops", Interval.exact(float(n)), density.factor_name(n)) for n in whole)
    return Told((Line("text", text),), tuple(rows))


def _factor(question: Question, _: Knowledge) -> Told:
    """A bellows or exposure factor in stops."""
    marked = (question.said("factor") or "").startswith("ND ")  # 'ND 1.2' is a density and no factor
    # '1.5x on bellows' is how large it draws, and no factor by itself
    sized = any(f"{size:g}:1" in question.text for size in numbers(question, "magnification"))
    sizes = ("magnification",) if mentions(question, "factor-word") and not sized else ()
    keys = ("numbers", *sizes) if marked else ("numbers", *sizes, "factor")
    values = [value for value in numbers(question, *keys) if 1 < value < 100]
    metered = question.said("shutter") and question.said("factor")  # 'filter factor 2, f/8 at 1/125': what is set now
    if not values or metered or not mentions(question, "bellows-factor"):
        return Told()
    factor = Interval.exact(values[0])
    stops = density.stops_of_factor(factor)
    if not is_known(stops):
        return Told()
    text = (
        f"A factor of {trimmed(values[0], 2)} is {trimmed(stops.nominal, 2)} stops: log2 of it, not the factor itself."
    )
    return Told((Line("head", text),), (Quantity("light_difference_stops", stops, f"factor {values[0]:g}"),))


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
