"""Each lens behind its tubes, at the infinity mark and at its nearest; and by itself at a distance told."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.close.close_picture import shown_by
from engine.answers.close.close_rows import Shown, at_extension, beyond_its_own
from engine.answers.close.taped import front_focus_taped
from engine.answers.close.too_far_away import too_far_away
from engine.answers.close.tube_sets import TUBE, left_beyond_infinity, sets_of
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.owned import own_lens
from engine.answers.parts.said import distance_mm, focals, numbers, stop
from engine.answers.parts.wording import about, article, distance, small_mm, times, trimmed
from engine.answers.seat.distances import Distances, distances_of
from engine.base.interval import Interval, is_known
from grammar.questions import Question

HELICOID: Final = "helicoid"
_SHORTEST, _LONGEST = 8, 1000  # mm, of a bare number that may be a focal length


def lenses_of(question: Question, knowledge: Knowledge, tubes: list[float]) -> list[Distances]:
    """The lenses told, each by what is known of it; a bare number that can be a focal length where none is."""
    facts = knowledge.catalogue
    found = [
        lens
        for thing in question.lenses
        if (lens := distances_of(thing, facts, front_focus_taped(thing, question, tubes))) is not None
    ]
    return found or [Distances(focal, facts) for focal in focals_of(question)]


def focals_of(question: Question) -> tuple[float, ...]:
    """The focal lengths told, in mm; a bare number that can be one counts where no lens has any."""
    return focals(question) or tuple(value for value in numbers(question, "numbers") if _SHORTEST <= value <= _LONGEST)


def with_tubes(
    optics: Distances, tubes: list[float], present: float | None, question: Question, knowledge: Knowledge
) -> Iterator[Told]:
    """Each tube, and all together: at the infinity mark and at the nearest mark of the lens."""
    feet, focal, shown = question.feet, optics.focal.nominal, shown_by(question, knowledge)
    sets = list(sets_of(tubes, question, knowledge))
    nearest_mark = _told_nearest(focal, question) or own_nearest(question, knowledge)
    own = optics.extension_at(nearest_mark) if nearest_mark else None
    lens = f"{trimmed(focal, 1)} mm lens"
    if not sets:
        return
    yield from left_beyond_infinity(question)
    if not tubes and any(thing.piece == TUBE for thing in question.adapters):
        yield Told((Line("ask", "How long are your tubes? What follows is for the usual ones.", wants="tubes"),))
    travel = numbers(question, "travel")
    drawn = any(thing.piece == HELICOID for thing in question.adapters)
    only_drawn = drawn and all(thing.piece == HELICOID for thing in question.adapters)
    if present is not None:
        for length in sets:
            case = f"{trimmed(length, 2)} mm" if len(focals_of(question)) == 1 else f"{lens}, {trimmed(length, 2)} mm"
            yield beyond_its_own(present, focal, length, case, stop(question), shown)
    yield too_far_away(optics, min(sets), question)
    if own is not None and is_known(own) and (len(sets) == 1 or max(sets) == sum(tubes)):
        mark = distance(nearest_mark or 0, feet)
        yield _at_its_nearest(optics, own, max(sets), mark, shown, drawn or max(sets) in travel)
    yield Told(
        (Line("head", f"{article(lens).capitalize()} {lens}, from the sensor, focus ring at infinity unless told:"),)
    )
    for length in sets:
        case = f"{trimmed(length, 2)} mm" if len(focals_of(question)) == 1 else f"{lens}, {trimmed(length, 2)} mm"
        moved = length in travel or only_drawn
        lead = f"{trimmed(length, 2)} mm of {'travel' if moved else 'tube'}"
        yield at_extension(optics, length, shown, case, lead=lead)
        if drawn or moved:
            # drawn out so far it is as near as it gets
            yield Told((), at_extension(optics, length, shown, case, end="near").quantities)
        if own is not None and is_known(own):
            near = f"{lens}, {distance(nearest_mark or 0, feet)} mark"
            lead = f"at its {distance(nearest_mark or 0, feet)} mark ({small_mm(own.nominal)} out by itself)"
            yield at_extension(optics, own.nominal + length, shown, near, end="near", lead=lead, level=2)


def _at_its_nearest(optics: Distances, own: Interval, length: float, mark: str, shown: Shown, drawn: bool) -> Told:
    """How near it comes behind the tube, with its own focusing all the way out: what is asked, said first."""
    near, far = optics.at(own + Interval.exact(length)), optics.at(Interval.exact(length))
    if not (is_known(near.from_sensor_mm) and is_known(near.magnification) and is_known(far.from_sensor_mm)):
        return Told()
    text = f"Nearest, at its {mark} mark: {shown.distance(near.from_sensor_mm.nominal)} from the sensor"
    text += f", {about(near.magnification, times)}; "
    text += "drawn out as far, " if drawn else "farthest, "
    text += f"at its infinity mark: {shown.distance(far.from_sensor_mm.nominal)}."
    return Told((Line("head", text),))


def _told_nearest(focal: float, question: Question) -> float | None:
    """The nearest mark told of the lens: of several lenses each its own, in the order in which they were named."""
    away, lenses = distance_mm(question), focals_of(question)
    marks = list(dict.fromkeys((*numbers(question, "close_focus"), *([away] if away is not None else []))))
    if len(marks) == len(lenses) and focal in lenses:
        return marks[lenses.index(focal)]
    return next(iter(marks), None)


def own_nearest(question: Question, knowledge: Knowledge) -> float | None:
    """The nearest mark of a lens of one's own, in mm."""
    lens = own_lens(question.lens, knowledge.catalogue)
    if lens is None or question.lens is None or is_known(lens.close_focus_mm):
        return lens.close_focus_mm.nominal if lens is not None and is_known(lens.close_focus_mm) else None
    optics = distances_of(question.lens, knowledge.catalogue)
    if optics is None or not is_known(lens.travel_mm) or lens.travel_mm.nominal <= 0:
        return None
    near = optics.at(Interval.exact(lens.travel_mm.nominal)).from_sensor_mm
    return near.nominal if is_known(near) else None


def as_marked(optics: Distances, question: Question, shown: Shown) -> Iterator[Told]:
    """What the lens does by itself at a distance told."""
    at = distance_mm(question)
    own = optics.extension_at(at) if at else None
    if at is not None and own is not None and is_known(own):
        case = f"{trimmed(optics.focal.nominal, 1)} mm lens, {distance(at, question.feet)}"
        yield at_extension(optics, own.nominal, shown, case, end="focus")
