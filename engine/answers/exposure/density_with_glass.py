"""The density that is right once other glass stands behind the lens, and what both take together."""

from __future__ import annotations

from math import log2

from engine.answers.exposure.exposure_change import light_by
from engine.answers.exposure.holding_back import by_filters
from engine.answers.exposure.lighting import held, light_of
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import trimmed
from engine.answers.picture.circles import glass_factor
from engine.base.interval import Interval
from grammar.questions import Question


def density_with_glass(question: Question, knowledge: Knowledge) -> Told:
    """The density that was right, once other glass stands behind the lens: brighter by 2*log2 of the factor."""
    had, factors = number(question, "stops"), [thing.factor for thing in question.adapters if thing.factor]
    if not factors or not mentions(question, "filtered") or question.said("shutter") or question.said("frame_rate"):
        return Told()
    swapped = len(factors) == 2 and mentions(question, "swapped", "now")
    factor = factors[1] / factors[0] if swapped else glass_factor(question, knowledge.catalogue)
    marks = held(light_of(question, knowledge))
    had = marks.nominal if had is None and marks.nominal > 0 else had
    if had is None or factor is None or question.said("light"):
        return Told()
    more = -2 * log2(factor)
    if mentions(question, "lost-in-all") and not swapped:
        return _in_all(had, f"{factor:g}x", more)
    glass = f"{factors[1]:g}x instead of {factors[0]:g}x" if swapped else f"{factor:g}x"
    way = "brighter" if more > 0 else "darker"
    text = (
        f"Not the same density: with {glass} the picture is {trimmed(abs(more), 2)} stops {way}, so "
        f"{trimmed(had, 2)} stops become {trimmed(max(had + more, 0.0), 2)}."
    )
    wanted = Interval.exact(max(had + more, 0.0))
    told = Told((Line("head", text),), (Quantity("nd_stops", wanted, f"with {glass}"), light_by(more, glass)))
    return told + by_filters(wanted, light_of(question.with_(values=()), knowledge), knowledge)


def _in_all(held_back: float, glass: str, brighter: float) -> Told:
    """What a filter and glass behind the lens take together, where that is asked: stops add."""
    total = held_back - brighter
    way = "gives" if brighter > 0 else "takes"
    text = (
        f"{trimmed(total, 2)} stops in all: the filter takes {trimmed(held_back, 2)},"
        f" {glass} {way} {trimmed(abs(brighter), 2)}."
    )
    return Told((Line("head", text),), (light_by(-total, f"filter and {glass}"),))
