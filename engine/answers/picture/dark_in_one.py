"""Dark corners in one shape of the picture and none in another: between which circles that of the lens then lies."""

from __future__ import annotations

from math import hypot
from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import listed, trimmed
from engine.answers.picture.crop_factors import shapes_told
from engine.answers.picture.frames import frames_named
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question

DARK: Final = "edge-dark"
_STILLS, _FILMED = "in-stills", "in-video"
_WIDE: Final = ("16:9", 16 / 9)  # the shape that is filmed
_LEAST_APART: Final = 0.05  # mm; circles that are nearer are the same
_SAME_SHAPE: Final = 0.01  # share by which the shape told is that of the frame itself


def with_circle_between(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what the two shapes need; the same where no two are told of a frame, or no corner is dark."""
    frames = frames_named(question, knowledge.catalogue)
    if not mentions(question, DARK) or not frames:
        return answer
    form = max(frames, key=lambda one: one.diagonal_mm)
    needs = _needed(_shapes(question, form), form)
    if len(needs) < 2 or needs[-1][0] - needs[0][0] < _LEAST_APART:
        return answer
    (clean, _), (dark, widest) = needs[-2], needs[-1]
    fits = [name for circle, name in needs[:-1]]
    told = listed([f"{name} needs {trimmed(circle, 2)} mm" for circle, name in needs])
    lines = (
        Line("head", f"A cut of {form.name} takes a circle as wide as its diagonal: {told}."),
        Line("head", (
            f"Dark in {widest} and clean in {listed(fits)} means an image circle between {trimmed(clean, 2)} "
            f"and {trimmed(dark, 2)} mm."
        )),
    )  # fmt: skip
    rows = [Quantity("format_diagonal_mm", Interval.exact(circle), f"{name} on {form.name}") for circle, name in needs]
    rows.append(
        Quantity(
            "image_circle_mm", Interval(least=clean, nominal=(clean + dark) / 2, greatest=dark), f"dark in {widest}"
        )
    )
    return replace(answer, lines=(*lines, *answer.lines), quantities=(*rows, *(answer.quantities or ())))


def _shapes(question: Question, form: Format) -> list[tuple[str, float]]:
    """The shapes told, and those of stills and of video where these are told in words."""
    shapes = shapes_told(question)
    if mentions(question, _STILLS) or len(shapes) == 1:
        shapes.append((_name_of(form), form.width_mm / form.height_mm))
    if mentions(question, _FILMED):
        shapes.append(_WIDE)
    return shapes


def _name_of(form: Format) -> str:
    return f"the whole {form.width_mm:g} x {form.height_mm:g}"


def _needed(shapes: list[tuple[str, float]], form: Format) -> list[tuple[float, str]]:
    """The diagonal of the largest cut of each shape, mm: the circle that it needs, the least first."""
    out: dict[float, str] = {}
    for name, aspect in shapes:
        if abs(aspect * form.height_mm / form.width_mm - 1) < _SAME_SHAPE:
            out.setdefault(round(form.diagonal_mm, 2), name)
            continue
        whole = Interval.exact(form.diagonal_mm)
        wide, high = coverage.largest_crop_mm(whole, form.width_mm, form.height_mm, aspect)
        if is_known(wide) and is_known(high):
            out.setdefault(round(hypot(wide.least, high.least), 2), name)
    return sorted(out.items())
