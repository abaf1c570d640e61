"""A shutter metered beside the camera, or before the lens was moved out: how long it must be behind that extension."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.exposure.lighting import seconds, shutters_s
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import about, small_mm, trimmed
from engine.answers.picture.moved_out import extension_mm
from engine.answers.seat.distances import distances_of
from engine.base.interval import Interval, is_known
from engine.physics import focus
from grammar.questions import Question

OUTSIDE: Final = ("metered-outside", "hand-meter")  # what is mentioned of such a reading
_TIME: Final = "shutter"
_ONE: Final = Interval.exact(1.0)


def is_metered(question: Question) -> bool:
    """Whether a shutter is told as it was metered; in a talk also the next one: 'and if it was 1/30'."""
    prior, own = question.prior, mentions(question, *OUTSIDE) or question.topic == OUTSIDE[0]
    if own or prior is None or not question.follows or mentions(question, "nd-or-density"):
        return own
    again = (prior.mentions(OUTSIDE[0]) or prior.topic == OUTSIDE[0]) and prior.adapters == question.adapters
    return again and question.said(_TIME) not in (None, prior.said(_TIME))


def metered_outside(question: Question, knowledge: Knowledge) -> Told:
    """The shutter told, longer by what the magnification costs; nothing where none is told, or a scene decides."""
    times, scene = shutters_s(question), question.said("light")
    if len(times) != 1 or scene is not None or not is_metered(question):
        return Told()
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    wanted, x = number(question, "magnification"), extension_mm(question, knowledge.catalogue)
    size, case = wanted, f"{trimmed(wanted or 0.0, 2)}x"
    if x is not None and lens is not None:
        magnified = focus.magnification(lens.focal, Interval.exact(x))
        size, case = magnified.nominal if is_known(magnified) else wanted, f"{small_mm(x)} of extension"
    if not size:
        return Told()
    longer = (1 + size) ** 2
    after, stops = times[0] * longer, log2(longer)
    text = (
        f"{seconds(times[0])} becomes {seconds(after)}: {case} costs {trimmed(stops, 1)} stops, {trimmed(longer, 1)} "
        "times as long, which a meter beside the camera does not see."
    )
    lines = [Line("head", text)]
    effective = focus.effective_f_number(_ONE, Interval.exact(size), lens.likely_pupil) if lens is not None else _ONE
    if is_known(effective) and not effective.is_exact:
        spread = about(effective * effective * Interval.exact(times[0]), seconds)
        lines.append(Line("fact", f"taking the pupils for even (p = 1); by construction {spread}", 1))
    lines.append(Line("text", "A body that meters through the lens counts that already: then nothing is added."))
    rows = (
        Quantity("shutter_s", Interval.exact(after), "metered outside"),
        Quantity("light_difference_stops", Interval.exact(stops), case),
    )
    return Told(tuple(lines), rows)
