"""Whether a lens covers a frame: the share lit, the largest clean crop, and what glass in between makes of it."""

from __future__ import annotations

from collections.abc import Iterator
from math import log2

from engine.answers.answer import ANSWERED, NO, Answer, Line, Quantity, Told
from engine.answers.circles import Thrown, circles_of, frames_of, glass_factor
from engine.answers.equivalent import crop_factors
from engine.answers.knowledge import Knowledge
from engine.answers.nearby import LEAST, SURE, nearest
from engine.answers.said import mentions
from engine.answers.wording import percent, ranged, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question

WIDE = 16 / 9  # the shape of moving pictures
FULL = 0.9995
MOST_ADVICE = 1


def cover(question: Question, knowledge: Knowledge) -> Answer:
    """Each circle on each frame, then the advice that goes with it, then what to measure where it is not settled."""
    told = cover_told(question, knowledge, always=True)
    if question.topic == "crop" and not any(lens.ids or lens.format for lens in question.lenses):
        told = crop_factors(question, knowledge) + told
    named = [name for thing in question.things if thing.kind == "advice" for name in thing.ids]
    least = SURE if told.lines and question.lenses else LEAST
    near = [advice.id for advice in nearest(question.text, knowledge.catalogue, MOST_ADVICE, least)]
    table = knowledge.catalogue.advice
    rows = [table[name] for name in dict.fromkeys((*named[:1], *near)) if name in table and not _only_crops(name)]
    about = [Line("text", f"{row.topic[:1].upper()}{row.topic[1:]}: {row.says}") for row in rows]
    instead = not told.lines or (named and not question.lenses) or _is_method(question)
    lines = [*about, *told.lines] if instead else [*told.lines, *about]
    if not any(line.kind == "ask" for line in lines) and question.said("bore") is not None:
        lines.append(
            Line(
                "ask",
                "For which lens: focal length and f-number? Fast and long ones lose corners first.",
            )
        )
    return Answer(
        question.text, question.intent, ANSWERED if lines else NO, tuple(lines), question=question,
        quantities=told.quantities,
    )  # fmt: skip


def _only_crops(name: str) -> bool:
    """Advice that would only say again what the numbers say."""
    return name in ("small-disc", "black")


def _is_method(question: Question) -> bool:
    return mentions(question, "how do i measure", "how to measure", "measuring", "find out")


def cover_told(question: Question, knowledge: Knowledge, always: bool = False) -> Told:
    """The circles on the frames; by itself only where the question is about dark corners or the frame."""
    if not always and question.topic not in ("disc", "vignette", "cover", "image-circle", "crop"):
        return Told()
    facts = knowledge.catalogue
    circles, frames = circles_of(question, facts), frames_of(question, facts)
    factor = glass_factor(question, facts)
    lines: list[Line] = []
    rows: list[Quantity] = []
    unsure = False
    if factor is not None:
        rows.append(Quantity("light_difference_stops", Interval.exact(abs(2 * log2(factor))), f"{factor:g}x"))
    for thrown in circles:
        for behind in [factor] if factor is not None else [None]:
            part, open_ = _of_circle(thrown, behind, frames, question)
            lines += part.lines
            rows += part.quantities
            unsure = unsure or open_
        if factor is not None and factor > 1:
            part, _ = _of_circle(thrown, None, frames, question)
            lines += part.lines
            rows += part.quantities
    if factor is not None and lines:
        way = "lost" if factor > 1 else "gained"
        lines.append(Line("fact", f"{abs(2 * log2(factor)):.1f} stops of light are {way} by the {factor:g}x", 1))
    if unsure:
        ask = "It hangs on this very lens: what image circle does it throw? Measure the bright disc of a far scene."
        lines.append(Line("ask", ask))
    return Told(tuple(lines), tuple(rows))


def _of_circle(thrown: Thrown, factor: float | None, frames: list[Format], question: Question) -> tuple[Told, bool]:
    circle = thrown.circle_mm * factor if factor is not None else thrown.circle_mm
    case = thrown.case + (f" with {factor:g}x" if factor is not None else "")
    size = ranged(circle, lambda value: f"{trimmed(value, 1)} mm")
    typical = " (typical of such lenses)" if thrown.typical else ""
    words = thrown.words + (f" with {factor:g}x" if factor is not None else "")
    lines = [Line("head", f"{words[:1].upper()}{words[1:]}: image circle {size}{typical}.")]
    rows = [Quantity("image_circle_mm", circle, case)]
    unsure = False
    for form in frames:
        width, height = Interval.exact(form.width_mm), Interval.exact(form.height_mm)
        lit = coverage.lit_share(circle, width, height)
        rows.append(Quantity("format_diagonal_mm", Interval.exact(form.diagonal_mm), form.id))
        if not is_known(lit):
            continue
        rows.append(Quantity("lit_share", lit, f"{form.id}, {case}"))
        unsure = unsure or lit.least <= FULL < lit.greatest
        lines.append(Line("fact", _verdict(lit, form), 1))
        if lit.least <= FULL:
            part = _crops(circle, form, question, case)
            lines += part.lines
            rows += part.quantities
    return Told(tuple(lines), tuple(rows)), unsure


def _verdict(lit: Interval, form: Format) -> str:
    need = f"{form.name} needs {trimmed(form.diagonal_mm, 2)} mm"
    if lit.least > FULL:
        return f"{need}: yes, it covers, 100 % is lit"
    share = ranged(lit, percent)
    if lit.greatest > FULL:
        return f"{need}: maybe not, {share} is lit, the corners may go dark"
    if lit.nominal > 0.9:
        return f"{need}: nearly, {share} is lit, the corners go dark"
    return f"{need}: no, only {share} is lit, with black corners round a disc"


def _crops(circle: Interval, form: Format, question: Question, case: str) -> Told:
    """The largest clean frame of the shape asked for, of the format's own and of 16:9."""
    lines: list[Line] = []
    rows: list[Quantity] = []
    for name, aspect in _shapes(form, question):
        wide, high = coverage.largest_crop_mm(circle, form.width_mm, form.height_mm, aspect)
        if not (is_known(wide) and is_known(high)) or high.least <= 0:
            continue
        crop = coverage.crop_factor(wide, high)
        by_width = coverage.crop_factor_by_width(wide)
        tag = f"{name} on {form.id}, {case}"
        for quantity, value in (
            ("crop_width_mm", wide), ("crop_height_mm", high), ("crop_factor", crop), ("crop_factor_by_width", by_width)
        ):  # fmt: skip
            if is_known(value):
                rows.append(Quantity(quantity, value, tag))
        # what is claimed is claimed on the least circle
        share = wide.least / form.width_mm
        if is_known(crop) and is_known(by_width):
            lines.append(Line("fact", (
                f"largest clean {name} crop {wide.least:.1f} x {high.least:.1f} mm, {percent(share)} of the width: "
                f"crop factor {crop.greatest:.2f} by diagonal, {by_width.greatest:.2f} by width"
            ), 2))  # fmt: skip
    return Told(tuple(lines), tuple(rows))


def _shapes(form: Format, question: Question) -> Iterator[tuple[str, float]]:
    said = question.said("crop") or ""
    own = form.width_mm / form.height_mm
    if ":" in said:
        first, _, second = said.partition(":")
        yield said, float(first) / float(second)
        return
    yield "own-shape", own
    if abs(own - WIDE) > 0.02:
        yield "16:9", WIDE
