"""'field at 5 m in each case' after a reducer was set against a plain ring: with the glass, and then without it."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from grammar.questions import Question
from grammar.things.casting import OPTICAL

ASKED = "in-each-case"  # what is mentioned of both ways
_TOLD = ("head", "fact", "chain")


def with_each_way(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer, and behind it that without the glass; as it is where no one piece of glass was spoken of before."""
    glass = [one for one in question.adapters if one.piece in OPTICAL and one.factor is not None]
    if not question.follows or len(glass) != 1:
        return answer
    from engine.answers.families import handler_for

    rest = tuple(one for one in question.adapters if one not in glass)
    heard = tuple(one for one in question.mentioned if one.key != ASKED)
    plain = handler_for(question.intent)(question.with_(adapters=rest, mentioned=heard), knowledge)
    told = [line for line in plain.lines if line.kind in _TOLD and line not in answer.lines]
    if not told:
        return answer
    lines = (*answer.lines, Line("head", "With the plain ring:"), *(replace(one, depth=one.depth + 1) for one in told))
    rows = tuple(replace(row, case=f"{row.case}, plain ring") for row in plain.quantities or ())
    return replace(answer, lines=lines, quantities=(*(answer.quantities or ()), *rows))
