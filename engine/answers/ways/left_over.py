"""What is said of those of several lenses whose mount nothing tells, beside the answer about the others."""

from __future__ import annotations

from collections.abc import Sequence

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, LensSide, Missing
from engine.answers.seat.elsewhere import elsewhere
from engine.answers.seat.open_lens import depends
from engine.base.compact import replace
from grammar.questions import Question, Thing

Row = Sequence[LensSide | Missing]


def _missing(question: Question, lenses: Row) -> list[Thing]:
    """The lenses that the question tells of without a mount, where it tells of others too."""
    if len(question.lenses) == 1 or len(lenses) != len(question.lenses):
        return []
    return [thing for thing, side in zip(question.lenses, lenses, strict=True) if isinstance(side, Missing)]


def with_those_without_mount(
    answer: Answer, question: Question, lenses: Row, body: BodySide, knowledge: Knowledge
) -> Answer:
    """The answer about the lenses that are known, and behind it what each other one hangs on."""
    lines: list[Line] = []
    quantities: list[Quantity] = []
    for thing in _missing(question, lenses):
        told = depends(question.with_(lenses=(thing,)), thing, body, knowledge)
        lines += told.lines
        quantities += told.quantities or ()
    if not lines:
        return answer
    return replace(
        answer, lines=(*answer.lines, *lines), question=question, quantities=(*(answer.quantities or ()), *quantities)
    )


def rings_for_each(lenses: Sequence[LensSide], knowledge: Knowledge) -> Told:
    """On which bodies each of several lenses keeps infinity by one ring."""
    told = Told()
    for side in {side.mount.id: side for side in lenses}.values():
        rows = elsewhere(side.mount, knowledge)
        lines = tuple(replace(line, text=f"{side.mount.designation}: {line.text[:1].lower()}{line.text[1:]}")
                      for line in rows.lines)  # fmt: skip
        cases = tuple(replace(row, case=f"{side.mount.id} to {row.case}") for row in rows.quantities)
        told += Told(lines, cases)
    return told
