"""'Is f/2 on a small sensor really f/4': a stop set against what the crop makes of it, for exposure and for depth."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import f_number, trimmed
from engine.answers.picture.crop_factors import FULL_FRAMES, crop_of
from engine.answers.picture.same_depth import formats_told
from engine.base.interval import Interval
from engine.facts.catalogue import Catalogue
from grammar.questions import Question

NEAR: Final = 0.1  # share by which the second stop may be off the first times the crop: stops are told rounded
SETTLED: Final = ("shutter", "iso", "light", "frame_rate", "factor")
PAIR: Final = 2


def stop_on_format(question: Question, facts: Catalogue) -> Told:
    """That the exposure stays, and which stop has that depth on full frame; nothing where it is not asked so."""
    pair = stops_by_crop(question, facts)
    if pair is None:
        return Told()
    at, name, crop = pair
    alike = at * crop
    text = (
        f"No: f/{f_number(at)} exposes as f/{f_number(at)} on any sensor, at the same shutter and ISO; no stop is lost."
        f" On {name} it has the depth of field that f/{trimmed(alike, 2)} has on full frame, framed the same."
    )
    return Told((Line("head", text),), (Quantity("equivalent_f_number", Interval.exact(alike), f"f/{at:g}, {name}"),))


def stops_by_crop(question: Question, facts: Catalogue) -> tuple[float, str, float] | None:
    """The stop told first, the format and its crop, where the second stop told is the first times that crop."""
    told = [lens.f_number for lens in question.lenses if lens.f_number] or list(question.stops)
    stops = list(dict.fromkeys([*told, *question.stops]))
    small = [form for _, form in formats_told(question, facts) if form.id not in FULL_FRAMES]
    if len(stops) != PAIR or not small or any(question.said(key) for key in SETTLED):
        return None
    crop = crop_of(small[0]).by_diagonal
    at, other = stops
    return (at, small[0].name, crop) if abs(other / at / crop - 1) <= NEAR else None
