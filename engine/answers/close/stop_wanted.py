"""Which stop is wanted: for a zone, for a depth round a distance or at a magnification, for a second thing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from engine.answers.close.deep_at_stops import deep_at_stops
from engine.answers.close.depth_rows import around
from engine.answers.close.zones import next_on_ring, stop_for_zone, zone_of
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import FAR_MM, distance_mm, mentions, number, numbers, stop
from engine.answers.parts.wording import depth_words, distance, f_number, times, trimmed
from engine.answers.picture.blur import blur_of
from engine.answers.picture.moved_out import extension_mm
from engine.answers.seat.distances import Distances, distances_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import depth, focus
from grammar.questions import Question

EVEN_PUPILS = Interval.exact(1.0)
WHICH = "which-stop"  # the topic of a question that asks for one


def stop_wanted(question: Question, frames: Sequence[Format], knowledge: Knowledge) -> Told:
    """The f-number that is asked for, for each lens and format; nothing where none is, or not enough is told."""
    if question.said("zone") is not None:
        return _all(_zones(question, frames, knowledge))
    wanted, subject = number(question, "depth"), distance_mm(question)
    asked = mentions(question, "which-stop") or question.topic == WHICH or (wanted is not None and subject is not None)
    if stop(question) is not None and not asked:
        return Told()
    if wanted is None and subject is not None and mentions(question, "front-to-back"):
        # 'a face of 15 cm front to back, at 1.5 m': the lesser of two is how deep it is
        both = sorted({subject, *numbers(question, "distance", "length")})
        wanted, subject = (both[0], both[-1]) if len(both) > 1 else (None, subject)
    if wanted is not None and subject is not None:
        return _all(_round(wanted, subject, question, frames, knowledge))
    size = number(question, "magnification") or size_by_extension(question, knowledge)
    if wanted is None and size is not None:
        wanted = next((one for one in numbers(question, "length", "thickness") if one < FAR_MM), None)
    if wanted is not None and size is not None:
        return _all(_close_up(wanted, size, form, question, knowledge) for form in frames)
    others = (one for one in numbers(question, "length", "distance") if one not in (subject, wanted) and one >= FAR_MM)
    other = next(others, None)
    if other is not None and subject is not None:
        return _all(_of_other(subject, other, question, frames, knowledge))
    if subject is not None and mentions(question, "which-stop") and not mentions(question, "hyperfocal-asked"):
        things = [one for one in question.lenses if distances_of(one, knowledge.catalogue) is not None]
        lenses = [*zip(_lenses(question, knowledge), [one.f_number for one in things], strict=True)]
        return _all(deep_at_stops(subject, lenses, frames, question, knowledge))
    return Told()


def size_by_extension(question: Question, knowledge: Knowledge) -> float | None:
    """The magnification that the extension told gives the one lens, its ring at infinity."""
    x, lenses = extension_mm(question, knowledge.catalogue), _lenses(question, knowledge)
    size = focus.magnification(lenses[0].focal, Interval.exact(x)) if x is not None and len(lenses) == 1 else None
    return size.nominal if size is not None and is_known(size) else None


def _all(parts: Iterator[Told]) -> Told:
    told = Told()
    for part in parts:
        told += part
    return told


def _lenses(question: Question, knowledge: Knowledge) -> list[Distances]:
    return [lens for thing in question.lenses if (lens := distances_of(thing, knowledge.catalogue)) is not None]


def _zones(question: Question, frames: Sequence[Format], knowledge: Knowledge) -> Iterator[Told]:
    """The stop that holds the zone wanted."""
    zone = zone_of(question)
    lenses = _lenses(question, knowledge)
    if zone is None:
        return
    for form in frames:
        blur = Interval.exact(blur_of(question, form, knowledge))
        for lens in lenses:
            yield stop_for_zone(lens, zone, blur, form, question.f_number, question.feet, knowledge.catalogue)
            at, set_to = question.f_number, distance_mm(question)
            if at is not None and set_to is not None:  # 'at 5.6, they stand at 3 m: will 2.5 to 4 m be sharp'
                yield around(lens, at, set_to, blur, form, question.feet)
    if not lenses:
        yield Told((Line("ask", "With which focal length? The stop grows with its square.", wants="focal"),))


def _round(
    wanted: float, subject: float, question: Question, frames: Sequence[Format], knowledge: Knowledge
) -> Iterator[Told]:
    """The stop that makes so much sharp around the distance told: the zone round it."""
    near, far = depth.zone_around_mm(Interval.exact(subject), Interval.exact(wanted))
    if is_known(near) and is_known(far):
        zone = f"{near.nominal:.6g} mm to {far.nominal:.6g} mm"
        yield from _zones(question.with_(values=(*question.values, ("zone", zone))), frames, knowledge)


def _close_up(wanted: float, size: float, form: Format, question: Question, knowledge: Knowledge) -> Told:
    """The stop that makes so much sharp at a magnification, whatever the lens."""
    blur = Interval.exact(blur_of(question, form, knowledge))
    needed = depth.f_number_for_depth(Interval.exact(wanted), Interval.exact(size), blur, EVEN_PUPILS)
    if not is_known(needed):
        return Told()
    deep = depth_words(wanted, question.feet)
    case = f"{deep} deep at {times(size)} on {form.name}"
    ring, words = next_on_ring(needed.nominal, knowledge.catalogue)
    rows = [Quantity("f_number", needed, case)]
    rows += [Quantity("f_number", Interval.exact(ring), f"{case}, next full stop")] if ring is not None else []
    text = (
        f"{case}: f/{f_number(needed.nominal)} at least{words}. It counts as f/{f_number(needed.nominal * (1 + size))}."
    )
    return Told((Line("head", text),), tuple(rows))


def _of_other(
    subject: float, other: float, question: Question, frames: Sequence[Format], knowledge: Knowledge
) -> Iterator[Told]:
    """The stop at which a second thing is still sharp with the lens set to the first."""
    for form in frames:
        blur = Interval.exact(blur_of(question, form, knowledge))
        for lens in _lenses(question, knowledge):
            at, off = (
                depth.front_principal_to_subject_mm(Interval.exact(one), lens.focal, lens.hiatus)
                for one in (subject, other)
            )
            needed = depth.f_number_for_point(off, at, lens.focal, blur, lens.likely_pupil)
            if not is_known(needed):
                continue
            focal, set_to = trimmed(lens.focal.nominal, 1), distance(subject, question.feet)
            case = f"{focal} mm, {form.name}, set to {set_to}, sharp at {distance(other, question.feet)}"
            ring, words = next_on_ring(needed.nominal, knowledge.catalogue)
            rows = [Quantity("f_number", needed, case)]
            rows += [Quantity("f_number", Interval.exact(ring), f"{case}, next full stop")] if ring is not None else []
            yield Told((Line("head", f"{case}: f/{f_number(needed.nominal)} at least{words}."),), tuple(rows))
