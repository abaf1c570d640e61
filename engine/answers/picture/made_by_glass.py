"""'Does the 0.64 make my f/2.8 an f/1.8': the stop that glass makes of another, and whether it is the one supposed."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import numbers
from engine.answers.parts.wording import f_number, trimmed
from engine.answers.picture.circles import glass_factor
from engine.base.compact import replace
from engine.base.interval import Interval
from grammar.questions import Question
from grammar.words.written import STOPS

ROUNDED: Final = 0.06  # share by which a stop may be off as stops are told
PAIR: Final = 2


def with_stop_made(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind what the glass makes of the wider or the smaller of the two stops told."""
    factor, told = glass_factor(question, knowledge.catalogue), _stops(question)
    if factor is None or factor == 1 or len(told) != PAIR:
        return answer
    wide, small = sorted(told)
    own, meant = (small, wide) if factor < 1 else (wide, small)
    made = own * factor
    stops = abs(2 * log2(factor))
    yes = abs(made / meant - 1) <= ROUNDED
    # else what it comes to is asked, and nothing is supposed
    supposed = yes or not question.follows or not question.mentions("stop-of-number", "number-becomes")
    lead = ("Yes: " if yes else "No: ") if supposed else ""
    text = f"{lead}f/{f_number(own)} x {factor:g} = f/{trimmed(made, 2)}"
    text += f", {trimmed(stops, 2)} stops {'brighter' if factor < 1 else 'darker'}."
    text += "" if yes or not supposed else f" For f/{f_number(meant)} it would have to be {trimmed(meant / own, 2)}x."
    rows = (
        Quantity("f_number", Interval.exact(made), f"f/{f_number(own)} with {factor:g}x"),
        Quantity("light_difference_stops", Interval.exact(stops), f"{factor:g}x"),
    )
    return replace(
        answer,
        status=ANSWERED,
        lines=(Line("head", text), *(line for line in answer.lines if not (supposed and _rules(line)))),
        quantities=(*rows, *(answer.quantities or ())),
    )


def _rules(line: Line) -> bool:
    """Whether a line says yes or no to something else that the words may ask."""
    return line.kind == "head" and line.text.startswith(("Yes", "No"))


def _stops(question: Question) -> list[float]:
    told = [one for one in (*question.stops, question.f_number, *(lens.f_number for lens in question.lenses)) if one]
    told += [one for one in numbers(question, "numbers") if one in STOPS]
    return list(dict.fromkeys(told))
