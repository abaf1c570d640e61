"""One setting close up as a line and its numbers: where the subject stands, how large it comes, what light it costs."""

from __future__ import annotations

from collections.abc import Sequence
from math import hypot

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import about, area, depth_words, distance, f_number, ranged, small_mm, times, trimmed
from engine.answers.seat.distances import At, Distances
from engine.base.compact import compact
from engine.base.interval import Interval, is_known
from engine.chains.setup import Facts
from engine.facts.records import Format
from engine.physics import closeup, depth, focus

EVEN_PUPILS = Interval.exact(1.0)
LIGHT_MATTERS = 0.1  # magnification from which the f-number that counts is told


@compact
class Shown:
    """How the rows of one answer are told: the stop, the area used, feet or metres, and the facts assumed."""

    facts: Facts
    stop: float | None = None
    form: Format | None = None
    feet: bool = False
    blur_mm: float | None = None  # where it is not a share of the diagonal
    others: tuple[Format, ...] = ()  # further areas that are named, of which the field is told

    def blur(self) -> Interval | None:
        if self.blur_mm is not None:
            return Interval.exact(self.blur_mm)
        if self.form is None:
            return None
        divisor = self.facts.assumptions["blur-divisor"].value.nominal
        return Interval.exact(hypot(self.form.width_mm, self.form.height_mm) / divisor)

    def distance(self, value: float) -> str:
        return distance(value, self.feet)


def at_extension(
    lens: Distances, extension_mm: float | Interval, shown: Shown, case: str, *,
    end: str = "far", lead: str = "", level: int = 1,
) -> Told:  # fmt: skip
    """A lens at one extension. `end`: which distance it is, far (infinity mark), near (nearest mark) or focus (set)."""
    x = extension_mm if isinstance(extension_mm, Interval) else Interval.exact(extension_mm)
    at = lens.at(x)
    if not is_known(at.from_sensor_mm) or not is_known(at.magnification):
        return Told()
    rows = [
        Quantity(f"{end}_from_sensor_mm", at.from_sensor_mm, case),
        Quantity("magnification", at.magnification, case),
    ]
    if end != "focus":
        rows.append(Quantity("focus_from_sensor_mm", at.from_sensor_mm, case))
    rows.append(Quantity("extension_mm", x, case))
    if is_known(at.from_front_principal_mm):
        rows.append(Quantity("from_front_principal_mm", at.from_front_principal_mm, case))
    text = f"{lead or case}: sharp at {shown.distance(at.from_sensor_mm.nominal)} from the sensor"
    text += f", {about(at.magnification, times)}"
    room = at.working_distance_mm
    if is_known(room) and room.greatest > 0:
        rows.append(Quantity("working_distance_mm", room.at_least(0.0), case))
        sure = "" if room.width < 0.02 * room.nominal else "about "
        text += f", {sure}{ranged(room.at_least(0.0), shown.distance)} before the front glass"
    told = Told((Line("fact", f"{text}.", level),), tuple(rows))
    told += _picture(lens, at, shown, case, level + 1)
    return told + room_told(room, shown, lead or case, level + 1)


def assumed_note(lens: Distances) -> Told:
    """What the ranges come from, where the lens's planes or pupils are assumed."""
    if not lens.assumed:
        return Told()
    text = (
        "Assumed by construction: where the lens's planes and pupils lie; hence the ranges. Front glass to flange, in "
        "the gear file, or one tape reading narrows them."
    )
    return Told((Line("note", text),))


def _picture(lens: Distances, at: At, shown: Shown, case: str, level: int) -> Told:
    """The field, the light that counts and the depth at one setting, as one line."""
    assert is_known(at.magnification)
    parts: list[str] = []
    rows: list[Quantity] = []
    if shown.form is not None and at.magnification.least > 0:
        wide = closeup.field_mm(Interval.exact(shown.form.width_mm), at.magnification)
        high = closeup.field_mm(Interval.exact(shown.form.height_mm), at.magnification)
        if is_known(wide) and is_known(high):
            rows += [Quantity("field_width_mm", wide, case), Quantity("field_height_mm", high, case)]
            parts.append(f"field {area(wide.nominal, high.nominal, shown.feet)} on {shown.form.name}")
    further, more = _further_fields(at.magnification, shown, case)
    parts += further
    rows += more
    light = light_rows(at.magnification.nominal, shown.stop, case, lens)
    rows += light.quantities
    if at.magnification.nominal > LIGHT_MATTERS:
        parts += [line.text for line in light.lines]
    sharp = _depth(lens, at, shown)
    if sharp is not None:
        rows.append(Quantity("dof_mm", sharp, case))
        parts.append(f"{depth_words(sharp.nominal, shown.feet)} deep at f/{f_number(shown.stop or 0)}")
    return Told((Line("fact", "; ".join(parts), level),) if parts else (), tuple(rows))


def _further_fields(magnification: Interval, shown: Shown, case: str) -> tuple[list[str], list[Quantity]]:
    """The field on each further area that is named."""
    parts: list[str] = []
    rows: list[Quantity] = []
    for form in shown.others if magnification.least > 0 else ():
        wide = closeup.field_mm(Interval.exact(form.width_mm), magnification)
        high = closeup.field_mm(Interval.exact(form.height_mm), magnification)
        if is_known(wide) and is_known(high):
            on_it = f"{case}, {form.id}"
            rows += [Quantity("field_width_mm", wide, on_it), Quantity("field_height_mm", high, on_it)]
            parts.append(f"{area(wide.nominal, high.nominal, shown.feet)} on {form.name}")
    return parts, rows


def _depth(lens: Distances, at: At, shown: Shown) -> Interval | None:
    blur = shown.blur()
    if shown.stop is None or blur is None:
        return None
    stop = Interval.exact(shown.stop)
    found = depth.total_depth_mm(at.from_front_principal_mm, lens.focal, stop, blur, lens.likely_pupil)
    return found if is_known(found) and found.greatest < 1e6 else None


def room_told(room: object, shown: Shown, lead: str, level: int) -> Told:
    """The warning where the subject would touch the lens, or no light can get in."""
    if not is_known(room):
        return Told()
    least = shown.facts.assumptions["working-room"].value.nominal
    if room.greatest <= 0:
        text = f"{lead}: the plane in focus lies inside the lens; nothing can be brought there"
    elif room.least <= 0:
        text = f"{lead}: the subject may have to touch the lens, or the plane in focus lies inside it; go near slowly"
    elif room.least < least:
        left = shown.distance(room.least)
        text = f"{lead}: as little as {left} is left: the lens shades its subject and may knock against it"
    else:
        return Told()
    return Told((Line("caution", f"{text}.", level),))


def light_rows(magnification: float, stop: float | None, case: str, lens: Distances | None = None) -> Told:
    """The f-number that counts for exposure and the stops lost; by the lens's pupils, and for even ones."""
    m = Interval.exact(magnification)
    pupil = lens.likely_pupil if lens is not None else EVEN_PUPILS
    told = Told()
    for at, name in ((pupil, case), (EVEN_PUPILS, f"{case}, even pupils")):
        lost = focus.light_lost_stops(m, at)
        if is_known(lost):
            told += Told((), (Quantity("light_difference_stops", lost, name),))
        effective = focus.effective_f_number(Interval.exact(stop), m, at) if stop is not None else lost
        if stop is not None and is_known(effective):
            told += Told((), (Quantity("effective_f_number", effective, name),))
        if at is EVEN_PUPILS and pupil is EVEN_PUPILS:
            break
    return Told((Line("fact", _light_text(m, pupil, stop), 1),)) + told


def _light_text(magnification: Interval, pupil: Interval, stop: float | None) -> str:
    """'f/8 counts as f/16 (f/14 to f/20), 2.0 stops lost'; the stops alone where no f-number is told."""
    lost = focus.light_lost_stops(magnification, pupil)
    assert is_known(lost)
    if stop is None:
        return f"{about(lost, lambda value: f'{value:.1f} stops')} of light lost"
    effective = focus.effective_f_number(Interval.exact(stop), magnification, pupil)
    assert is_known(effective)
    stops = f"{lost.nominal:.1f}"
    counted = about(effective, lambda value: f"f/{f_number(value)}")
    return f"f/{f_number(stop)} counts as {counted}, {stops} {'stop' if stops == '1.0' else 'stops'} lost"


def at_magnification(lens: Distances, magnification: float, shown: Shown) -> Told:
    """What a wanted magnification asks of a lens: extension, image distance and where the subject then stands."""
    f, m = lens.focal, Interval.exact(magnification)
    extension = closeup.extension_for_magnification_mm(f, m)
    image = closeup.image_distance_mm(f, m)
    if not (is_known(extension) and is_known(image)):
        return Told()
    case = f"m = {trimmed(magnification, 2)}"
    head = (
        f"{trimmed(f.nominal, 1)} mm at {times(magnification)}: {small_mm(extension.nominal)} of extension beyond its "
        f"infinity position, {small_mm(image.nominal)} from the rear principal plane to the sensor."
    )
    rows = (Quantity("image_distance_mm", image, case),)
    return Told((Line("head", head),), rows) + at_extension(
        lens, extension.nominal, shown, case, end="focus", lead="there"
    )


def further(lens: Distances, magnification: float, tubes: Sequence[float]) -> Told:
    """How much more than the tubes told a magnification wants; nothing where they give it, or none were told."""
    wanted = closeup.extension_for_magnification_mm(lens.focal, Interval.exact(magnification))
    if not tubes or not is_known(wanted) or wanted.nominal <= sum(tubes):
        return Told()
    more = wanted - Interval.exact(sum(tubes))
    text = (
        f"for {times(magnification)}: {small_mm(wanted.nominal)} of extension, {small_mm(more.nominal)} more than the"
        f" {small_mm(sum(tubes))} told, all at the infinity mark"
    )
    rows = (Quantity("extension_mm", wanted, f"m = {trimmed(magnification, 2)}"),)
    return Told((Line("fact", text, 1),), rows)


BESIDE_ITS_OWN = "the tube beside its own"  # the case of a stop behind both


def beyond_its_own(
    present: float, focal: float, length: float, case: str, stop: float | None = None, shown: Shown | None = None
) -> Told:
    """What a tube makes of the magnification that a lens has by itself, and what the stop counts as there."""
    grown = closeup.magnification_with_tube(Interval.exact(present), Interval.exact(focal), Interval.exact(length))
    if not is_known(grown):
        return Told()
    text = (
        f"{trimmed(length, 2)} mm of tube adds {times(length / focal)} to the {times(present)} that the"
        f" {trimmed(focal, 1)} mm lens has by itself: {times(grown.nominal)}, its focus ring at the near end."
    )
    rows = [Quantity("magnification", grown, f"{case} tube")]
    if stop is not None:
        counted = Interval.exact(stop) * (Interval.exact(1.0) + grown)
        text += (
            f" There f/{f_number(stop)} counts as f/{f_number(counted.nominal)}, taking the pupils for even (p = 1)."
        )
        rows.append(Quantity("effective_f_number", counted, BESIDE_ITS_OWN))
    if shown is not None and shown.form is not None:
        wide = closeup.field_mm(Interval.exact(shown.form.width_mm), grown)
        high = closeup.field_mm(Interval.exact(shown.form.height_mm), grown)
        if is_known(wide) and is_known(high):
            text += f" The field is {area(wide.nominal, high.nominal, shown.feet)} on {shown.form.name} there."
            rows.append(Quantity("field_width_mm", wide, BESIDE_ITS_OWN))
    return Told((Line("head", text),), tuple(rows))
