"""What the stop counts as close up, said first where it is asked: 'effective stop if I set 8'."""

from __future__ import annotations

from typing import Final

from engine.answers.close.close_rows import BESIDE_ITS_OWN
from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import stop
from engine.answers.parts.wording import about, f_number
from engine.base.compact import replace
from grammar.questions import Question

_COUNTED: Final = "effective_f_number"
_OTHERWISE: Final = "even pupils"  # the case beside that by the lens's own pupils


def with_stop_counted(answer: Answer, question: Question, _: Knowledge) -> Answer:
    """The answer behind the effective f-numbers that it holds, one a case; as it is without a stop or extension."""
    at = stop(question)
    rows = [row for row in answer.quantities or () if row.name == _COUNTED and _OTHERWISE not in (row.case or "")]
    rows = [row for row in rows if row.case == BESIDE_ITS_OWN] or rows
    if at is None or not rows:
        return answer
    of = [f"{row.case}: " if len(rows) > 1 else "" for row in rows]
    cases = (f"{case}f/{f_number(at)} counts as {about(row.value, _named)}" for case, row in zip(of, rows, strict=True))
    return replace(answer, lines=(Line("head", f"{'; '.join(cases)}."), *answer.lines))


def _named(value: float) -> str:
    return f"f/{f_number(value)}"
