"""How much more light one frame gathers in all than another, at the same f-number, time and field."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import trimmed
from engine.answers.picture.same_depth import formats_told
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.facts.records import Format
from grammar.questions import Question

_PAIR: Final = 2


def with_light_of_frames(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind the light that two frames gather in all: 2*log2 of the ratio of their diagonals, in stops."""
    forms = _frames(question, knowledge)
    if len(forms) != _PAIR:
        return answer
    small, large = sorted(forms, key=lambda form: form.diagonal_mm)
    by = large.diagonal_mm / small.diagonal_mm
    stops = 2 * log2(by)
    text = (
        f"In all {large.name} gathers {trimmed(stops, 2)} stops more light than {small.name} ({trimmed(by**2, 2)}x,"
        f" {trimmed(by, 2)} squared), at one f-number, time and field of view: so much less noise, at one ISO. The"
        " exposure is the same on both, and no stop is lost there."
    )
    row = Quantity("light_difference_stops", Interval.exact(stops), f"{large.name} to {small.name}, in all")
    lines = (Line("head", text), *answer.lines)
    return replace(answer, lines=lines, quantities=(row, *(answer.quantities or ())))


def _frames(question: Question, knowledge: Knowledge) -> list[Format]:
    """The frames told, and those of mounts told as lenses, of which there is none here."""
    facts = knowledge.catalogue
    told = [form for _, form in formats_told(question, facts)]
    mounts = [
        facts.mounts[lens.id or ""] for lens in question.lenses if lens.kind == "mount" and lens.id in facts.mounts
    ]
    told += [facts.formats[mount.format] for mount in mounts if mount.format and mount.format in facts.formats]
    return list({form.id: form for form in told}.values())
