"""Why one of one's own is, or is not, among those that were asked for: each condition, and what it was read off."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import TYPE_CHECKING

from engine.answers.own.own_cases import VERDICT, Case, asked_of
from engine.answers.own.own_rulings import NO, OPEN, YES
from engine.answers.parts.answer import ANSWERED, Answer, Line, ListedChain
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.own_words import OwnWords
from engine.answers.seat.reasons import step_lines, verdict_lines
from grammar.questions import Question

if TYPE_CHECKING:
    from engine.answers.own.own_rows import Row

DEPTH = 3  # steps of a quantity that are told
_HEADS = {YES: "it is among them", NO: "it is not among them", OPEN: "undecided"}
_STATES = {YES: "yes", NO: "no", OPEN: "not known"}


def why_own(question: Question, rows: Sequence[Row], words: OwnWords, knowledge: Knowledge) -> Answer:
    """The conditions of the question before, each with its outcome for the thing named, then the reasons."""
    lines: list[Line] = []
    chains: list[ListedChain] = []
    told: set[str] = set()
    for row in rows:
        lines.append(Line("head", f"{row.case.name[:1].upper()}{row.case.name[1:]}: {_HEADS[row.state]}."))
        demands = [demand for group in (question.sought.any_of if question.sought else ()) for demand in group]
        rulings = [ruling for group in row.groups for ruling in group]
        for demand, ruling in zip(demands, rulings, strict=True):
            asks = f"; to tell: {ruling.asks}" if ruling.asks and ruling.state == OPEN else ""
            lines.append(Line("fact", f"{demand.says or words.label(demand.quantity)}: {_STATES[ruling.state]}; "
                                      f"{ruling.says}{asks}", 1))  # fmt: skip
            if ruling.state != YES:
                lines += _reasons(demand.quantity, row.case, knowledge, told)
        if row.case.best is not None:
            chains.append(ListedChain(len(chains) + 1, row.case.best, row.case.title))
            lines.append(Line("text", f"By its best way: {row.case.title}.", 1))
    return Answer(
        question.text, question.intent, ANSWERED, tuple(lines), question=question, chains=tuple(chains) or None,
        aside=True,
    )  # fmt: skip


def _reasons(quantity: str, case: Case, knowledge: Knowledge, told: set[str]) -> Iterator[Line]:
    judged = case.judged
    if judged is None:
        return
    if quantity == VERDICT:
        for line in verdict_lines(judged, knowledge, only_lowering=True):
            yield Line(line.kind, line.text, line.depth + 1)
        return
    name = asked_of(quantity, True, True)
    yield from step_lines(judged, judged.trace.step(name), 2, DEPTH, told)
