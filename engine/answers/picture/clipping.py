"""How extension makes a circle grow, and which openings between lens and sensor cut it."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, Missing, body_side, lens_side
from engine.answers.parts.said import number, numbers, stop
from engine.answers.parts.wording import f_number, listed, ranged, small_mm, times, trimmed
from engine.answers.picture.circles import Thrown
from engine.answers.picture.crops import drawn_so_large
from engine.answers.picture.moved_out import extension_mm, moved_out_mm
from engine.answers.seat.distances import Distances, distances_of
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, Measure, is_known
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import coverage
from engine.physics import openings as shading
from grammar.questions import Question

WHERE = "How far before the sensor does that opening stand? On which body it is used, or that length, decides."

LENS_AND_PLACE = (
    "What focal length and widest stop has the lens, and how far before the sensor does that opening stand?"
)


def grown_out(thrown: Thrown, question: Question, facts: Catalogue) -> tuple[Thrown, Told]:
    """The circle with the lens moved out by the extension told, and a line that says so."""
    x = moved_out_mm(question, facts)
    if x is None:
        return _grown_at_size(thrown, question, facts)
    if thrown.focal_mm is None or thrown.thing is None:
        ask = "How much the circle grows with the extension hangs on the focal length: what is it?"
        return thrown, Told((Line("ask", ask, wants="focal"),))
    lens = distances_of(thrown.thing, facts)
    known = lens is not None and "pupil_magnification" not in lens.assumed
    rows = facts.assumptions
    grown = coverage.image_circle_mm(
        thrown.circle_mm, Interval.exact(x), Interval.exact(thrown.focal_mm), lens.pupil if lens and known else UNKNOWN,
        rows["circle-growth"].value, rows["circle-growth-without-pupil"].value,
    )  # fmt: skip
    if not is_known(grown):
        return thrown, Told()
    at = ranged(thrown.circle_mm, lambda value: f"{trimmed(value, 1)} mm")
    text = f"the circle has grown from {at} at infinity by {small_mm(x)} of extension"
    told = Told((Line("fact", text, 1),), (Quantity("extension_mm", Interval.exact(x), thrown.case),))
    return replace(thrown, circle_mm=grown, extension_mm=x), told


def _grown_at_size(thrown: Thrown, question: Question, facts: Catalogue) -> tuple[Thrown, Told]:
    """The circle at the magnification that is told: as x over f is the magnification, whatever the focal length."""
    m = number(question, "magnification")
    if m is None or thrown.at_work or not thrown.typical or (m == 1.0 and not drawn_so_large(question)):
        return thrown, Told()
    rows = facts.assumptions
    grown = coverage.image_circle_mm(
        thrown.circle_mm, Interval.exact(m), Interval.exact(1.0), UNKNOWN, rows["circle-growth"].value,
        rows["circle-growth-without-pupil"].value,
    )  # fmt: skip
    if not is_known(grown):
        return thrown, Told()
    at = ranged(thrown.circle_mm, lambda value: f"{trimmed(value, 1)} mm")
    text = f"the circle has grown from {at} at infinity, at {times(m)}, of a lens that moves out whole"
    row = Quantity("magnification", Interval.exact(m), thrown.case)
    return replace(thrown, circle_mm=grown), Told((Line("fact", text, 1),), (row,))


def openings(question: Question, knowledge: Knowledge, frames: list[Format]) -> Told:
    """The openings between lens and sensor that cut the largest frame's corners; nothing where none is known to.

    An opening that is told is answered whatever comes out, and first of all.
    """
    facts = knowledge.catalogue
    optics = distances_of(question.lens, facts) if question.lens is not None else None
    at = stop(question)
    if optics is None or at is None or not frames:
        return _hangs_on(numbers(question, "bore"), frames)
    form = max(frames, key=lambda one: one.diagonal_mm)
    x = extension_mm(question, facts) or 0.0
    told = Told()
    lens, body = lens_side(question.lens, facts), body_side(question.body, facts)
    if isinstance(lens, LensSide) and isinstance(body, BodySide):
        for name, opening, before in _known_openings(question, body, facts):
            told += _cut(name, opening, before, optics, at, form, x)
    for bore in numbers(question, "bore"):
        name, opening = f"the {small_mm(bore)} opening", Interval.exact(bore)
        place = _stands(question, lens, body, optics, x)
        if is_known(place):
            cut = _cut(name, opening, place, optics, at, form, x)
            open_ = cut.lines and not (isinstance(body, BodySide) or place.is_exact)
            cut = cut if cut.lines else _clear(name, at, form)
            told += cut if question.lens is not None and question.lens.ids else cut.as_heads()
            told += Told((Line("ask", WHERE),)) if open_ else Told()
    return told


def _hangs_on(bores: tuple[float, ...], frames: list[Format]) -> Told:
    """What can be told of an opening where lens and stop are not: how it compares with the frames, and what decides."""
    told = Told()
    for bore in bores:
        wide = [f"{one.name} ({trimmed(one.diagonal_mm, 1)} mm)" for one in frames if one.diagonal_mm <= bore]
        narrow = [f"{one.name} ({trimmed(one.diagonal_mm, 1)} mm)" for one in frames if one.diagonal_mm > bore]
        sides = [f"wider than the diagonal of {listed(wide)}"] if wide else []
        than = "that" if wide else "the diagonal"
        sides += [f"narrower than {than} of {listed(narrow)}"] if narrow else []
        text = f"The {small_mm(bore)} opening is {' and '.join(sides)}" if sides else f"A {small_mm(bore)} opening"
        text += (
            ". Whether it darkens the corners hangs on the lens, a fast or long one sooner, and on where it stands: the"
            " nearer to the lens, the less"
        )
        told += Told((Line("head", f"{text}."), Line("ask", LENS_AND_PLACE)))
    return told


def _known_openings(question: Question, body: BodySide, facts: Catalogue) -> Iterator[tuple[str, Interval, Interval]]:
    """Name, width and distance before the sensor of each opening that the facts know."""
    register = body.mount.register_mm
    if not is_known(register):
        return
    if is_known(body.mount.throat_mm):
        yield f"the throat of {body.mount.designation}", body.mount.throat_mm, register
    for thing in question.adapters:
        piece = facts.adapters.get(thing.id or "") if thing.kind == "adapter" else None
        if piece is not None and is_known(piece.clear_diameter_mm) and is_known(long := piece.thickness_mm.longest):
            yield piece.name, piece.clear_diameter_mm, register + long


def _stands(
    question: Question, lens: LensSide | Missing, body: BodySide | Missing, optics: Distances, x: float
) -> Measure:
    """Where an opening that is told may stand before the sensor: as told, else between the flanges, else anywhere."""
    told = numbers(question, "flange_to_image")
    if told:
        return Interval.exact(told[0])
    register: Measure = body.mount.register_mm if isinstance(body, BodySide) else UNKNOWN
    own: Measure = lens.mount.register_mm if isinstance(lens, LensSide) else UNKNOWN
    if is_known(register):
        return register.hull((own if is_known(own) else register) + x)
    if is_known(own):
        return Interval(0.0, own.greatest + x, (own.nominal + x) / 2)
    pupil = shading.pupil_before_sensor_mm(optics.focal, optics.pupil, Interval.exact(x))
    return Interval(0.0, pupil.least, pupil.least / 2) if is_known(pupil) else UNKNOWN


def _clear(name: str, at: float, form: Format) -> Told:
    """That an opening which was asked about cuts nothing."""
    return Told((Line("fact", f"{name} clears the corners of {form.name} at f/{f_number(at)}", 1),))


def _cut(name: str, opening: Interval, before: Interval, optics: Distances, at: float, form: Format, x: float) -> Told:
    pupil = shading.pupil_before_sensor_mm(optics.focal, optics.pupil, Interval.exact(x))
    wide = shading.pupil_width_mm(optics.focal, optics.pupil, Interval.exact(at))
    if not is_known(wide) or not is_known(pupil):
        return Told()
    whole = shading.whole_circle_mm(opening, before, pupil, wide)
    half = shading.half_lit_circle_mm(opening, before, pupil)
    if not (is_known(whole) and is_known(half)) or whole.least >= form.diagonal_mm:
        return Told()
    rows = (Quantity("whole_circle_mm", whole, name), Quantity("half_lit_circle_mm", half, name))
    need = f"the corners of {form.name}"
    if half.greatest < form.diagonal_mm:
        text = f"{name} cuts {need}: its rim is half dark {trimmed(half.greatest / 2, 1)} mm from the middle"
    elif whole.greatest < form.diagonal_mm:
        cure = "clears them" if half.least >= form.diagonal_mm else "clears them only where it stands near the lens"
        text = f"{name} darkens {need} at f/{f_number(at)}; stopping down {cure}"
    else:
        text = (
            f"{name} may darken {need} at f/{f_number(at)}: it hangs on the exit pupil and on where the opening stands"
        )
    return Told((Line("fact", text, 1),), rows)
