"""Why the rings that were named are of no use between a lens and a body, before what would do instead."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import article, listed, small_mm
from engine.base.interval import is_known
from engine.facts.records import Mount
from grammar.questions import Question, Thing

NOT_SO: Final = "Not with the pieces as you named them: they do not lead from this lens to this body. Without them:"
OF_NO_USE: Final = "is of no use here"


def why_passed_over(question: Question, lens: Mount, body: Mount, knowledge: Knowledge) -> str:
    """What each ring told by its two mounts takes and ends on, where that is not the lens or not the body."""
    if row := _leading_on(question, lens, body):
        short = [text for one in row if (text := _too_short(one, knowledge))]
        return f"{' '.join(short)} Instead:" if short else NOT_SO
    told = [_why_not(thing, lens, body, knowledge) for thing in question.adapters]
    reasons = [text for text in dict.fromkeys(told) if text]
    return f"{' '.join(reasons)} Instead:" if reasons and all(told) else NOT_SO


def _leading_on(question: Question, lens: Mount, body: Mount) -> list[Thing]:
    """The rings named, where each begins on the mount that the one before it ends on, from the lens to the body."""
    row = [thing for thing in question.adapters if thing.front and thing.rear]
    ends = [(lens.id,), *(one.rear for one in row)]
    meets = all(set(end) & set(one.front) for end, one in zip(ends, row, strict=False))
    return row if row and len(row) == len(question.adapters) and meets and body.id in row[-1].rear else []


def _too_short(ring: Thing, knowledge: Knowledge) -> str:
    """That no plain ring can be what is named, where the register on its front is shorter than that on its rear."""
    front, rear = (knowledge.catalogue.mounts[ids[0]] for ids in (ring.front, ring.rear))
    if not (is_known(front.register_mm) and is_known(rear.register_mm)):
        return ""
    seat = front.register_mm.nominal - rear.register_mm.nominal
    if seat >= 0:
        return ""
    return (
        f"A {front.designation} to {rear.designation} ring {OF_NO_USE}: for infinity it would have to be "
        f"{small_mm(seat)} from seat to seat. Even flush the lens sits {small_mm(-seat)} too far out, so close-up only."
    )


def _why_not(thing: Thing, lens: Mount, body: Mount, knowledge: Knowledge) -> str:
    mounts = knowledge.catalogue.mounts
    if not (thing.front and thing.rear):
        return ""
    front, rear = mounts[thing.front[0]], mounts[thing.rear[0]]
    reasons = []
    if lens.id not in thing.front:
        reasons.append(f"takes {front.designation} lenses and not {lens.designation}")
    if body.id not in thing.rear:
        reasons.append(f"ends on {rear.designation}, from where nothing leads on to {article(body.designation)} ")
        reasons[-1] += f"{body.designation} body"
    ring = f"{front.designation} to {rear.designation} ring"
    return f"The {ring} {OF_NO_USE}: it {listed(reasons)}." if reasons else ""


def is_passed_over(text: str) -> bool:
    """Whether a line says that the rings named are of no use."""
    return text == NOT_SO or OF_NO_USE in text
