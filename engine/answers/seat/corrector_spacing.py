"""How much is to be put between a corrector and the sensor that it wants at one distance, less what is there."""

from __future__ import annotations

import re
from typing import Final

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import BodySide, body_side
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from grammar.questions import Question

WANTED: Final = "corrector-wants"  # key of the phrases that hold the distance
ADDED_UP: Final = "For "  # begins an answer that adds up pieces at hand
RIGHT_MM: Final = 0.1  # as near as stacks are made
# a length as typed: no width of a thread, no stop, no factor, no size in inches
_LENGTH: Final = re.compile(r"(?<![\w./])(\d{1,3}(?:\.\d+)?)(?: ?mm\b)?(?!\w|\.\d|/| ?x\b| ?in\b| ?\")", re.IGNORECASE)
_SHORTEST: Final = 0.1
_LEAST_MM: Final = 5.0  # that any corrector stands before a sensor: 'a reducer 0.71' tells its factor


def with_spacing(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of the answer, where the distance that is wanted and what stands in it are told."""
    wanted = max((one.number for one in question.places(WANTED) if one.number is not None), default=None)
    if wanted is None or wanted < _LEAST_MM or (answer.lines and answer.lines[0].text.startswith(ADDED_UP)):
        return answer
    told = [float(text) for text in _LENGTH.findall(question.text)]
    there = [one for one in told if one != wanted and one >= _SHORTEST]
    side = body_side(question.body, knowledge.catalogue) if not there else None
    if isinstance(side, BodySide) and is_known(side.mount.register_mm) and not side.mount.thread:
        there = [side.mount.register_mm.nominal]
    if not there or len(there) > 4 or not mentions(question, "spacer-asked"):
        return answer
    have = sum(there)
    left = round(wanted - have, 3)
    listed_ = " + ".join(trimmed(one, 2) for one in there)
    sums = f"{listed_} = {trimmed(have, 2)} mm" if len(there) > 1 else f"{listed_} mm"
    if abs(left) <= RIGHT_MM:
        text = f"Nothing: {small_mm(wanted)} are wanted to the sensor, and {sums} are there."
    elif left > 0:
        text = f"{small_mm(left)} of spacer: {small_mm(wanted)} are wanted to the sensor, {sums} are there."
    else:
        text = f"{small_mm(-left)} too long already: {small_mm(wanted)} are wanted to the sensor, {sums} are there."
    filter_ = " A filter in between moves the focus back by a third of its thickness: add that." if left > 0 else ""
    rows = (Quantity("stack_mm", Interval.exact(max(left, 0.0)), "spacer"),)
    advice = [line for line in answer.lines if line.text.startswith("spacing before")]
    return replace(
        answer, status=ANSWERED, lines=(Line("head", f"{text}{filter_}"), *advice), quantities=rows, chains=None
    )
