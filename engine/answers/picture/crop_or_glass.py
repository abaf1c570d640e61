"""The same view by an extender or a crop, and what each costs; how near a reducer comes to full frame."""

from __future__ import annotations

from math import log2

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import percent, trimmed
from engine.answers.picture.crop_factors import Crop
from engine.base.interval import Interval
from grammar.questions import Question

EXTENDER = "teleconverter"
MILLION = 1e6
FULL = "full frame"
NEARLY = 0.12  # a net crop factor within this of 1 is nearly none


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


def against_full_frame(crop: Crop, factor: float) -> Told:
    """'0.71 on APS-C, the same picture as full frame?': how near the glass brings the view to that of full frame."""
    net, full = crop.by_diagonal * factor, FULL
    near = abs(net - 1) <= NEARLY
    how = f"nearly the same view as {full}" if near else f"a view {trimmed(net, 2)} times as narrow as {full}"
    text = (
        f"{crop.name} behind {factor:g}x has {how}: {trimmed(crop.by_diagonal, 2)} x {factor:g} = {trimmed(net, 2)}. "
        f"The lens must cover the larger field, and the corners hang on the glass; {full} needs none."
    )
    return Told((Line("head", text),))
