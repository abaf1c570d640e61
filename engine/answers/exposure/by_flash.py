"""A flash told by its guide number: the stop for a distance, or the distance for a stop; what else is not computed."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, number, number_beside, stop
from engine.answers.parts.wording import distance, f_number, trimmed
from engine.base.interval import Interval
from engine.physics import flash_and_stars
from grammar.questions import Question

NUMBER: Final = "guide-number"
REST: Final = (
    "Counted in metres at ISO 100, from flash to subject, the head as the number was told for (zoomed, unbounced). The "
    "power setting, bounce and what the body's own metering does are not computed."
)
ASKED: Final = (
    "How far is the subject from the flash, or at which f-number? The guide number over the one is the other."
)


def by_flash(question: Question, _: Knowledge) -> Told:
    """Nothing where no guide number is told."""
    guide = number_beside(question, NUMBER)
    if guide is None or guide <= 0:
        return Told()
    iso, away, at = number(question, "iso") or flash_and_stars.BASE_ISO, distance_mm(question), stop(question)
    lead = f"guide number {trimmed(guide, 1)}, ISO {iso:g}"
    if away is not None:
        found = flash_and_stars.f_number_for_flash(guide, away, iso)
        text = f"f/{f_number(found)} at {distance(away, question.feet)}: {lead}."
        rows = (Quantity("f_number", Interval.exact(found), "by flash"),)
    elif at is not None:
        reach = flash_and_stars.reach_of_flash_mm(guide, at, iso)
        text = f"{distance(reach, question.feet)} from the flash at f/{f_number(at)}: {lead}."
        rows = (Quantity("flash_distance_mm", Interval.exact(reach), "by flash"),)
    else:
        return Told((Line("ask", ASKED),))
    return Told((Line("head", text), Line("text", REST)), rows)
