"""Whether a lens's own focus ring comes as near as is wanted; how large a thing comes with the tubes that are told."""

from __future__ import annotations

from engine.answers.close.close_rows import Shown
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import small_mm, times, trimmed
from engine.answers.picture.filling import Motif
from engine.answers.seat.distances import Distances
from engine.base.interval import Interval, is_known


def by_its_ring(lens: Distances, magnification: float, shown: Shown) -> Told:
    """That its own focus ring may come so near, without a tube: lenses usually move out by such a share of f."""
    usual = shown.facts.assumptions["usual-travel-share"].value
    at = lens.at(lens.focal * magnification).from_sensor_mm
    if magnification > usual.greatest or not is_known(at):
        return Told()
    sure = "gets" if magnification <= usual.least else "may get"
    text = f"its own focus ring {sure} there, without a tube: set it to {shown.distance(at.nominal)}"
    return Told((Line("fact", text, 1),))


def image_of(motif: Motif, lens: Distances, tube_mm: float) -> Told:
    """Its length on the sensor at the infinity mark: m = x/f times its own."""
    m = Interval.exact(tube_mm) / lens.focal
    long = m * motif.long
    if not is_known(long):
        return Told()
    text = f"{motif.words[:1].upper()}{motif.words[1:]} comes out {small_mm(round(long.nominal, 2))} long on the sensor"
    focal = f"{trimmed(lens.focal.nominal, 1)} mm with {small_mm(tube_mm)} of tube"
    rows = (Quantity("image_size_mm", long, focal),)
    return Told((Line("head", f"{text}: {focal}, its ring at infinity, {times(m.nominal)}."),), rows)
