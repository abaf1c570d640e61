"""How far a frame may be shifted in an image circle before its corners go dark."""

from __future__ import annotations

from math import hypot

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import ranged, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question

PIECES = frozenset({"shift"})
ROOM_TO_SHIFT = "room to shift"  # how the line is known that tells it


def asks_shift(question: Question) -> bool:
    """Whether shifting is spoken of: by a shift adapter, or as what is to be done."""
    return any(thing.piece in PIECES for thing in question.adapters) or mentions(question, "shift")


def circle_to_shift(form: Format, question: Question) -> Told:
    """The circle that the frame asks for where it is to be shifted by so much, along each of its sides."""
    by = number(question, "shift")
    if by is None:
        return Told()
    sideways = 2 * hypot(form.width_mm / 2 + by, form.height_mm / 2)
    upward = 2 * hypot(form.width_mm / 2, form.height_mm / 2 + by)
    rows = (
        Quantity("image_circle_mm", Interval.exact(sideways), f"needed on {form.id}, along the long side"),
        Quantity("image_circle_mm", Interval.exact(upward), f"needed on {form.id}, along the short side"),
    )
    text = (
        f"Shifted {trimmed(by, 1)} mm {form.name} needs {trimmed(sideways, 1)} mm along its long side, "
        f"{trimmed(upward, 1)} mm along its short side."
    )
    return Told((Line("head", text),), rows)


def room_to_shift(circle: Interval, form: Format, question: Question, case: str, at_least: bool) -> Told:
    """Along each side of the frame; nothing where shifting is not spoken of. `at_least`: the circle may be larger."""
    if not asks_shift(question):
        return Told()
    wide, high = Interval.exact(form.width_mm), Interval.exact(form.height_mm)
    sideways, upward = coverage.shift_left_mm(circle, wide, high), coverage.shift_left_mm(circle, high, wide)
    if not is_known(sideways) or not is_known(upward):
        return Told()
    rows = (
        Quantity("shift_mm", sideways, f"along the long side of {form.id}, {case}"),
        Quantity("shift_mm", upward, f"along the short side of {form.id}, {case}"),
    )
    if at_least and sideways.least <= 0 and upward.least <= 0:
        return Told()  # how much more the circle is than is known would decide
    if sideways.greatest <= 0 and upward.greatest <= 0:
        none = f"no {ROOM_TO_SHIFT} on {form.name}: the circle does not even cover it centred"
        return Told((Line("fact", none, 1),), rows)
    least = "at least " if at_least else ""
    text = (
        f"{ROOM_TO_SHIFT} on {form.name} before a corner goes dark: {least}{_mm(sideways)} along its long side, "
        f"{least}{_mm(upward)} along its short side; the adapter's bore or the body's throat may shade sooner"
    )
    return Told((Line("fact", text, 1),), rows)


def _mm(value: Interval) -> str:
    return ranged(value, lambda one: f"{trimmed(one, 1)} mm")
