"""Talks put to a desk turn by turn, what an answer says in one line, and its numbers."""

from __future__ import annotations

from engine.answers.parts.answer import Answer
from engine.ask import Desk
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.talk import Talk

_MOST_TALKS = 24
# the desk asked last, and the talks that were begun there, each with what it remembers: many tests begin alike
_begun: list[tuple[Desk, dict[tuple[str, ...], tuple[list[Answer], Talk]]]] = []


def talk(club: Desk, *turns: str) -> list[Answer]:
    """The answers to the turns; those before the last were asked once where other talks at this desk began so."""
    assert club.writes is None, "what is taught changes the desk"
    *first, last = turns
    answers, memory = _beginning(club, tuple(first))
    return [*answers, club.ask(last, memory)]


def _beginning(club: Desk, turns: tuple[str, ...]) -> tuple[list[Answer], Talk]:
    """What was answered to the turns, and a memory of them that nothing else is remembered in."""
    if not turns:
        return [], Talk()
    if not _begun or _begun[0][0] is not club:
        _begun[:] = [(club, {})]
    kept = _begun[0][1]
    if turns not in kept:
        answers, memory = _beginning(club, turns[:-1])
        answers = [*answers, club.ask(turns[-1], memory)]
        if len(kept) >= _MOST_TALKS:
            del kept[next(iter(kept))]
        kept[turns] = answers, memory
    answers, memory = kept[turns]
    return list(answers), replace(memory, said=list(memory.said), undo=list(memory.undo))


def flat(answer: Answer) -> str:
    return " ".join(" ".join(line.text for line in answer.lines).split())


def rows(answer: Answer, name: str) -> dict[str | None, float]:
    """The numbers of a quantity that the answer holds, by their case."""
    told = (row for row in answer.quantities or () if row.name == name)
    return {row.case: row.value.nominal for row in told if is_known(row.value)}
