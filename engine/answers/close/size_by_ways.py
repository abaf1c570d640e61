"""Ways to come closer set against each other at one magnification: the length, the power, the light that each takes."""

from __future__ import annotations

from engine.answers.close.image_side import size_told
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import focals
from engine.answers.parts.wording import figures, times, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.kinds import TUBELIKE
from engine.physics import closeup, focus
from grammar.questions import CLOSE_UP_LENS, Question


def size_by_ways(question: Question) -> Told:
    """What a tube and a close-up lens take for the magnification told; nothing where only one of them is named."""
    wanted, kinds = size_told(question), {thing.piece for thing in question.adapters}
    if not wanted or CLOSE_UP_LENS not in kinds or not kinds & TUBELIKE:
        return Told()
    told = Told()
    size = Interval.exact(wanted)
    lost = focus.light_lost_stops(size, Interval.exact(1.0))  # pupils taken for even
    for focal in focals(question):
        tube = closeup.extension_for_magnification_mm(Interval.exact(focal), size)
        # at the infinity mark m = f/g, with g the focal length of the close-up lens
        power = closeup.dioptres_of_focal(Interval.exact(focal)) * size
        if not (is_known(tube) and is_known(power) and is_known(lost)):
            continue
        lens = f"{trimmed(focal, 1)} mm at infinity to {times(wanted)}"
        text = (
            f"{lens}: {trimmed(tube.nominal, 1)} mm of tube, which costs {lost.nominal:.1f} stops of light and adds no"
            f" glass, or a close-up lens of +{figures(power.nominal, 2)} dioptres, which costs none but adds its"
            " faults."
        )
        rows = (
            Quantity("extension_mm", tube, lens),
            Quantity("light_difference_stops", lost, f"tube, {lens}"),
            Quantity("dioptres", power, lens),
        )
        told += Told((Line("head", text),), rows)
    return told
