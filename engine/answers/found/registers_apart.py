"""By how much two registers differ, where it is asked what the two are."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import trimmed
from engine.base.compact import replace
from engine.base.interval import is_known
from grammar.questions import Question

_TWO = 2


def with_registers_apart(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer with the difference of the two registers before it; as it is unless just two mounts are named."""
    facts = knowledge.catalogue.mounts
    named = [thing.ids[0] for thing in (*question.lenses, *question.bodies) if thing.kind == "mount" and thing.ids]
    mounts = [facts[id_] for id_ in dict.fromkeys(named) if id_ in facts and is_known(facts[id_].register_mm)]
    if len(mounts) != _TWO:
        return answer
    longer, shorter = sorted(mounts, key=lambda mount: -mount.register_mm.nominal)
    apart = longer.register_mm - shorter.register_mm
    told = [f"{one.designation} {trimmed(one.register_mm.nominal, 3)} mm" for one in (longer, shorter)]
    text = f"The registers differ by {trimmed(apart.nominal, 3)} mm: {told[0]}, {told[1]}."
    row = Quantity("register_difference_mm", apart, f"{longer.designation}, {shorter.designation}")
    return replace(answer, lines=(Line("head", text), *answer.lines), quantities=(row, *answer.quantities))
