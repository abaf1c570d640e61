"""The same narrower view by an extender or by cropping the picture: what each costs."""

from __future__ import annotations

from math import log2

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import percent, trimmed
from engine.base.interval import Interval
from grammar.questions import Question

EXTENDER = "teleconverter"
MILLION = 1e6


def crop_or_glass(question: Question) -> Told:
    """Light lost by the extender, pixels lost by the crop; nothing where the two are not set against each other."""
    factor = next((thing.factor for thing in question.adapters if thing.piece == EXTENDER and thing.factor), None)
    if factor is None or factor <= 1 or not mentions(question, "crop"):
        return Told()
    stops, kept = 2 * log2(factor), 1 / factor**2
    text = (
        f"The {factor:g}x costs {trimmed(stops, 2)} stops of light and adds its own faults; cropping by {factor:g} "
        f"costs no light and leaves {percent(kept)} of the pixels"
    )
    rows = [
        Quantity("light_difference_stops", Interval.exact(stops), f"{factor:g}x"),
        Quantity("pixel_share", Interval.exact(kept), f"cropped by {factor:g}"),
    ]
    millions = _megapixels(question)
    if millions is not None:
        text += f", {trimmed(millions * kept, 1)} of {trimmed(millions, 1)} megapixels"
    text += ". The view is the same, and so is the depth of field once the stop that is lost counts."
    return Told((Line("head", text),), tuple(rows))


def _megapixels(question: Question) -> float | None:
    """The pixels told, in millions; sides told count multiplied."""
    said = question.said("pixels") or ""
    first = said.split(" ")[0]
    if "megapixel" in said and first.replace(".", "", 1).isdecimal():
        return float(first)
    sides = [float(part) for part in said.removesuffix(" pixels").split(" x ") if part.isdecimal()]
    return sides[0] * sides[1] / MILLION if len(sides) == 2 else None
