"""T-stops set against each other, or against f-numbers: how many stops of light lie between them."""

from __future__ import annotations

import re

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import stop
from engine.answers.parts.wording import percent, trimmed
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question


def t_stops_apart(question: Question) -> Told:
    """How far two T-stops are apart, or a T-stop and the f-number beside it, both taken as what lets light through."""
    told = [float(one) for one in re.findall(r"T(\d+(?:\.\d+)?)", question.said("aperture") or "")]
    at = stop(question)
    if not told or question.said("shutter") or (at is None and len(told) < 2):
        return Told()
    names = [f"T{one:g}" for one in told[:2]]
    values = told[:2]
    if len(told) < 2 and at is not None:
        names, values = [*names, f"f/{trimmed(at, 2)}"], [*values, at]
    apart = exposure.f_number_stops(Interval.exact(min(values)), Interval.exact(max(values)))
    if not is_known(apart) or not apart.nominal:
        return Told()
    text = f"{names[0]} and {names[1]} are {trimmed(apart.nominal, 2)} stops apart"
    text += ", if all light came through." if at is not None and len(told) < 2 else "."
    told_apart = Told((Line("head", text),), (Quantity("light_difference_stops", apart, " and ".join(names)),))
    return told_apart + (_passes(told[0], at) if at is not None and len(told) < 2 else Told())


def _passes(t_stop: float, f_number: float) -> Told:
    """The share of the light that a lens of this f-number passes, where the T-stop is its own: (N/T) squared."""
    if t_stop < f_number:
        return Told((Line("text", "No lens passes more than all of it: the T-stop is of another lens or setting."),))
    share = (f_number / t_stop) ** 2
    text = f"Of one lens that is a transmission of {percent(share)}. Expose by T; depth of field goes by the f-number."
    return Told((Line("text", text),), (Quantity("transmission_share", Interval.exact(share)),))
