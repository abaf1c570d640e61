"""Two frames set against each other with no lens: how large each is, and by how much the one is larger."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import trimmed
from engine.answers.picture.crop_factors import crop_of
from engine.answers.picture.same_depth import formats_told
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from engine.facts.records import Format
from grammar.questions import Question

_PAIR: Final = 2


def with_size(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of the answer, how large the frame is, where one alone is named."""
    forms = list({form.id: form for _, form in formats_told(question, knowledge.catalogue)}.values())
    if len(forms) != 1 or question.lenses or question.adapters or mentions(question, "mount-itself"):
        return answer
    form, crop = forms[0], crop_of(forms[0])
    text = f"{form.name[:1].upper()}{form.name[1:]}: {_size(form)}; crop factor {trimmed(crop.by_diagonal, 2)}."
    rows = (
        Quantity("format_diagonal_mm", Interval.exact(form.diagonal_mm), form.id),
        Quantity("format_width_mm", Interval.exact(form.width_mm), form.id),
        Quantity("format_height_mm", Interval.exact(form.height_mm), form.id),
        Quantity("crop_factor", Interval.exact(crop.by_diagonal), form.id),
    )
    lines = [Line("head", text)]
    if form.note:
        lines.append(Line("fact", form.note, 1))
    return Answer(question.text, question.intent, ANSWERED, tuple(lines), question=question, quantities=rows)


def _size(form: Format) -> str:
    return f"{trimmed(form.width_mm, 2)} x {trimmed(form.height_mm, 2)} mm, diagonal {trimmed(form.diagonal_mm, 2)} mm"


def sizes_apart(question: Question, facts: Catalogue) -> Told:
    """Nothing where fewer than two frames are named, or a lens or a piece is what is asked about."""
    forms = list({form.id: form for _, form in formats_told(question, facts)}.values())
    if len(forms) < _PAIR or question.lenses or question.adapters:
        return Told()
    if question.bodies and not mentions(question, "by-size"):
        return Told()
    small, large = sorted(forms[:_PAIR], key=lambda form: form.diagonal_mm)
    by = large.diagonal_mm / small.diagonal_mm
    wide = large.width_mm / small.width_mm
    area = wide * large.height_mm / small.height_mm
    told = "; ".join(
        f"{form.name} {trimmed(form.width_mm, 2)} x {trimmed(form.height_mm, 2)} mm,"
        f" {trimmed(form.diagonal_mm, 2)} mm across"
        for form in forms
    )
    if round(by, 2) == 1:
        head = "The two are as good as the same size"
    else:
        head = (
            f"{large.name[:1].upper()}{large.name[1:]} is the larger of the two, {trimmed(by, 2)} times by diagonal,"
            f" {trimmed(wide, 2)} by width, {trimmed(area, 2)} by area"
        )
    rows = [
        Quantity("size_ratio", Interval.exact(value), f"{large.name} to {small.name}, {way}")
        for value, way in ((by, "by diagonal"), (wide, "by width"), (area, "by area"))
    ]
    for form in forms:
        rows.append(Quantity("format_diagonal_mm", Interval.exact(form.diagonal_mm), form.id))
        rows.append(Quantity("crop_factor", Interval.exact(crop_of(form).by_diagonal), form.id))
    return Told((Line("head", f"{head}: {told}."),), tuple(rows))
