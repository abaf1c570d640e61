"""Which close-up lenses of several are asked of by themselves, and which one on top of the other."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import accumulate

from engine.answers.picture.each_glass import are_either
from grammar.questions import CLOSE_UP_LENS, Question
from grammar.words.mentioned import outside

PUT_ON_NEXT, ON_EACH_OTHER, ADDED_UP = "power-put-on", "one-on-the-other", "added-up"


def powers_asked(question: Question, powers: Sequence[float]) -> list[float]:
    """The strengths to tell, in dioptres, in their order: each of two to choose from; the first, and with the next on.

    'how near with +3, and with a +2 on top' asks of +3 and of +5; '+2 or +4, or both' of each and of +6;
    '+2 and +4 stacked' of +6 alone. Strengths of lenses that lie on each other add.
    """
    worn = [thing for thing in question.adapters if thing.piece == CLOSE_UP_LENS]
    if len(powers) > 1 and not question.follows and _is_next_put_on(question, min(one.column for one in worn)):
        return list(accumulate(powers))
    if are_either(worn, question):
        return [*powers, *([sum(powers)] if question.mentions(ADDED_UP) else [])]
    return [sum(powers)]


def _is_next_put_on(question: Question, first: int) -> bool:
    """Whether, behind the first of them, a further one is put on."""
    places = outside(question.places(PUT_ON_NEXT), question.places(ON_EACH_OTHER))
    return any(one.at >= first for one in places)
