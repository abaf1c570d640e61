"""An ISO so low that no body has it: what is set in its place."""

from __future__ import annotations

from math import log2
from typing import Final

from engine.answers.exposure.lighting import BASE_ISO
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import trimmed
from engine.base.interval import Interval

_LOWEST: Final = "lowest-iso"  # of the facts


def below_any_body(found: Interval, told: Told, knowledge: Knowledge) -> Told | None:
    """What is set where the ISO found is lower than bodies go; None where it is not."""
    if found.greatest >= knowledge.catalogue.assumptions[_LOWEST].value.least:
        return None
    head = f"Lower than bodies go: set the lowest ISO there is, such as {BASE_ISO:g}, and hold the rest back."
    stops = Interval.exact(log2(BASE_ISO / found.nominal))
    rest = f"at ISO {BASE_ISO:g} that is {trimmed(stops.nominal, 1)} stops of ND, or a shutter so much shorter"
    return Told((Line("head", head),)) + told + Told((Line("fact", rest, 1),), (Quantity("nd_stops", stops, "iso"),))
