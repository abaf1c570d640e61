"""Which of the depths of field just told is the deepest, or the thinnest."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.earlier import Past
from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.wording import distance
from engine.base.interval import is_known
from grammar.kinds import COMPARE
from grammar.questions import Question

DEEPEST: Final = "deepest-of"  # what is mentioned of the depth that is most
THINNEST: Final = "thinnest-of"  # and of that which is least
_DEPTH: Final = "dof_mm"
_LEAST: Final = 2


def deepest(question: Question, past: Sequence[Past]) -> Answer | None:
    """The depths in that order, where it is asked which is the most of what was told; None where one alone was."""
    thin = question.mentions(THINNEST)
    if not question.follows or not (thin or question.mentions(DEEPEST)):
        return None
    told: dict[str, Quantity] = {}
    for one in reversed(past):
        rows = [row for row in one.quantities if row.name == _DEPTH and is_known(row.value) and row.case]
        for row in rows[:1]:
            told.setdefault(row.case or "", row)
        if not rows or not one.question.follows:
            break
    if len(told) < _LEAST:
        return None
    order = sorted(told.values(), key=lambda row: row.value.nominal if is_known(row.value) else 0.0, reverse=not thin)
    texts = [f"{row.case}: {distance(row.value.nominal, question.feet)}" for row in order if is_known(row.value)]
    word = "Thinnest" if thin else "Deepest"
    lines = (Line("head", f"{word}: {texts[0]}."), *(Line("fact", text, 1) for text in texts[1:]))
    reading = f"{word.casefold()} of the depths told"
    return Answer(
        question.text, COMPARE, ANSWERED, lines, reading, question, quantities=tuple(order), aside=True
    )  # fmt: skip
