"""Whether one adapter is enough for several lenses of one mount, first of all where that many are told."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line
from engine.base.compact import replace
from grammar.questions import Question


def for_all_of_them(question: Question, answer: Answer) -> Answer:
    """'5 EF lenses, one E body: one ring or five': that one is enough, as it stays on the body."""
    count = question.lens.count if question.lens is not None else None
    if not count or count < 2 or not answer.chains:
        return answer
    noun = "One adapter" if len(answer.chains[0].listed.judged.chain.adapters) == 1 else "One set of adapters"
    text = f"{noun} is enough for all {count}: it stays on the body, and the lenses are changed in front of it. One"
    text += " on each lens only saves the change."
    return replace(answer, lines=(Line("head", text), *answer.lines))
