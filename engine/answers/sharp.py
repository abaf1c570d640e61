"""Depth of field: near and far limit, hyperfocal distance, and the thin slice that is sharp close up."""

from __future__ import annotations

from collections.abc import Iterator
from math import hypot, isinf

from engine.answers.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.circles import frames_of
from engine.answers.knowledge import Knowledge
from engine.answers.nearby import LEAST, SURE, nearest, nearest_term
from engine.answers.said import distance_mm, focals, mentions, number, stop
from engine.answers.wording import distance, f_number, small_mm, times, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import closeup, depth
from grammar.questions import Question

EVEN_PUPILS = Interval.exact(1.0)
CLOSE_UPS = (0.1, 0.25, 0.5, 1.0)


def sharpness(question: Question, knowledge: Knowledge) -> Answer:
    """What is sharp, for each format: by focal length and distance, or by magnification close up."""
    told = Told()
    for part in _parts(question, knowledge):
        told += part
    lines = list(told.lines)
    if not lines or mentions(question, "same", "sensor", "crop", "enough", "more or less", "why"):
        rows = nearest(question.text, knowledge.catalogue, 2, SURE if lines else LEAST)
        about = [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
        lines = [*about, *lines] if not told.lines else [*lines, *about]
    term = nearest_term(question.text, knowledge.catalogue) if not told.lines else None
    if term is not None:
        lines.insert(0, Line("head", f"{term.names[0]}: {term.means}"))
    if not told.lines:
        lines.append(Line("ask", "For which focal length, f-number, format and distance, or at what magnification?"))
    return Answer(
        question.text, "depth-of-field", ANSWERED, tuple(lines), question=question, quantities=told.quantities
    )  # fmt: skip


def _parts(question: Question, knowledge: Knowledge) -> Iterator[Told]:
    at = stop(question)
    if at is None:
        return
    frames = frames_of(question, knowledge.catalogue)
    divisor = knowledge.catalogue.assumptions["blur-divisor"].value.nominal
    lenses, subject = focals(question), distance_mm(question)
    wanted = number(question, "magnification")
    if not question.bodies and not any(thing.kind == "format" for thing in question.things):
        frames = frames[::-1]  # full frame first where none is told
    else:
        frames = frames[:2]
    close = wanted is not None or not lenses or mentions(question, "macro", "close up", "close-up")
    for form in frames:
        blur = Interval.exact(hypot(form.width_mm, form.height_mm) / divisor)
        for focal in lenses:
            yield _hyperfocal(focal, at, blur, form, question.feet)
            if subject is not None:
                yield _around(focal, at, subject, blur, form, question.feet)
        if close:
            for m in (wanted,) if wanted is not None else CLOSE_UPS:
                yield _close_up(m, at, blur, form)
    paper = knowledge.catalogue.assumptions["paper-stop"].value.nominal
    if close and at < paper:
        yield _paper_stop(lenses, paper)


def _hyperfocal(focal: float, at: float, blur: Interval, form: Format, feet: bool) -> Told:
    far = depth.hyperfocal_mm(Interval.exact(focal), Interval.exact(at), blur)
    if not is_known(far):
        return Told()
    case = f"{trimmed(focal, 1)} mm f/{f_number(at)}, {form.name}"
    text = (
        f"{case}: hyperfocal {distance(far.nominal, feet)}; set there it is sharp from"
        f" {distance(far.nominal / 2, feet)} to infinity (blur {small_mm(blur.nominal)})"
    )
    half = Interval.exact(far.nominal / 2)
    return Told(
        (Line("fact", text),),
        (Quantity("hyperfocal_mm", far, case), Quantity("dof_near_mm", half, f"{case}, at the hyperfocal distance")),
    )  # fmt: skip


def _around(focal: float, at: float, subject: float, blur: Interval, form: Format, feet: bool) -> Told:
    f, n, thin = Interval.exact(focal), Interval.exact(at), Interval.exact(0.0)
    far_at = Interval.exact(subject)
    near = depth.near_limit_from_sensor_mm(far_at, f, thin, n, blur, EVEN_PUPILS)
    far = depth.far_limit_from_sensor_mm(far_at, f, thin, n, blur, EVEN_PUPILS)
    if not (is_known(near) and is_known(far)):
        return Told()
    case = f"{trimmed(focal, 1)} mm f/{f_number(at)} at {distance(subject, feet)}, {form.name}"
    rows = [Quantity("dof_near_mm", near, case), Quantity("dof_far_mm", far, case)]
    text = f"{case}: sharp from {distance(near.nominal, feet)} to {distance(far.nominal, feet)}"
    if not isinf(far.nominal):
        rows.append(Quantity("dof_mm", Interval.exact(far.nominal - near.nominal), case))
        text += f", {distance(far.nominal - near.nominal, feet)} in all"
    return Told((Line("fact", text),), tuple(rows))


def _close_up(m: float, at: float, blur: Interval, form: Format) -> Told:
    total = depth.close_up_depth_mm(Interval.exact(m), Interval.exact(at), blur, EVEN_PUPILS)
    if not is_known(total):
        return Told()
    case = f"m = {trimmed(m, 2)}, f/{f_number(at)}, {form.name}"
    text = f"{times(m)} at f/{f_number(at)} on {form.name}: {small_mm(total.nominal)} sharp in all"
    return Told((Line("fact", text, 1),), (Quantity("dof_mm", total, case),))


def _paper_stop(lenses: tuple[float, ...], paper: float) -> Told:
    """A disc of paper with a hole, for a lens whose iris is fixed or too wide."""
    lines, rows = [], []
    for focal in lenses or (50.0, 85.0):
        hole = closeup.hole_mm(Interval.exact(focal), Interval.exact(paper))
        if is_known(hole):
            rows.append(Quantity("hole_mm", hole, f"{trimmed(focal, 1)} mm at f/{paper:g}"))
            lines.append(f"{trimmed(hole.nominal, 1)} mm for {trimmed(focal, 1)} mm")
    text = (
        f"Stop it down; a lens without an iris takes a paper stop, for f/{paper:g} a hole of " + ", ".join(lines) + "."
    )
    return Told((Line("text", f"{text} Or take several frames and stack them."),), tuple(rows))
