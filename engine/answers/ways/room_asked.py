"""Which of two mounts leaves room for a ring on the other, and how much, first of all where that is asked."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import article, small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from grammar.questions import Question

ROOM_ASKED: Final = "who-has-room"


def with_room_asked(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind who has room, where just two mounts of known register are named."""
    named = [thing.ids[0] for thing in (*question.lenses, *question.bodies) if thing.kind == "mount" and thing.ids]
    rows = [(knowledge.catalogue.mounts[one], knowledge.catalogue.mounts[one].register_mm) for one in set(named)]
    known = sorted(((mount, size) for mount, size in rows if is_known(size)), key=lambda row: -row[1].nominal)
    if len(rows) != 2 or len(known) != 2:
        return answer
    (longer, first), (shorter, second) = known
    by = first - second
    told = Line("head", _told(longer, first, shorter, second))
    row = Quantity("register_difference_mm", by, f"{longer.id}, {shorter.id}")
    return replace(answer, lines=(told, *answer.lines), quantities=(*(answer.quantities or ()), row))


def _told(longer: Mount, first: Interval, shorter: Mount, second: Interval) -> str:
    one, other, by = longer.designation, shorter.designation, first.nominal - second.nominal
    registers = f"{one} {trimmed(first.nominal, 3)} mm, {other} {trimmed(second.nominal, 3)} mm"
    if not by:
        return f"No room either way: {registers}, the same register."
    return (
        f"The longer register has the room: {registers}. {article(one).capitalize()} {one} lens on {article(other)} "
        f"{other} body leaves {small_mm(by)} for a ring. The other way round there is none: {article(other)} {other} "
        f"lens on {article(one)} {one} body is {small_mm(by)} too far out even without a ring."
    )
