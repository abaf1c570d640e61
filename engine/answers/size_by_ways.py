"""Ways to come closer set against each other at one magnification: the length, the power, the light that each takes."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.answer import Line, Quantity, Told
from engine.answers.dioptres import CLOSE_UP_LENS
from engine.answers.image_side import size_told
from engine.answers.said import focals
from engine.answers.wording import figures, times, trimmed
from engine.base.interval import Interval
from grammar.questions import Question

_DRAWN: Final = frozenset(["extension-tube", "bellows", "helicoid"])
_METRE: Final = 1000.0  # mm; a dioptre is one over a metre


def size_by_ways(question: Question) -> Told:
    """What a tube and a close-up lens take for the magnification told; nothing where only one of them is named."""
    wanted, kinds = size_told(question), {thing.piece for thing in question.adapters}
    if not wanted or CLOSE_UP_LENS not in kinds or not kinds & _DRAWN:
        return Told()
    told = Told()
    for focal in focals(question):
        extension, power, lost = focal * wanted, _METRE * wanted / focal, 2 * log2(1 + wanted)
        lens = f"{trimmed(focal, 1)} mm at infinity to {times(wanted)}"
        text = (
            f"{lens}: {trimmed(extension, 1)} mm of tube, which costs {lost:.1f} stops of light and adds no glass, or a"
            f" close-up lens of +{figures(power, 2)} dioptres, which costs none but adds its faults."
        )
        rows = (
            Quantity("extension_mm", Interval.exact(extension), lens),
            Quantity("light_difference_stops", Interval.exact(lost), f"tube, {lens}"),
            Quantity("dioptres", Interval.exact(power), lens),
        )
        told += Told((Line("head", text),), rows)
    return told
