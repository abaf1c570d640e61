"""A subject farther off than tubes let a lens reach: 'a 12 mm tube on my 200, birds at 5 m?'."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.said import distance_mm
from engine.answers.parts.wording import distance, small_mm
from engine.answers.seat.distances import Distances
from engine.base.interval import is_known
from grammar.questions import Question

_OWN_NEAREST: Final = "own-nearest-told"  # of what is mentioned: the distance is the nearest mark of the lens


def too_far_away(optics: Distances, length: float, question: Question) -> Told:
    """That the tubes, `length` mm in all, end nearer than the subject told of, and how much of tube reaches it."""
    away = distance_mm(question)
    if away is None or question.said("close_focus") is not None or question.mentions(_OWN_NEAREST):
        return Told()
    far, most = optics.from_sensor(length), optics.extension_at(away)
    if not (is_known(far) and is_known(most)) or far.greatest >= away:
        return Told()
    text = (
        f"Something {distance(away, question.feet)} away is out of reach: with {small_mm(length)} between nothing"
        f" beyond {distance(far.nominal, question.feet)} from the sensor comes sharp. At most {small_mm(most.nominal)}"
        " may stand between for it, with the lens at its infinity mark."
    )
    return Told((Line("head", text),))
