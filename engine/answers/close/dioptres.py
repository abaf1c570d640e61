"""Close-up lenses: where a lens at infinity is sharp behind one, and the tube that would do the same."""

from __future__ import annotations

from collections.abc import Iterator
from math import inf

from engine.answers.close.close_rows import Shown
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import area, figures, ranged, small_mm, times, trimmed
from engine.answers.seat.distances import Distances
from engine.base.interval import Interval, is_known
from engine.physics import closeup
from grammar.questions import Question

CLOSE_UP_LENS = "close-up-lens"
USUAL = "close-up-lens-"  # the assumptions that hold the powers of a usual set


def powers_of(question: Question) -> list[float]:
    """The strengths of the close-up lenses told, in dioptres; a bare number beside one is its strength."""
    out = []
    for thing in question.adapters:
        if thing.piece == CLOSE_UP_LENS:
            value = thing.factor or (thing.thickness_mm[0] if thing.thickness_mm else None)
            out += [value] if value else []
    return out


def with_close_up_lens(
    lens: Distances, question: Question, shown: Shown, nearest_mm: float | None = None
) -> Iterator[Told]:
    """A close-up lens on the lens at infinity and at its nearest mark, and the tube that does the same."""
    powers = powers_of(question)
    if not powers:
        if any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
            for row in shown.facts.assumptions.values():
                if row.id.startswith(USUAL):
                    yield _close_up(lens, row.value.nominal, shown)
        return
    yield _close_up(lens, sum(powers), shown)
    if nearest_mm is not None:
        yield _at_mark(lens, sum(powers), nearest_mm, shown)


def _close_up(lens: Distances, dioptres: float, shown: Shown) -> Told:
    """A close-up lens of this strength on the lens at infinity, and the tube that does the same."""
    power = Interval.exact(dioptres)
    f, focal = lens.focal, lens.focal.nominal
    room = closeup.close_up_focus_mm(power, Interval(inf, inf, inf))
    magnified = closeup.close_up_magnification(f, power, Interval.exact(0.0))
    same = closeup.extension_for_subject_mm(f, room)
    if not (is_known(room) and is_known(magnified)):
        return Told()
    name = f"+{figures(power.nominal, 3)} dioptre at infinity"
    field, numbers = _field(magnified, shown, name)
    sharp = f"sharp {shown.distance(room.nominal)} before the close-up lens"
    head = f"{name}: {sharp}, {times(magnified.nominal)}{field}; no light is lost."
    rows = (Quantity("working_distance_mm", room, name), Quantity("magnification", magnified, name), *numbers)
    told = Told((Line("head", head),), rows)
    if is_known(same):
        tube = f"{small_mm(same.nominal)}, which costs light but adds no glass"
        text = f"the same from a tube on {trimmed(focal, 1)} mm: {tube}"
        case = f"{trimmed(focal, 1)} mm lens, the same by a tube"
        told += Told((Line("fact", text, 1),), (Quantity("extension_mm", same, case),))
    return told


def _at_mark(lens: Distances, dioptres: float, mark_mm: float, shown: Shown) -> Told:
    """The same with the lens set to a mark of its scale: nearer and larger."""
    own = lens.extension_at(mark_mm)
    if not is_known(own):
        return Told()
    at = lens.at(own)
    power = Interval.exact(dioptres)
    room = closeup.close_up_focus_mm(power, at.working_distance_mm)
    magnified = closeup.close_up_magnification(lens.focal, power, at.magnification)
    if not (is_known(room) and is_known(magnified)):
        return Told()
    name = f"+{figures(dioptres, 3)} dioptre at the {shown.distance(mark_mm)} mark"
    field, numbers = _field(magnified, shown, name)
    sharp = f"sharp about {ranged(room, shown.distance)} before the close-up lens"
    text = f"{name}: {sharp}, {times(magnified.nominal)}{field}"
    rows = (Quantity("working_distance_mm", room, name), Quantity("magnification", magnified, name), *numbers)
    return Told((Line("fact", text, 1),), rows)


def _field(magnified: Interval, shown: Shown, case: str) -> tuple[str, tuple[Quantity, ...]]:
    """The field at the subject as words and numbers; nothing where no area is named."""
    if shown.form is None or magnified.least <= 0:
        return "", ()
    wide = closeup.field_mm(Interval.exact(shown.form.width_mm), magnified)
    high = closeup.field_mm(Interval.exact(shown.form.height_mm), magnified)
    if not (is_known(wide) and is_known(high)):
        return "", ()
    text = f", field {area(wide.nominal, high.nominal, shown.feet)} on {shown.form.name}"
    return text, (Quantity("field_width_mm", wide, case), Quantity("field_height_mm", high, case))
