"""A T-stop told, as the f-number behind it; an f-number and what the glass lets through, as the T-stop."""

from __future__ import annotations

import re

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number, stop
from engine.answers.parts.wording import trimmed
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question


def t_stop_told(question: Question, knowledge: Knowledge) -> Told:
    """The f-number behind a T-stop: T times the root of the transmission."""
    match = re.match(r"T(\d+(?:\.\d+)?)", question.said("aperture") or "")
    if not match:
        return _t_of_f(question)
    at = next((lens.f_number for lens in question.lenses if lens.f_number is not None), None)
    if at is not None and at < float(match[1]) and not question.said("transmission"):
        return Told()  # both are told: nothing is to be guessed
    told = _passing(question)
    usual = knowledge.catalogue.assumptions["usual-transmission"].value
    share = Interval.exact(told / 100) if told else usual
    value = exposure.f_number_of_t_stop(Interval.exact(float(match[1])), share)
    if not is_known(value):
        return Told()
    case = f"transmission {share.nominal * 100:.0f} %"
    text = f"T{match[1]} is about f/{trimmed(value.nominal, 2)} at {share.nominal * 100:.0f} % transmission."
    lines = [Line("head", text), Line("text", "Expose by T; work out depth of field by the f-number.")]
    if told is None:
        often = f"{usual.least * 100:.0f} to {usual.greatest * 100:.0f} %"
        lines.append(Line("ask", f"What transmission has the lens? It is seldom told; {often} is usual."))
    return Told(tuple(lines), (Quantity("f_number", value, case),))


def _passing(question: Question) -> float | None:
    """The percentage that passes the glass; where what stays in it is told, the rest."""
    told = number(question, "transmission")
    return 100 - told if told is not None and mentions(question, "share-lost") else told


def _t_of_f(question: Question) -> Told:
    """The T-stop of an f-number where the share of light that passes is told: N over its root."""
    told, at = _passing(question), stop(question)
    if not told or at is None:
        return Told()
    share = Interval.exact(told / 100)
    value, lost = exposure.t_stop_of_f_number(Interval.exact(at), share), exposure.transmission_lost_stops(share)
    if not (is_known(value) and is_known(lost)):
        return Told()
    text = (
        f"f/{trimmed(at, 2)} at {told:g} % transmission is T{trimmed(value.nominal, 2)}: {trimmed(lost.nominal, 2)} "
        "stops stay in the glass. Expose by T; work out depth of field by the f-number."
    )
    rows = (Quantity("t_stop", value, f"transmission {told:g} %"), Quantity("light_difference_stops", lost, "glass"))
    return Told((Line("head", text),), rows)
