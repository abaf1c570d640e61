"""What slow motion takes in light, where no frame rate is told: a row of the usual ones."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.exposure.lamps import kept_to
from engine.answers.exposure.lighting import seconds
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import trimmed
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question

_RATES: Final = (50.0, 100.0, 120.0, 200.0)  # frames a second


def slow_motion(question: Question, knowledge: Knowledge) -> Told:
    """The shutter of each rate, and by how much less light comes; nothing where a rate is told."""
    told = any(question.said(key) for key in ("frame_rate", "shutter"))
    if told or not mentions(question, "slow-motion"):
        return Told()
    rows = knowledge.catalogue.assumptions
    angle, usual = rows["usual-shutter-angle"].value, rows["usual-frame-rate"].value
    head = (
        "The more frames a second, the shorter the shutter: each doubling takes a stop of light, so a stop less of ND."
    )
    lines, quantities = [Line("head", head)], []
    for rate in _RATES:
        time = exposure.shutter_of_angle_s(
            Interval.exact(rate), Interval.exact(number(question, "angle") or angle.nominal)
        )
        if not is_known(time):
            continue
        stops = log2(rate / usual.nominal)
        less = f"{trimmed(stops, 1)} stop{'s' if stops > 1 else ''} less light than at {usual.nominal:g}"
        lines.append(Line("fact", f"{rate:g} a second: {seconds(time.nominal)}, {less}", 1))
        quantities.append(Quantity("light_difference_stops", Interval.exact(stops), f"{rate:g} a second"))
    lines.append(Line("fact", kept_to(knowledge), 1))
    lines.append(Line("ask", "How many frames a second? Then the filter can be told.", wants="frame_rate"))
    return Told(tuple(lines), tuple(quantities))
