"""Whether a thread measured a little under its name is as it should be: a male is cut smaller than its nominal size."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.found.mounts_named import likeliest
from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import trimmed
from engine.base.compact import replace
from engine.base.interval import is_known
from grammar.kinds import FOCUS_VERDICT, SHIM_CALIBRATION
from grammar.questions import Question

OF_SEATS: Final = frozenset([FOCUS_VERDICT, SHIM_CALIBRATION])  # kinds that take such a number for a length
UNDER_MM: Final = 0.15  # what is less than the least male by more is another thread, or another thing
EXACT_MM: Final = 0.01  # what is nearer is the name itself
_NUMBER: Final = re.compile(r"(?<![\w.])\d+\.\d+(?![\w])")


def with_crests_told(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind the limits of the male thread that is named, where what was measured lies near them."""
    facts = knowledge.catalogue
    for name in likeliest(question, knowledge)[:1]:
        thread = facts.threads.get(facts.mounts[name].thread or "")
        if thread is None or not is_known(thread.male_major_mm):
            continue
        least, greatest = thread.male_major_mm.least, thread.male_major_mm.greatest
        told = [float(one) for one in _NUMBER.findall(question.text)]
        near = [one for one in told if least - UNDER_MM <= one < thread.major_mm.nominal - EXACT_MM]
        if not near:
            continue
        nominal = thread.major_mm.nominal
        whole = f"{trimmed(least, 2)} to {trimmed(greatest, 2)} mm over the crests, under its {trimmed(nominal, 2)}"
        good = "is as it should be" if near[0] >= least else "is a little less: worn, or measured askew"
        text = f"A male thread of {thread.designation} is {whole}: {near[0]:g} {good}."
        line, row = Line("head", text), Quantity("thread_diameter_mm", thread.male_major_mm, f"{name}, male")
        if question.intent in OF_SEATS:
            return Answer(question.text, question.intent, ANSWERED, (line,), question=question, quantities=(row,))
        return replace(answer, lines=(line, *answer.lines), quantities=(row, *(answer.quantities or ())))
    return answer
