"""What filters that are not grey take of the light: a polariser, a clear one; and with grey ones together."""

from __future__ import annotations

from typing import Final

from engine.answers.exposure.lighting import held, light_of
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import listed, ranged, trimmed
from engine.base.interval import Interval, is_known
from grammar.questions import Question

EATING: Final = {"polariser-eats": "polariser-light", "clear-filter-eats": "clear-filter-light"}  # by what is heard


def taken_by_others(question: Question, knowledge: Knowledge) -> Told:
    """The light that such a filter takes, where no scene is told; with the grey filters that are stacked with it."""
    row = next((EATING[key] for key in EATING if mentions(question, key)), None)
    asked = mentions(question, "light-eaten", "how-many-stops", "by-how-much", "added-up")
    if row is None or not asked or question.said("light") or question.said("shutter"):
        return Told()
    facts, light = knowledge.catalogue.assumptions[row], light_of(question, knowledge)
    text = f"{facts.says[:1].upper()}{facts.says[1:]}."
    told = Told((Line("head", text),), (Quantity("light_difference_stops", facts.value, row.removesuffix("-light")),))
    grey = held(light)
    if not light.filters or not is_known(grey) or grey.nominal <= 0:
        return told
    own = number(question, "stops")  # what this very one takes, where that is told
    both = grey + (Interval.exact(own) if own is not None else facts.value)
    text = f"With {listed(light.filters)} together {ranged(both, lambda stops: trimmed(stops, 2))} stops."
    return Told((Line("head", text),), (Quantity("nd_stops", both, "together"),)) + told
