"""A ring that one lens showed to be too thick, under another: where that one stops, and what is to be taken off."""

from __future__ import annotations

from engine.answers.answer import Line, Quantity, Told
from engine.answers.distances import Distances
from engine.answers.knowledge import Knowledge
from engine.answers.said import focals
from engine.answers.wording import distance, small_mm, trimmed
from engine.base.interval import Interval, is_known
from grammar.questions import Question


def too_far_out(question: Question, error: float, knowledge: Knowledge) -> Told:
    """The same error in mm for every lens: how far each is sharp with it."""
    text = f"The ring is the same, so each lens on it sits {small_mm(error)} too far out: take that off the ring."
    lines = [Line("head", text)]
    rows = [
        Quantity("shim_mm", Interval.exact(error), "to take off"), Quantity("register_error_mm", Interval.exact(error)),
    ]  # fmt: skip
    for focal in focals(question):
        far = Distances(focal, knowledge.catalogue).from_sensor(error)
        if is_known(far):
            name = f"{trimmed(focal, 1)} mm lens"
            rows.append(Quantity("far_from_sensor_mm", far, name))
            lines.append(Line("fact", f"a {name} stops at {distance(far.nominal, question.feet)} with it", 1))
    return Told(tuple(lines), tuple(rows))
