"""Close-up lenses: where a lens at infinity is sharp behind one, and the tube that would do the same."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from math import inf

from engine.answers.close.close_rows import LIGHT_MATTERS, Shown, light_rows, room_told
from engine.answers.close.powers_joined import powers_asked
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, mentions, number, stop
from engine.answers.parts.wording import area, depth_words, f_number, figures, listed, ranged, small_mm, times, trimmed
from engine.answers.picture.blur import blur_of
from engine.answers.picture.moved_out import extension_mm
from engine.answers.seat.distances import Distances, distances_of
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.base.units import MM_PER_METRE
from engine.facts.records import Format
from engine.physics import closeup
from grammar.questions import CLOSE_UP_LENS, Question
from grammar.things.casting import DRAWN

SPOKEN_OF = (50, 100, 200)  # mm: focal lengths whose magnification shows how it grows
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
    wanted = distance_mm(question) or number(question, "front_glass")
    tube = sum(thing.thickness_mm[1] for thing in question.adapters if thing.thickness_mm and thing.piece in DRAWN)
    if not powers and tube and any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
        yield _as_tube(tube, lens, shown)
        return
    size = number(question, "magnification")
    if not powers and size and any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
        yield _for_size(size, lens, shown)
        return
    if not powers and wanted is not None and any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
        yield _for_room(wanted, lens, shown)
        return
    if not powers:
        if any(thing.piece == CLOSE_UP_LENS for thing in question.adapters):
            for row in shown.facts.assumptions.values():
                if row.id.startswith(USUAL):
                    yield _close_up(lens, row.value.nominal, shown)
        return
    asked = powers_asked(question, powers)
    if len(asked) > 1:
        yield from (_close_up(lens, power, shown) for power in asked)  # '+2 or +4 on a 100'
        return
    own = lens.extension_at(nearest_mm) if nearest_mm is not None else UNKNOWN
    near = own.nominal if is_known(own) else None
    if tube:
        yield _set_out(lens, sum(powers), tube, f"and {small_mm(tube)} of tube", shown, 0)
    if tube and near is not None:
        at_mark = f"and {small_mm(tube)} of tube, the ring at its {shown.distance(nearest_mm or 0)} mark"
        yield _set_out(lens, sum(powers), tube + near, at_mark, shown)
    yield _close_up(lens, sum(powers), shown)
    if near is not None:
        yield _set_out(lens, sum(powers), near, f"at the {shown.distance(nearest_mm or 0)} mark", shown)


def behind_close_up(at: float, frames: Sequence[Format], question: Question, knowledge: Knowledge) -> Iterator[Told]:
    """What is sharp behind a close-up lens, where the lens is known and no tube stands behind it."""
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    if lens is None or extension_mm(question, knowledge.catalogue) is not None:
        return
    for form in frames:
        shown = Shown(knowledge.catalogue, at, form, question.feet, blur_of(question, form, knowledge))
        told = _deep_behind(lens, question, shown)
        if told.lines:
            yield told


def _deep_behind(lens: Distances, question: Question, shown: Shown) -> Told:
    """What is sharp in all behind the close-up lenses told, the lens at infinity: its image stays in its focus."""
    power, blur = sum(powers_of(question)), shown.blur()
    if not power or blur is None or shown.stop is None or shown.form is None:
        return Told()
    magnified = closeup.close_up_magnification(lens.focal, Interval.exact(power), Interval.exact(0.0))
    deep = closeup.coupled_depth_mm(Interval.exact(shown.stop), blur, magnified)
    if not (is_known(deep) and is_known(magnified)):
        return Told()
    case = f"+{figures(power, 3)} dioptre, {trimmed(lens.focal.nominal, 1)} mm f/{f_number(shown.stop)}"
    text = (
        f"{case}, {shown.form.name}: {depth_words(deep.nominal, shown.feet)} sharp in all, {times(magnified.nominal)}"
    )
    row = Quantity("dof_mm", deep, f"{case}, {shown.form.id}")
    return Told((Line("head", f"{text}, the lens at infinity."),), (row,))


def light_behind(question: Question, knowledge: Knowledge) -> Told:
    """That a close-up lens costs no light, where that is what is asked, and no setting of an exposure."""
    worn = any(piece.piece == CLOSE_UP_LENS for piece in question.adapters)
    drawn = extension_mm(question, knowledge.catalogue) is not None
    if not worn or drawn or any(question.said(key) for key in ("light", "shutter", "iso", "frame_rate")):
        return Told()
    at = stop(question)
    stays = f": f/{f_number(at)} stays f/{f_number(at)}" if at is not None else ""
    text = f"No light is lost by a close-up lens{stays}. The lens is not moved out, as it is by a tube or a bellows."
    return Told((Line("head", text),), (Quantity("light_difference_stops", Interval.exact(0.0), "close-up lens"),))


def whatever_lens(question: Question, shown: Shown) -> Told:
    """How near a lens at infinity is sharp behind what is told, whatever its focal length: one over the strength."""
    powers = powers_of(question)
    told = Told() if powers else _power_for_room(question, shown)
    asked = powers_asked(question, powers) if powers else []
    each = [] if mentions(question, "added-up") or len(asked) > 1 else powers
    for power in dict.fromkeys([*each, *asked]):
        room = closeup.close_up_focus_mm(Interval.exact(power), Interval(inf, inf, inf))
        if not is_known(room):
            continue
        name = f"+{figures(power, 3)} dioptre at infinity"
        sizes = listed([f"{focal:g} mm {times(focal * power / MM_PER_METRE)}" for focal in SPOKEN_OF])
        sharp = f"sharp {shown.distance(room.nominal)} before the close-up lens, whatever lens is behind it"
        told += Told(
            (Line("head", f"{name}: {sharp}; {sizes}."),), (Quantity("working_distance_mm", room, name),)
        )  # fmt: skip
    return told


def _power_for_room(question: Question, shown: Shown) -> Told:
    """'what power for half a metre': the strength that is sharp so far before it, whatever lens is at infinity."""
    room = distance_mm(question) or number(question, "front_glass")
    worn = any(thing.piece == CLOSE_UP_LENS for thing in question.adapters)
    power = closeup.dioptres_of_focal(Interval.exact(room)) if worn and room else UNKNOWN
    if room is None or not is_known(power):
        return Told()
    there, strength = shown.distance(room), figures(power.nominal, 2)
    text = f"To be sharp {there} before it, whatever lens is behind it at infinity: +{strength} dioptres."
    return Told((Line("head", text),), (Quantity("dioptres", power, f"sharp at {there}"),))


def _as_tube(tube_mm: float, lens: Distances, shown: Shown) -> Told:
    """The strength that does what a tube does to a lens at infinity: m = x/f = f/g, so that one over g is x/(f*f)."""
    focal = lens.focal.nominal
    power = Interval.exact(MM_PER_METRE * tube_mm / focal**2)
    name = f"{small_mm(tube_mm)} of tube on {trimmed(focal, 1)} mm"
    text = f"{name} does what a close-up lens of +{figures(power.nominal, 2)} dioptres does, the lens at infinity."
    rows = (Quantity("dioptres", power, f"as {name}"),)
    return Told((Line("head", text),), rows) + _close_up(lens, power.nominal, shown)


def _for_room(room_mm: float, lens: Distances, shown: Shown) -> Told:
    """The strength that makes a lens at infinity sharp so far before it: one over the distance in metres."""
    power = closeup.dioptres_of_focal(Interval.exact(room_mm))
    if not is_known(power):
        return Told()
    there = shown.distance(room_mm)
    text = f"To be sharp {there} before it, the lens at infinity: +{figures(power.nominal, 2)} dioptres."
    rows = (Quantity("dioptres", power, f"sharp at {there}"),)
    return Told((Line("head", text),), rows) + _close_up(lens, power.nominal, shown)


def _for_size(size: float, lens: Distances, shown: Shown) -> Told:
    """The strength that gives a lens at infinity this magnification: m = f*P/1000."""
    power = Interval.exact(MM_PER_METRE * size / lens.focal.nominal)
    focal = f"{trimmed(lens.focal.nominal, 1)} mm"
    text = f"For {times(size)} on {focal} at infinity: +{figures(power.nominal, 2)} dioptres."
    rows = (Quantity("dioptres", power, f"{times(size)} on {focal}"),)
    return Told((Line("head", text),), rows) + _close_up(lens, power.nominal, shown)


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
    stays = f", f/{f_number(shown.stop)} stays f/{f_number(shown.stop)}" if shown.stop is not None else ""
    head = f"{name}: {sharp}, {times(magnified.nominal)}{field}; no light is lost{stays}."
    rows = (Quantity("working_distance_mm", room, name), Quantity("magnification", magnified, name), *numbers)
    if shown.stop is not None:
        rows += (Quantity("effective_f_number", Interval.exact(shown.stop), name),)
    told = Told((Line("head", head),), rows) + room_told(room, shown, name, 1)
    if is_known(same):
        large = Interval.exact(magnified.nominal * focal)
        text = (
            f"a tube on {trimmed(focal, 1)} mm for as near: {small_mm(same.nominal)}, for as large: "
            f"{small_mm(large.nominal)}; it costs light but adds no glass"
        )
        case = f"{trimmed(focal, 1)} mm lens, "
        rows = (Quantity("extension_mm", same, f"{case}the same by a tube"),)
        rows += (Quantity("extension_mm", large, f"{case}as large by a tube"),)
        told += Told((Line("fact", text, 1),), rows)
    return told


def _set_out(lens: Distances, dioptres: float, extension_mm: float, where: str, shown: Shown, level: int = 1) -> Told:
    """The same with the lens moved out, by its own ring or by tubes: nearer, larger, at the light that this costs."""
    at = lens.at(Interval.exact(extension_mm))
    power = Interval.exact(dioptres)
    room = closeup.close_up_focus_mm(power, at.working_distance_mm.at_least(0.01)
                                     if is_known(at.working_distance_mm) else UNKNOWN)  # fmt: skip
    magnified = closeup.close_up_magnification(lens.focal, power, at.magnification)
    if not (is_known(room) and is_known(magnified) and is_known(at.magnification)):
        return Told()
    name = f"+{figures(dioptres, 3)} dioptre {where}"
    field, numbers = _field(magnified, shown, name)
    light = light_rows(at.magnification.nominal, shown.stop, name, lens)
    sharp = f"sharp about {ranged(room, shown.distance)} before the close-up lens"
    costs = f"; {light.lines[0].text}" if at.magnification.nominal > LIGHT_MATTERS else ""
    text = f"{name}: {sharp}, {times(magnified.nominal)}{field}{costs}"
    rows = (
        Quantity("working_distance_mm", room, name), Quantity("magnification", magnified, name), *numbers,
        *light.quantities,
    )  # fmt: skip
    line = Line("fact", text, 1) if level else Line("head", f"{text}.")
    return Told((line,), rows) + room_told(room, shown, name, 2)


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
