"""The way of a question: text -> question -> chains -> verdict -> answer. A newcomer starts reading here."""

from __future__ import annotations

from collections.abc import Callable
from functools import cached_property
from pathlib import Path

from engine.answers.answer import NOT_UNDERSTOOD, Answer, Line
from engine.answers.entities import entities_of
from engine.answers.knowledge import Knowledge
from engine.base.compact import replace
from engine.base.problem import Problem
from engine.facts.catalogue import load_catalogue
from engine.facts.lexicon_store import lexicon_of
from engine.talk import Talk
from grammar.echo import canonical
from grammar.lexicon import Lexicon
from grammar.questions import Question, Unread
from grammar.reader import read

Handler = Callable[[Question, Knowledge], Answer]


class Desk:
    """Where questions are answered: the facts of one run, and the names they are asked by."""

    def __init__(self, facts: tuple[Path, ...] = (), gear: Path | None = None, gear_needed: bool = True) -> None:
        self.catalogue, self.problems = load_catalogue(facts, gear, gear_needed=gear_needed)

    @cached_property
    def knowledge(self) -> Knowledge:
        return Knowledge.of(self.catalogue)

    @cached_property
    def lexicon(self) -> Lexicon:
        return lexicon_of(self.catalogue)

    def ask(self, text: str, talk: Talk | None = None) -> Answer:
        """Read one question, answer it, and remember it for the next."""
        talk = talk if talk is not None else Talk()
        question = read(text, self.lexicon, talk.question)
        if isinstance(question, Unread):
            return unread_answer(question)
        answer = self._answered(question, talk)
        reading = canonical(question, self.lexicon.name_for)
        answer = replace(answer, reading=reading, entities=entities_of(question, self.catalogue))
        talk.remember(answer)
        return answer

    def _answered(self, question: Question, talk: Talk) -> Answer:
        pointed = self._about_last_answer(question, talk)
        return pointed if pointed is not None else handler_for(question.intent)(question, self.knowledge)

    def _about_last_answer(self, question: Question, talk: Talk) -> Answer | None:
        """Answers that only the last answer can give: why, a chain by its number, what is remembered."""
        from engine.answers import remembered

        return remembered.answer(question, talk.rows, talk.reading, self.knowledge, self._chains_first)

    def _chains_first(self, question: Question) -> Answer:
        return handler_for("chain")(question, self.knowledge)


def handler_for(intent: str) -> Handler:
    """The module that answers a kind of question; each is loaded only when it is asked."""
    if intent in ("chain", "focus-verdict", "macro-distance"):
        from engine.answers.howto import how_to

        return how_to
    if intent == "look-alike":
        from engine.answers.lookalike import look_alike

        return look_alike
    if intent in ("definition", "list-fits"):
        from engine.answers import lookup

        return lookup.definition if intent == "definition" else lookup.list_fits
    if intent in ("hazard", "gear-setting", "why"):
        from engine.answers.advising import advise

        return advise
    from engine.answers import plain_talk

    return plain_talk.HANDLERS.get(intent, plain_talk.not_yet)


def unread_answer(unread: Unread) -> Answer:
    """One helpful line: a caret under the word, what could stand there, the nearest name, and what may be meant."""
    lines = []
    if unread.column > 0 and unread.text.strip() and "\n" not in unread.text and len(unread.text) <= 160:
        lines.append(Line("verbatim", unread.text.replace("\t", " ")))
        lines.append(Line("verbatim", " " * (unread.column - 1) + "^"))
    near = f" Nearest: {unread.nearest}." if unread.nearest else ""
    lines.append(Line("ask", f"Found {unread.found}; expected {unread.expected}.{near}"))
    lines += [Line("text", f"{n}. {guess}", 1) for n, guess in enumerate(unread.guesses, start=1)]
    return Answer(unread.text, None, NOT_UNDERSTOOD, tuple(lines), unread=unread)


def facts_invalid(problems: tuple[Problem, ...]) -> str:
    """The problems of the facts, one a line."""
    return "\n".join(str(problem) for problem in problems)
