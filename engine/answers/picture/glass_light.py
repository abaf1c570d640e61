"""What a reducer or extender does to the light, told by its factor."""

from __future__ import annotations

from math import log2

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number, stop
from engine.answers.parts.wording import f_number, figures, trimmed
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.glass_apart import alternatives, glass_apart
from engine.base.interval import Interval
from grammar.questions import Question


def light_of_glass(question: Question, knowledge: Knowledge) -> Told:
    """What a reducer or extender does to the light: 2*log2 of its factor in stops."""
    if alternatives(question):
        return glass_apart(question)
    factor = glass_factor(question, knowledge.catalogue)
    if factor is None:
        return Told()
    stops = 2 * log2(factor)
    text = f"{factor:g}x {'costs' if stops > 0 else 'gains'} {abs(stops):.1f} stops of light"
    at = stop(question)
    if at is not None:
        text += f": f/{f_number(at)} becomes f/{trimmed(at * factor, 2)}"
    iso = number(question, "iso")
    if iso is not None:
        text += f"; at the same shutter ISO {iso:g} becomes {figures(iso * 2**stops, 2)}"
    rows = [Quantity("light_difference_stops", Interval.exact(abs(stops)), f"{factor:g}x")]
    rows += [Quantity("iso", Interval.exact(iso * 2**stops), f"with {factor:g}x")] if iso is not None else []
    rows += [Quantity("f_number", Interval.exact(at * factor), f"with {factor:g}x")] if at is not None else []
    return Told((Line("head", f"{text}."),), tuple(rows))
