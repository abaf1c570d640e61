"""Whether a lens's own focus ring comes as near as is wanted, without a tube."""

from __future__ import annotations

from engine.answers.close.close_rows import Shown
from engine.answers.parts.answer import Line, Told
from engine.answers.seat.distances import Distances
from engine.base.interval import is_known


def by_its_ring(lens: Distances, magnification: float, shown: Shown) -> Told:
    """That its own focus ring may come so near, without a tube: lenses usually move out by such a share of f."""
    usual = shown.facts.assumptions["usual-travel-share"].value
    at = lens.at(lens.focal * magnification).from_sensor_mm
    if magnification > usual.greatest or not is_known(at):
        return Told()
    sure = "gets" if magnification <= usual.least else "may get"
    text = f"its own focus ring {sure} there, without a tube: set it to {shown.distance(at.nominal)}"
    return Told((Line("fact", text, 1),))
