"""Answers about the answer before: why, why not, a chain by its number, what is being talked about."""

from __future__ import annotations

from collections.abc import Callable

from engine.answers.answer import NO, Answer, Line
from engine.answers.knowledge import Knowledge
from engine.facts.records import VERDICTS
from engine.judging.ranking import Listed
from grammar.questions import Question


def answer(
    question: Question,
    rows: tuple[Listed, ...],
    reading: str,
    knowledge: Knowledge,
    chains_first: Callable[[Question], Answer],
) -> Answer | None:
    """The answer where the question is about the last one; None where it stands for itself."""
    if question.intent == "show-memory":
        text = f"We are talking about: {reading}." if reading else "Nothing yet; ask something."
        return Answer(question.text, "show-memory", 0, (Line("text", text),), question=question)
    if question.intent == "start-over":
        return Answer(
            question.text, "start-over", 0, (Line("text", "Forgotten. Start with a lens and a body."),),
            question=question, forgets=True,
        )  # fmt: skip
    if question.intent == "why":
        return _why(question, rows, knowledge, chains_first)
    if question.number is not None and question.follows and rows:
        if not 1 <= question.number <= len(rows):
            return no_such(question, len(rows))
        from engine.answers.reasons import listing

        return listing(question, rows, question.number, knowledge)
    return None


def _why(
    question: Question, rows: tuple[Listed, ...], knowledge: Knowledge, chains_first: Callable[[Question], Answer]
) -> Answer | None:
    from engine.answers.reasons import why

    if not (question.follows and rows) and question.lens is not None and question.body is not None:
        found = chains_first(question)
        rows = tuple(chain.listed for chain in found.chains or ())
        rows += _without_glass(question, rows, chains_first)
        if not rows:
            return found
    if not rows:
        return None
    number = question.number or _meant(question, rows)
    if not 1 <= number <= len(rows):
        return no_such(question, len(rows))
    return why(question, rows[number - 1], number, knowledge, rows)


def _without_glass(
    question: Question, rows: tuple[Listed, ...], chains_first: Callable[[Question], Answer]
) -> tuple[Listed, ...]:
    """Where the best chain has glass, the best without it: what the glass is there for."""
    if not rows or question.limits.with_glass or not any(a.has_glass for a in rows[0].judged.chain.adapters):
        return ()
    limits = question.limits.__class__(without_glass=True)
    plain = chains_first(question.with_(limits=limits)).chains or ()
    return tuple(chain.listed for chain in plain[:1])


def _meant(question: Question, rows: tuple[Listed, ...]) -> int:
    """The chain that a reason is asked for: 'why not' is about the first that falls short, all else about the best."""
    if question.topic == "not":
        short = (n for n, row in enumerate(rows, start=1) if row.judged.verdict != VERDICTS[0])
        return next(short, 1)
    return 1


def no_such(question: Question, count: int) -> Answer:
    text = f"The last answer listed {count}; ask for one of 1 to {count}." if count else "The last answer listed none."
    return Answer(question.text, question.intent, NO, (Line("ask", text),), question=question)
