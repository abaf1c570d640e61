"""Whether one adapter is enough: for several lenses of one mount, and for those of several."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import one_register_mm
from engine.answers.parts.wording import listed
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.records import Mount
from grammar.questions import Question

PAIR: Final = 2


def for_all_of_them(question: Question, answer: Answer) -> Answer:
    """'5 EF lenses, one E body: one ring or five': that one is enough, as it stays on the body."""
    count = question.lens.count if question.lens is not None else None
    if not count or count < 2 or not answer.chains:
        return answer
    noun = "One adapter" if len(answer.chains[0].listed.judged.chain.adapters) == 1 else "One set of adapters"
    text = f"{noun} is enough for all {count}: it stays on the body, and the lenses are changed in front of it. One"
    text += " on each lens only saves the change."
    return replace(answer, lines=(Line("head", text), *answer.lines))


def with_one_for_all(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """'will one ring take both F and FD': the answer behind yes or no, where two mounts of lenses are told."""
    facts = knowledge.catalogue
    names = dict.fromkeys(lens.ids[0] for lens in question.lenses if lens.kind == "mount" and lens.ids)
    mounts = [facts.mounts[name] for name in names if name in facts.mounts]
    settled = bool(answer.lines) and answer.lines[0].text.startswith(("Yes", "No"))
    if len(mounts) < PAIR or settled:
        return answer
    words = listed([mount.designation for mount in mounts])
    if all(_is_held_alike(mounts[0], other, one_register_mm(facts)) for other in mounts[1:]):
        text = f"Yes: {words} seat alike and have the same register, so a ring for the one takes the other."
    else:
        text = f"No: a ring is made for one lens mount. {words} need one each, {len(mounts)} in all, on any one body."
    return replace(answer, lines=(Line("head", text), *answer.lines))


def _is_held_alike(one: Mount, other: Mount, near_mm: float) -> bool:
    """Whether both have the same thread or bayonet, and the same register."""
    known = is_known(one.register_mm) and is_known(other.register_mm)
    near = known and abs(one.register_mm.nominal - other.register_mm.nominal) <= near_mm  # type: ignore[union-attr]
    screwed = one.thread is not None and one.thread == other.thread
    return near and (screwed or other.id in one.shares_bayonet or one.id in other.shares_bayonet)
