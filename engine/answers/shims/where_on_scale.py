"""Where a distance stands on a focus scale, while nothing is told of an error: 'where is 3 m on the scale'."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import distance
from engine.answers.shims.loose import off_by_mm
from grammar.questions import Question

ASKED = "mark-wanted"


def where_on_scale(question: Question) -> Told:
    """Its own mark, in the unit that the scale is said to have; nothing where a seat is told to be off."""
    told = question.distance_mm or number(question, "mark")
    if told is None or not mentions(question, ASKED) or off_by_mm(question) is not None or question.follows:
        return Told()
    if mentions(question, "infinity-falls-at", "past-infinity"):
        return Told()
    at, other = distance(told, question.feet), distance(told, not question.feet)
    text = (
        f"At its {at} mark ({other}), while the lens sits right on its body. By how much is it too far out or too"
        " close? With that, or the mark where infinity is sharp, the scale is told anew."
    )
    return Told((Line("head", text),))
