"""What goes before a view where it is asked for: how wide it is beside a phone's, what a mode leaves of the pixels."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import ranged, trimmed
from engine.answers.picture.crop_modes import in_mode
from engine.answers.picture.frames import frames_named
from engine.answers.picture.pixels import pixels_of_frame
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question

_ALIKE: Final = 1.05  # views within so much of one another look the same
_USUAL: Final = "phone-main"
_WIDE: Final = "phone-wide"


def beside_view(question: Question, views: Sequence[float], knowledge: Knowledge) -> Told:
    """`views`: focal lengths of the same view on full frame, mm."""
    told = _beside_phone(question, views, knowledge.catalogue)
    for form in in_mode(frames_named(question, knowledge.catalogue), question)[:1]:
        told += pixels_of_frame(form, question, knowledge)
    return told


def _beside_phone(question: Question, views: Sequence[float], facts: Catalogue) -> Told:
    """The view (mm on full frame) against that of a phone's camera; nothing where no phone is spoken of."""
    if not mentions(question, "phone") or mentions(question, "phone-held") or not views:
        return Told()
    row = _WIDE if mentions(question, "phone-wide") else _USUAL
    phone = facts.assumptions[row].value
    if not is_known(phone):
        return Told()
    lines = [Line("head", f"{_against(view, phone)}") for view in views]
    says = facts.assumptions[row].says
    rows = (Quantity("equivalent_focal_mm", phone, "a phone"),)
    return Told((*lines, Line("fact", f"{says}; yours is told by the data of its pictures", 1)), rows)


def _against(view: float, phone: Interval) -> str:
    like = f"like {view:.0f} mm, a phone like {ranged(phone, lambda value: f'{value:.0f} mm')} on full frame"
    if view > phone.greatest * _ALIKE:
        times = Interval(view / phone.greatest, view / phone.least, view / phone.nominal)
        return f"Narrower than a phone: {like}. The phone takes in {_times(times)} as much across."
    if view < phone.least / _ALIKE:
        times = Interval(phone.least / view, phone.greatest / view, phone.nominal / view)
        return f"Wider than a phone: {like}. It takes in {_times(times)} as much across."
    return f"About as wide as a phone: {like}."


def _times(times: Interval) -> str:
    return f"{ranged(times, lambda value: trimmed(value, 1))} times"
