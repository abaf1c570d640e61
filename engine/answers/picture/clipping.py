"""How extension makes a circle grow, and which openings between lens and sensor cut it."""

from __future__ import annotations

from collections.abc import Iterator

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, body_side, lens_side
from engine.answers.parts.said import focals, mentions, number, numbers, stop
from engine.answers.parts.wording import f_number, ranged, small_mm, trimmed
from engine.answers.picture.circles import Thrown
from engine.answers.picture.frames import frames_of
from engine.answers.seat.distances import Distances, distances_of
from engine.base.compact import replace
from engine.base.interval import UNKNOWN, Interval, is_known
from engine.chains.walk import ADDED_FOCUSING
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from engine.physics import closeup, coverage
from engine.physics import openings as shading
from grammar.questions import Question

TUBES = frozenset({"extension-tube", *ADDED_FOCUSING})


def magnification_filling(question: Question, facts: Catalogue) -> float | None:
    """The magnification at which a subject of the width told fills the width of the frame, or its height if so said."""
    wide = number(question, "field")
    if wide is None:
        return None
    form = frames_of(question, facts)[0]
    side = form.height_mm if mentions(question, "of-height") else form.width_mm
    m = closeup.magnification_for_field(Interval.exact(side), Interval.exact(wide))
    return m.nominal if is_known(m) else None


def extension_mm(question: Question, facts: Catalogue) -> float | None:
    """The extension that the question puts between: said as such, or as tubes, a helicoid fully out; None: none."""
    said = number(question, "extension")
    if said is not None:
        return said
    filled, of = magnification_filling(question, facts), focals(question)
    if filled is not None and of:
        return filled * of[0]  # the subject was told last: the lens is set up for it
    total = 0.0
    for thing in question.adapters:
        if thing.piece in TUBES and thing.thickness_mm is not None:
            low, high = thing.thickness_mm
            total += high - low if low != high else high
        elif thing.kind == "adapter" and thing.id in facts.adapters:
            piece = facts.adapters[thing.id or ""]
            at = piece.thickness_mm.longest
            if piece.kind == "extension-tube" and is_known(at):
                total += at.nominal
    return total or None


def grown_out(thrown: Thrown, question: Question, facts: Catalogue) -> tuple[Thrown, Told]:
    """The circle with the lens moved out by the extension told, and a line that says so."""
    x = extension_mm(question, facts)
    if x is None:
        return thrown, Told()
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


def openings(question: Question, knowledge: Knowledge, frames: list[Format]) -> Told:
    """The openings between lens and sensor that cut the largest frame's corners; nothing where none is known to."""
    facts = knowledge.catalogue
    lens, body = lens_side(question.lens, facts), body_side(question.body, facts)
    if question.lens is None or not isinstance(lens, LensSide) or not isinstance(body, BodySide) or not frames:
        return Told()
    optics = distances_of(question.lens, facts)
    at = stop(question)
    if optics is None or at is None or not is_known(body.mount.register_mm):
        return Told()
    form = max(frames, key=lambda one: one.diagonal_mm)
    told = Told()
    for name, opening, before in _openings(question, body, lens, facts):
        told += _cut(name, opening, before, optics, at, form, extension_mm(question, facts) or 0.0)
    return told


def _openings(
    question: Question, body: BodySide, lens: LensSide, facts: Catalogue
) -> Iterator[tuple[str, Interval, Interval]]:
    """Name, width and distance before the sensor of each opening known."""
    register = body.mount.register_mm
    if not is_known(register):
        return
    if is_known(body.mount.throat_mm):
        yield f"the throat of {body.mount.designation}", body.mount.throat_mm, register
    for thing in question.adapters:
        piece = facts.adapters.get(thing.id or "") if thing.kind == "adapter" else None
        if piece is not None and is_known(piece.clear_diameter_mm) and is_known(long := piece.thickness_mm.longest):
            yield piece.name, piece.clear_diameter_mm, register + long
    for bore in numbers(question, "bore"):
        seat = lens.mount.register_mm
        if is_known(seat) and is_known(register):
            # it may stand anywhere between the two flanges
            x = extension_mm(question, facts) or 0.0
            yield f"the {small_mm(bore)} opening", Interval.exact(bore), register.hull(seat + x)


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
