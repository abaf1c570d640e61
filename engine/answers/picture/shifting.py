"""How far a frame may be shifted in an image circle before its corners go dark."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.said import mentions
from engine.answers.parts.wording import ranged, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import coverage
from grammar.questions import Question

PIECES = frozenset({"shift"})


def asks_shift(question: Question) -> bool:
    """Whether shifting is spoken of: by a shift adapter, or as what is to be done."""
    return any(thing.piece in PIECES for thing in question.adapters) or mentions(question, "shift")


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
    if sideways.greatest <= 0 and upward.greatest <= 0:
        none = f"no room to shift on {form.name}: the circle does not even cover it centred"
        return Told((Line("fact", none, 1),), rows)
    least = "at least " if at_least else ""
    text = (
        f"room to shift on {form.name} before a corner goes dark: {least}{_mm(sideways)} along its long side, "
        f"{least}{_mm(upward)} along its short side; the adapter's bore or the body's throat may shade sooner"
    )
    return Told((Line("fact", text, 1),), rows)


def _mm(value: Interval) -> str:
    return ranged(value, lambda one: f"{trimmed(one, 1)} mm")
