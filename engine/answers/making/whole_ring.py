"""A length told beside 'too short?' that is about as long as the whole ring must be: the ring's, and no error of it."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import numbers
from engine.base.compact import replace
from grammar.questions import RING, Question, Thing

_THICKNESS: Final = "thickness"
_LEAST_MM: Final = 2.0  # a ring that is thinner may be off by as much as it is thick
_OFF_MM: Final = 0.6  # a ring is made so near to what is right,
_OFF: Final = 0.04  # as a share of it


def with_whole_ring(question: Question, right_mm: float) -> Question:
    """'OM to E, 28.1 flat. too short?': with that as the length of a ring between the mounts told.

    `right_mm`: the seat that is right, lens register less body register.
    """
    told, lens, body = numbers(question, _THICKNESS), question.lens, question.body
    if question.adapters or lens is None or body is None or len(told) != 1 or not question.off_word:
        return question
    if right_mm < _LEAST_MM or abs(told[0] - right_mm) > max(_OFF_MM, _OFF * right_mm):
        return question
    ring = Thing(
        kind="", ids=(), words=lens.words, column=lens.column, piece=RING, front=lens.ids, rear=body.ids,
        thickness_mm=(told[0], told[0]),
    )  # fmt: skip
    values = tuple(row for row in question.values if row[0] != _THICKNESS)
    return replace(question, adapters=(ring,), values=values)
