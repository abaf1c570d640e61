"""What was said last: the question that a follow-up leans on, and the chains that can be pointed at by number."""

from __future__ import annotations

from typing import TYPE_CHECKING

from engine.answers.answer import Answer, Line
from engine.base.compact import compact, field, replace
from engine.judging.ranking import Listed
from grammar.questions import Question

if TYPE_CHECKING:
    from engine.facts.gearedits import Edit  # needed only where something is taught


# a caution or a word asked about on the way: what follows goes on with the question before
ASIDES = frozenset({"hazard", "definition", "out-of-scope"})


@compact
class Pending:
    """What waits for a 'yes' to be written to the gear file. `undoes`: it takes back what was written last."""

    question: Question
    edits: tuple[Edit, ...]
    undoes: bool = False


@compact(frozen=False)
class Talk:
    """The memory of one talk. `rows`: the chains of the last answer that listed any.

    `guesses`: the questions that the last answer offered by number, where it could not read what was asked.
    `pending`: what was told and is not yet written; `undo`: what turns back each thing that was, the last one last.
    """

    question: Question | None = None
    rows: tuple[Listed, ...] = ()
    reading: str = ""
    said: list[str] = field(default_factory=list)
    guesses: tuple[str, ...] = ()
    pending: Pending | None = None
    undo: list[tuple[Edit, ...]] = field(default_factory=list)

    def meant(self, text: str) -> str:
        """The text, or the guess that it points at where it is only the number of one."""
        number = text.strip(" \t#.)")
        if number.isascii() and number.isdecimal() and len(number) < 3 and 0 < int(number) <= len(self.guesses):
            return self.guesses[int(number) - 1]
        return text

    def let_go(self, answer: Answer) -> Answer:
        """The answer to another question; what waited for a 'yes' waits no longer, and that is said."""
        if self.pending is None:
            return answer
        self.pending = None
        return self.with_note(answer)

    @staticmethod
    def with_note(answer: Answer) -> Answer:
        left = "What you told before was not written, since no 'yes' came; tell it again to write it."
        return replace(answer, lines=(*answer.lines, Line("note", left)))

    def remember(self, answer: Answer) -> None:
        """Keep what a follow-up may lean on; an answer that was no answer changes nothing."""
        if answer.forgets:
            self.forget()
            return
        if answer.question is None or answer.intent in ("help", "quit", "show-memory", "list-gear"):
            return
        if answer.intent == "card" and self._same_pair(answer.question):
            self.question = answer.question.with_(intent="chain")  # the chains that were listed can still be meant
            self.reading = answer.reading
            return
        if self.question is not None and answer.question.follows and answer.intent in ASIDES:
            self.reading = answer.reading
            return
        self.question = answer.question
        if answer.intent == "why":
            # a reason is an aside: what follows goes on with the chain that it was about
            told = self.question.intent if self.question.intent != "why" else "chain"
            self.question = self.question.with_(intent=told, topic=None, number=None, values=())
        if answer.intent in ("teach", "forget", "card"):
            # what follows asks of the thing: nothing is told or written unasked
            self.question = self.question.with_(intent="chain")
        self.reading = answer.reading
        if (answer.chains is not None and len(answer.chains) != 1) or (
            answer.chains and not self._points_into_last(answer)
        ):
            self.rows = tuple(chain.listed for chain in answer.chains)

    def _points_into_last(self, answer: Answer) -> bool:
        """Whether the answer only told one of the listed chains again."""
        return answer.question is not None and answer.question.number is not None and len(self.rows) > 1

    def _same_pair(self, question: Question) -> bool:
        before = self.question
        return before is not None and (question.lenses, question.bodies) == (before.lenses, before.bodies)

    def forget(self) -> None:
        self.question, self.rows, self.reading = None, (), ""
