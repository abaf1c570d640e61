"""What to set on the ring of the lens for the f-number that a meter beside the camera gives, behind glass or tubes."""

from __future__ import annotations

from engine.answers.exposure.metered_outside import OUTSIDE
from engine.answers.exposure.stop_steps import stops_said
from engine.answers.exposure.two_stops import stops_told
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import f_number, trimmed
from engine.answers.picture.circles import glass_factor
from engine.base.interval import Interval, is_known
from engine.physics import exposure
from grammar.questions import Question


def stop_to_set(question: Question, knowledge: Knowledge) -> Told:
    """N of the ring = N metered / k behind glass of factor k, or N / sqrt(2)^s where s stops are lost on the way."""
    stops, factor = stops_told(question), glass_factor(question, knowledge.catalogue)
    metered = mentions(question, *OUTSIDE, "metered-so") and mentions(question, "set-on-lens")
    if len(stops) != 1 or not metered or question.said("light"):
        return Told()
    lost = number(question, "stops") if factor is None and question.adapters else None
    if factor is not None:
        ring, why = Interval.exact(stops[0] / factor), f"{trimmed(factor, 3)}x makes it f/{f_number(stops[0])}"
    elif lost is not None:
        found = exposure.f_number_after(Interval.exact(stops[0]), Interval.exact(-lost))
        if not is_known(found):
            return Told()
        ring, why = found, f"the {stops_said(lost)} lost make it f/{f_number(stops[0])} in light"
    else:
        return Told()
    text = f"Set f/{trimmed(ring.nominal, 1)} on the lens: {why}, which is what the meter asks for."
    note = "A body that meters through the lens counts that already: then nothing is changed."
    return Told((Line("head", text), Line("text", note)), (Quantity("f_number", ring, "on the lens"),))
