"""A spacer of which the length is asked, beside a ring that is named: it is what the ring leaves, and no piece yet."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.said import mentions
from engine.answers.seat.described import TUBE
from grammar.questions import Question, Thing

REMEDY: Final = "remedy"  # topic of what would set a chain right
_WANTED: Final = "spacer-wanted"  # key of the phrases that ask for it


def without_spacer(question: Question) -> Question:
    """The question with the ring alone, asking what sets it right, where how long the spacer has to be is asked."""
    spacers = [one for one in question.adapters if _is_open(one)]
    rings = [one for one in question.adapters if one not in spacers and (one.rear or one.thickness_mm is not None)]
    if len(spacers) != 1 or not rings or question.said("magnification") is not None:
        return question
    if question.number is not None or not mentions(question, _WANTED):
        return question
    return question.with_(adapters=tuple(one for one in question.adapters if one not in spacers), topic=REMEDY)


def _is_open(thing: Thing) -> bool:
    """'what spacer': a tube that is told by no length, and by no more than one mount."""
    return thing.piece == TUBE and not (thing.thickness_mm or thing.ids or thing.count or thing.rear)
