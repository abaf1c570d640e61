"""What is sharp, in lines and numbers: around a distance, set to the hyperfocal one, close up; a paper stop for it."""

from __future__ import annotations

from collections.abc import Sequence
from math import isinf

from engine.answers.close.close_rows import EVEN_PUPILS, LIGHT_MATTERS
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import FAR_MM, distance_mm, mentions, number_beside, numbers
from engine.answers.parts.wording import about, depth_words, distance, f_number, small_mm, times, trimmed
from engine.answers.seat.distances import Distances
from engine.base.interval import Interval, is_known
from engine.base.units import MM_PER_METRE
from engine.facts.records import Format
from engine.physics import closeup, depth, focus
from grammar.questions import Question

NEARLY_M = 0.005  # the same distance, told twice
_POINT = "distance"  # key of where else a point lies, from the sensor where a talk told it behind the subject


def set_hyperfocal(focal: float, at: float, blur: Interval, form: Format, feet: bool) -> Told:
    """The hyperfocal distance of a lens at a stop, and what is sharp set there and set to infinity."""
    far = depth.hyperfocal_mm(Interval.exact(focal), Interval.exact(at), blur)
    if not is_known(far):
        return Told()
    case = f"{trimmed(focal, 1)} mm f/{f_number(at)}, {form.name}"
    text = (
        f"{case}: hyperfocal {distance(far.nominal, feet)}; set there it is sharp from"
        f" {distance(far.nominal / 2, feet)} to infinity, set to infinity from {distance(far.nominal, feet)} on"
        f" (blur {small_mm(blur.nominal)})"
    )
    half = Interval.exact(far.nominal / 2)
    return Told(
        (Line("fact", text),),
        (Quantity("hyperfocal_mm", far, case), Quantity("dof_near_mm", half, f"{case}, at the hyperfocal distance"),
         Quantity("dof_near_mm", far, f"{case}, set to infinity")),
    )  # fmt: skip


def around(lens: Distances, at: float, subject: float, blur: Interval, form: Format, feet: bool) -> Told:
    """Near and far limit for a subject at a distance from the sensor, planes and pupils as far as they are known."""
    f, n, far_at = lens.focal, Interval.exact(at), Interval.exact(subject)
    if subject < f.nominal:
        return Told()  # 'if the slide bulges 1 mm': so deep shall be sharp, and no distance
    near = depth.near_limit_from_sensor_mm(far_at, f, lens.hiatus, n, blur, lens.likely_pupil)
    far = depth.far_limit_from_sensor_mm(far_at, f, lens.hiatus, n, blur, lens.likely_pupil)
    if not (is_known(near) and is_known(far)):
        least = distance(4 * f.nominal, feet)
        near_to = f"{distance(subject, feet)} from the sensor is nearer than {trimmed(f.nominal, 1)} mm can focus"
        return Told((Line("fact", f"{near_to}: about {least}, at life size."),))
    case = f"{trimmed(f.nominal, 1)} mm f/{f_number(at)} at {distance(subject, feet)}, {form.name}"
    rows = [Quantity("dof_near_mm", near, case), Quantity("dof_far_mm", far, case)]
    text = f"{case}: sharp from {_ends(near.nominal, far.nominal, feet)}"
    if not isinf(far.nominal):
        whole = depth.total_depth_mm(
            depth.front_principal_to_subject_mm(far_at, f, lens.hiatus), f, n, blur, lens.likely_pupil
        )
        if is_known(whole):
            rows.append(Quantity("dof_mm", whole, case))
            text += f", {about(whole, lambda value: depth_words(value, feet))} in all"
    return Told((Line("fact", f"{text} (from the sensor)"),), tuple(rows))


def set_apart(question: Question) -> tuple[float, float] | None:
    """Where it is focused and where the point lies whose blur is asked of, from the sensor, mm; None where it is not.

    The nearer of the two distances told is what it is focused at; 'the wall 4 m behind' is told from there.
    """
    again = question.follows and question.said(_POINT) is not None and len(question.lenses) == 1
    if not again and not mentions(question, "point-blurred"):
        return None
    told = (distance_mm(question), *numbers(question, _POINT, "length", "thickness", "extension"))
    apart = list(dict.fromkeys(one for one in told if one is not None and one >= FAR_MM))
    beyond = number_beside(question, "so-far-behind")
    if len(apart) != 2:
        return None
    rest = [one for one in apart if beyond is None or abs(one / MM_PER_METRE - beyond) > NEARLY_M]
    if beyond is not None and len(rest) == 1:
        return rest[0], rest[0] + beyond * MM_PER_METRE
    return min(apart), max(apart)


def beyond_mm(question: Question) -> float:
    """How far behind the subject a point lies: the distance told in figures, of any unit; 0 where none is."""
    beyond = number_beside(question, "so-far-behind")
    told = (distance_mm(question), *numbers(question, _POINT, "length"))
    return next((one for one in told if one is not None and one >= FAR_MM), (beyond or 0.0) * MM_PER_METRE)


def blur_behind(
    lens: Distances, at: float, apart: tuple[float, float], blur: Interval, form: Format, feet: bool
) -> Told:
    """How wide a point comes out that lies elsewhere than where it is focused."""
    f, subject, point = lens.focal, *apart
    u = depth.front_principal_to_subject_mm(Interval.exact(subject), f, lens.hiatus)
    wide = depth.point_blur_mm(u + (point - subject), u, f, Interval.exact(at), lens.likely_pupil)
    if not is_known(wide):
        return Told()
    case = f"{trimmed(f.nominal, 1)} mm f/{f_number(at)}, {form.name}"
    text = (
        f"{case}: focused at {distance(subject, feet)}, a point at {distance(point, feet)} comes out"
        f" {about(wide, small_mm)} wide on the sensor, {trimmed(100 * wide.nominal / form.width_mm, 1)} % of the"
        f" width of the picture and {trimmed(wide.nominal / blur.nominal, 0)} times what counts as sharp."
    )
    return Told((Line("head", text),), (Quantity("far_blur_mm", wide, case),))


def _ends(near: float, far: float, feet: bool) -> str:
    """From where to where; finer where rounded they would be told alike."""
    first, last = distance(near, feet), distance(far, feet)
    if first != last or feet:
        return f"{first} to {last}"
    if far < MM_PER_METRE:
        digits = 0 if round(near) != round(far) else 1
        return f"{near:.{digits}f} to {far:.{digits}f} mm"
    digits = 1 if f"{near / MM_PER_METRE:.1f}" != f"{far / MM_PER_METRE:.1f}" else 2
    return f"{near / MM_PER_METRE:.{digits}f} m to {far / MM_PER_METRE:.{digits}f} m"


def to_infinity(lens: Distances, at: float, subject: float, blur: Interval, feet: bool) -> Told:
    """Whether what lies at infinity is sharp too, set to a distance from the sensor, and to which it is to be set."""
    f, n, far_at = lens.focal, Interval.exact(at), Interval.exact(subject)
    far = depth.far_limit_from_sensor_mm(far_at, f, lens.hiatus, n, blur, lens.likely_pupil)
    to = depth.hyperfocal_mm(f, n, blur)
    if not (is_known(far) and is_known(to)):
        return Told()
    if isinf(far.nominal):
        return Told((Line("head", f"Yes: set to {distance(subject, feet)} it is sharp to infinity."),))
    text = (
        f"Infinity is not sharp with it set to {distance(subject, feet)}: it ends at {distance(far.nominal, feet)}. "
        f"Set it to {distance(to.nominal, feet)}: sharp from {distance(to.nominal / 2, feet)} to infinity."
    )
    return Told((Line("head", text),))


def close_up(m: float, at: float, blur: Interval, form: Format, feet: bool) -> Told:
    """How deep it is sharp at a magnification, and what the stop counts as for light."""
    total = depth.close_up_depth_mm(Interval.exact(m), Interval.exact(at), blur, EVEN_PUPILS)
    if not is_known(total):
        return Told()
    case = f"m = {trimmed(m, 2)}, f/{f_number(at)}, {form.name}"
    text = f"{times(m)} at f/{f_number(at)} on {form.name}: {depth_words(total.nominal, feet)} sharp in all"
    rows = [Quantity("dof_mm", total, case)]
    counted = focus.effective_f_number(Interval.exact(at), Interval.exact(m), EVEN_PUPILS)
    if is_known(counted):
        rows.append(Quantity("effective_f_number", counted, f"m = {trimmed(m, 2)}"))
        text += f"; it counts as f/{f_number(counted.nominal)} for light" if m >= LIGHT_MATTERS else ""
    return Told((Line("fact", text, 1),), tuple(rows))


def paper_stop(lenses: Sequence[float], paper: float) -> Told:
    """A disc of paper with a hole, for a lens whose iris is fixed or too wide."""
    lines, rows = [], []
    for focal in lenses:
        hole = closeup.hole_mm(Interval.exact(focal), Interval.exact(paper))
        if is_known(hole):
            rows.append(Quantity("hole_mm", hole, f"{trimmed(focal, 1)} mm at f/{paper:g}"))
            lines.append(f"{trimmed(hole.nominal, 1)} mm for {trimmed(focal, 1)} mm")
    text = (
        f"Stop it down; a lens without an iris takes a paper stop, for f/{paper:g} a hole of " + ", ".join(lines) + "."
    )
    return Told((Line("text", f"{text} Or take several frames and stack them."),), tuple(rows))
