"""What a reducer or extender does to the light, told by its factor."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, number, numbers, stop
from engine.answers.parts.wording import f_number, figures, trimmed
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.glass_apart import alternatives, glass_apart
from engine.base.interval import Interval
from engine.facts.kinds import GLASS_KINDS
from grammar.questions import Question

_LEAST_FOCAL_MM: Final = 8.0  # of a lens told by a number alone


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


def why_of_factor(question: Question, knowledge: Knowledge) -> Told:
    """'why does a doubler eat two stops', 'a stop brighter with the 0.7 reducer': the light that its factor makes."""
    factors = [one.factor for one in question.adapters if one.piece in GLASS_KINDS and one.factor]
    opened = [*(one.f_number for one in question.lenses if one.f_number), *question.stops]
    asked = question.said("stops") is not None or mentions(question, "gets-dark", "brighter-by")
    longer = mentions(question, "looks-longer")
    if len(factors) != 1 or not (asked or opened or longer):
        return Told()
    if longer and not asked:
        return _longer_by(factors[0], question)
    stops, at = 2 * log2(factors[0]), question.f_number or next(iter(opened), None)
    more, area, by = "darker" if stops > 0 else "brighter", trimmed(factors[0] ** 2, 2), trimmed(factors[0], 2)
    text = (
        f"{by}x spreads the same light over {area} times the area, so the f-number goes by {by} and the picture is"
        f" {trimmed(abs(stops), 2)} stops {more}: 2 x log2 of the factor."
    )
    rows = [Quantity("light_difference_stops", Interval.exact(abs(stops)), more)]
    if at is not None:
        text += f" f/{f_number(at)} x {by} = f/{trimmed(at * factors[0], 2)}."
        rows.append(Quantity("f_number", Interval.exact(at * factors[0]), f"with {by}x"))
    return Told((Line("head", text),), tuple(rows))


def _longer_by(factor: float, question: Question) -> Told:
    """'why does the glass ring make my 50 look longer': its factor lengthens the lens, and costs light."""
    stops, by = 2 * log2(factor), trimmed(factor, 2)
    alone = [value for value in numbers(question, "numbers") if value >= _LEAST_FOCAL_MM]
    lengths = focals(question) or tuple(alone[:1])
    sums = [f"{trimmed(one, 1)} x {by} = {trimmed(one * factor, 1)} mm" for one in lengths]
    text = f"Its glass enlarges {by} times, as a teleconverter does{': ' if sums else ''}{', '.join(sums)}."
    text += f" It {'costs' if stops > 0 else 'gains'} {trimmed(abs(stops), 2)} stops of light."
    rows = [Quantity("focal_length_mm", Interval.exact(one * factor), f"with {by}x") for one in lengths]
    rows.append(Quantity("light_difference_stops", Interval.exact(abs(stops)), f"{by}x"))
    return Told((Line("head", text),), tuple(rows))
