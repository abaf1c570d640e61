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
    sizes = {facts[id_].designation: facts[id_].register_mm for id_ in dict.fromkeys(named) if id_ in facts}
    known = {name: size for name, size in sizes.items() if is_known(size)}
    if len(sizes) != _TWO or len(known) != _TWO:
        return answer
    (longer, more), (shorter, less) = sorted(known.items(), key=lambda row: -row[1].nominal)
    told = [f"{name} {trimmed(size.nominal, 3)} mm" for name, size in ((longer, more), (shorter, less))]
    text = f"The registers differ by {trimmed((more - less).nominal, 3)} mm: {told[0]}, {told[1]}."
    row = Quantity("register_difference_mm", more - less, f"{longer}, {shorter}")
    return replace(answer, lines=(Line("head", text), *answer.lines), quantities=(row, *answer.quantities))
