"""How much of the frame of a body that takes a lens is lit by it, where a list is asked for that fills the frame."""

from __future__ import annotations

from engine.answers.parts.answer import Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import percent, ranged
from engine.answers.picture.circles import circles_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from engine.physics import coverage
from grammar.questions import Question, Thing


def lit_there(question: Question, lens: Thing | None, mount: Mount, knowledge: Knowledge) -> tuple[str, list[Quantity]]:
    """What follows the line of a mount: the share lit of its smallest usual frame and of its largest."""
    if lens is None or not mentions(question, "picture-filled"):
        return "", []
    circles = circles_of(question.with_(lenses=(lens,)), knowledge.catalogue)
    names = dict.fromkeys(name for name in (mount.smallest_format, mount.format) if name)
    parts: list[str] = []
    rows: list[Quantity] = []
    for form in (knowledge.catalogue.formats[name] for name in names if name in knowledge.catalogue.formats):
        for thrown in circles[:1]:
            lit = coverage.lit_share(thrown.circle_mm, Interval.exact(form.width_mm), Interval.exact(form.height_mm))
            if is_known(lit):
                parts.append(f"{form.name} {ranged(lit, percent)} lit")
                rows.append(Quantity("lit_share", lit, f"{form.id} of {mount.id}"))
    return (f"; {', '.join(parts)}" if parts else ""), rows
