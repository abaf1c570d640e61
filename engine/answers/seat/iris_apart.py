"""Who works the iris of lenses of several mounts, where they are set against each other for that."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from engine.facts.records import Mount
from grammar.questions import Question

FEWEST: Final = 2
# how each drive is told, the one that asks the least of a ring first
_WORKED: Final = {
    "ring": "by a ring on the lens, on any adapter",
    "mixed": "by a ring where the lens has one; others need a ring with a lever, or with electronics",
    "lever": "by a lever of the body, so the adapter must have one",
    "electronic": "by the body alone: it wants an adapter with electronics, else it stays as it was left",
    "none": "not at all: there is none, or the camera has it",
}


def with_iris_apart(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind how the iris of each is worked, where two lenses of other drives are set side by side."""
    mounts = knowledge.catalogue.mounts
    named = [
        mounts[lens.ids[0]]
        for lens in question.lenses
        if lens.kind == "mount" and lens.ids[:1] and lens.ids[0] in mounts
    ]
    told = [mount for mount in dict.fromkeys(named) if mount.iris in _WORKED]
    if len(told) < FEWEST or len({mount.iris for mount in told}) < FEWEST:
        return answer
    told.sort(key=lambda mount: [*_WORKED].index(mount.iris or ""))
    lines = [Line("head", f"For the iris rather {told[0].designation}.")]
    lines += [Line("fact", f"{mount.designation}: its iris is worked {_worked(mount)}", 1) for mount in told]
    return replace(answer, lines=(*lines, *answer.lines))


def _worked(mount: Mount) -> str:
    return _WORKED[mount.iris or ""]
