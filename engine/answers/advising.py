"""Advice on a topic: what can hurt gear or a person, what to set, and whom to defer to."""

from __future__ import annotations

from engine.answers.answer import ANSWERED, NO, Answer, Line
from engine.answers.knowledge import Knowledge
from engine.facts.records import Advice
from grammar.questions import Question

MOST = 3


def advise(question: Question, knowledge: Knowledge) -> Answer:
    """The advice that the question names, or names the topic of; also for a reason asked for without a chain."""
    rows = _named(question, knowledge)
    if not rows:
        text = "Nothing in the facts answers that. Ask about a lens on a body first, then 'why?'."
        return Answer(question.text, question.intent, NO, (Line("text", text),), question=question)
    lines: list[Line] = []
    for advice in rows[:MOST]:
        lines.append(Line("head" if advice.severity == "note" else advice.severity, f"{advice.topic}: {advice.says}"))
        if advice.defer_to:
            lines.append(Line("text", f"Ask: {advice.defer_to}.", 1))
    return Answer(question.text, question.intent, ANSWERED, tuple(lines), question=question)


def _named(question: Question, knowledge: Knowledge) -> list[Advice]:
    table = knowledge.catalogue.advice
    ids = [name for thing in question.things if thing.kind == "advice" for name in thing.ids]
    if question.topic is not None and question.topic in table:
        ids.append(question.topic)
    return [table[name] for name in dict.fromkeys(ids) if name in table]
