"""What speaks against the way that was told last: 'any drawback?' after a lens on a body."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from typing import Final

from engine.answers.earlier import Past
from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.seat.telling import chain_title, finding_lines
from engine.answers.words.advice import advice_lines
from engine.facts.records import Adapter
from engine.judging.ranking import Listed
from grammar.kinds import COMPARE
from grammar.questions import Question

DOWNSIDE: Final = "downside"  # the topic of what is worse
# advice by what stands between
OF_PLAIN: Final = "plain-ring-costs"
OF_GLASS: Final = "glass-ring-soft"
OF_REDUCER: Final = "reducer-or-ring"
OF_TWO: Final = "two-rings-errors"
OF_HUB: Final = "hub-or-single"
THROAT: Final = "The hub's throat may clip very fast long lenses."
TWO: Final = 2


def drawbacks(question: Question, past: Sequence[Past], rows: Sequence[Listed], knowledge: Knowledge) -> Answer | None:
    """The drawbacks of one way; None where others are named or were set apart, so that it is of the two."""
    number = question.number or 1
    named = question.adapters != (past[-1].question.adapters if past else ()) or question.things
    if question.topic != DOWNSIDE or not question.follows or named or not 1 <= number <= len(rows):
        return None
    if max(len(question.lenses), len(question.bodies)) > 1 or _set_apart(question):
        return None
    judged = rows[number - 1].judged
    by_hub = _by_hub(past)
    advice = [knowledge.catalogue.advice[id_] for id_ in _of(judged.chain.adapters, by_hub)]
    lines = [*advice_lines(advice), Line("text", f"Of {chain_title(judged, knowledge)}:")]
    found = list(finding_lines(judged, knowledge, question.feet))
    lines = [*lines, *found] if found else lines[:-1]
    lines += [Line("text", THROAT)] if by_hub else []
    return Answer(question.text, COMPARE, ANSWERED, tuple(lines), question=question)


def _set_apart(question: Question) -> bool:
    return question.prior is not None and question.prior.intent == COMPARE


def _by_hub(past: Sequence[Past]) -> bool:
    """Whether the last two answers are the two halves of one way: a lens on a mount, and that mount on a body."""
    if len(past) < TWO:
        return False
    first, second = past[-2].question, past[-1].question
    met = first.body, second.lens
    return all(one is not None and one.kind == "mount" and one.ids for one in met) and _same(first, second)


def _same(first: Question, second: Question) -> bool:
    return first.body is not None and second.lens is not None and first.body.ids[:1] == second.lens.ids[:1]


def _of(pieces: Sequence[Adapter], by_hub: bool) -> Iterator[str]:
    if by_hub:
        yield OF_HUB
    elif len(pieces) >= TWO:
        yield OF_TWO
    factors = [one.factor for one in pieces if one.factor is not None]
    if factors:
        yield OF_REDUCER if min(factors) < 1 else OF_GLASS
    elif pieces:
        yield OF_PLAIN
