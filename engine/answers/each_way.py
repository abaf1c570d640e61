"""Both ways: 'field in each case' after a reducer against a plain ring, 'light for each of the two' after two tubes."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm
from engine.base.compact import replace
from grammar.questions import Question
from grammar.things.casting import DRAWN, OPTICAL

ASKED = "in-each-case"  # what is mentioned of both ways
_TOLD = ("head", "fact", "chain")


def with_each_way(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer, and behind it that without the glass, or with the tubes that stood there before; else as it is."""
    glass = [one for one in question.adapters if one.piece in OPTICAL and one.factor is not None]
    tubes = [one for one in question.adapters if one.piece in DRAWN and one.is_of_one_length]
    others = [one for one in question.stood if one.piece in DRAWN and one.is_of_one_length]
    drawn = bool(tubes) and len(tubes) == len(question.adapters) and bool(others) and others == list(question.stood)
    if not question.follows or not (drawn or len(glass) == 1):
        return answer
    from engine.answers.families import handler_for

    rest = question.stood if drawn else tuple(one for one in question.adapters if one not in glass)
    lengths = " + ".join(small_mm(one.thickness_mm[0]) for one in others if one.thickness_mm is not None)
    other = f"with {lengths}" if drawn else "with the plain ring"
    heard = tuple(one for one in question.mentioned if one.key != ASKED)
    plain = handler_for(question.intent)(question.with_(adapters=rest, mentioned=heard), knowledge)
    told = [line for line in plain.lines if line.kind in _TOLD and line not in answer.lines]
    if not told:
        return answer
    head = Line("head", f"{other[:1].upper()}{other[1:]}:")
    lines = (*answer.lines, head, *(replace(one, depth=one.depth + 1) for one in told))
    rows = tuple(replace(row, case=f"{row.case}, {other}") for row in plain.quantities or ())
    return replace(answer, lines=lines, quantities=(*(answer.quantities or ()), *rows))
