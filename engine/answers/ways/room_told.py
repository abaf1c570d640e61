"""A length told that is no ring: it is just the room that the two registers leave."""

from __future__ import annotations

from engine.answers.parts.answer import RingToMake
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import told_register_mm
from engine.answers.parts.said import mentions, number
from engine.answers.shims.other_seats_off import is_cup
from grammar.questions import Question


def is_only_reckoned(question: Question, room: RingToMake, knowledge: Knowledge) -> bool:
    """'so a 0.3 mm ring?': just as thick as the room that is left, where no ring can be, and at nobody's hand."""
    told = question.adapters[0].thickness_mm if len(question.adapters) == 1 else None
    if told is None or told[0] != told[1] or room.possible != "no" or room.thickness_mm is None:
        return False
    just = abs(told[0] - room.thickness_mm.nominal) < told_register_mm(knowledge.catalogue)
    return just and not mentions(question, "ring-at-hand")


def is_only_apart(question: Question, room: RingToMake, knowledge: Knowledge) -> bool:
    """'an X lens on an E body, only 0.3 apart': what the body's register is longer by is no ring; a cup is one."""
    told = question.adapters[0].thickness_mm if len(question.adapters) == 1 else None
    apart = number(question, "thickness", "length", "numbers") if told is None else told[0]
    if apart is None or room.thickness_mm is None or room.thickness_mm.nominal >= 0:
        return False
    just = abs(apart + room.thickness_mm.nominal) < told_register_mm(knowledge.catalogue)
    named = mentions(question, "apart-by") and not mentions(question, "ring-at-hand")
    return just and named and not any(map(is_cup, question.adapters))
