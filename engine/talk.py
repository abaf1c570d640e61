"""What was said last: the question that a follow-up leans on, and the chains that can be pointed at by number."""

from __future__ import annotations

from engine.answers.answer import Answer
from engine.base.compact import compact, field
from engine.judging.ranking import Listed
from grammar.questions import Question


@compact(frozen=False)
class Talk:
    """The memory of one talk. `rows`: the chains of the last answer that listed any."""

    question: Question | None = None
    rows: tuple[Listed, ...] = ()
    reading: str = ""
    said: list[str] = field(default_factory=list)

    def remember(self, answer: Answer) -> None:
        """Keep what a follow-up may lean on; an answer that was no answer changes nothing."""
        if answer.forgets:
            self.forget()
            return
        if answer.question is None or answer.intent in ("help", "quit", "show-memory", "list-gear"):
            return
        self.question = answer.question
        if answer.intent == "why":
            # a reason is an aside: what follows goes on with the chain that it was about
            told = self.question.intent if self.question.intent != "why" else "chain"
            self.question = self.question.with_(intent=told, topic=None, number=None, values=())
        self.reading = answer.reading
        if (answer.chains is not None and len(answer.chains) != 1) or (
            answer.chains and not self._points_into_last(answer)
        ):
            self.rows = tuple(chain.listed for chain in answer.chains)

    def _points_into_last(self, answer: Answer) -> bool:
        """Whether the answer only told one of the listed chains again."""
        return answer.question is not None and answer.question.number is not None and len(self.rows) > 1

    def forget(self) -> None:
        self.question, self.rows, self.reading = None, (), ""
