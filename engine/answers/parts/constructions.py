"""Where the planes of a lens lie by the construction that the question tells: retrofocus, telephoto."""

from __future__ import annotations

from typing import Final

from engine.base.compact import compact
from engine.base.interval import UNKNOWN, Interval, Measure
from engine.chains.setup import Facts
from grammar.questions import Thing

TOLD: Final = ("retrofocus", "telephoto construction")  # traits that tell it, and the heads of the assumptions' names
SYMMETRIC: Final = "symmetric"


@compact
class Planes:
    """Hiatus, front focal offset and pupil magnification; unknown where the construction is not told."""

    hiatus_mm: Measure = UNKNOWN
    offset_mm: Measure = UNKNOWN
    pupil: Measure = UNKNOWN


def planes_told(thing: Thing, facts: Facts) -> Planes:
    """By the construction named with the lens: shares of its focal length, as the traces of that class have them."""
    name = next((one for one in TOLD if one in thing.traits), None)
    if name is None or thing.focal_length_mm is None:
        return Planes()
    head, focal, rows = name.split(" ")[0], Interval.exact(thing.focal_length_mm), facts.assumptions
    return Planes(
        rows[f"{head}-when-told-hiatus"].value * focal,
        rows[f"{head}-when-told-front-focus"].value * focal,
        rows[f"construction-{head}-pupil"].value,
    )
