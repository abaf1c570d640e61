"""What a converter or reducer behind the lens makes of the magnifications that an answer tells."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.wording import times
from engine.base.interval import Interval
from engine.facts.kinds import GLASS_KINDS
from grammar.questions import Question


def through_glass(told: Told, question: Question) -> Told:
    """Every magnification times the factor of the glass named, its greatest in words; nothing where none is named."""
    factor = next((one.factor for one in question.adapters if one.factor and one.piece in GLASS_KINDS), None)
    sizes = [row for row in told.quantities if row.name == "magnification" and isinstance(row.value, Interval)]
    if factor is None or not sizes:
        return Told()
    rows = [Quantity(row.name, row.value * factor, f"{row.case} through {factor:g}x") for row in sizes]
    most = max(row.value.nominal for row in sizes if isinstance(row.value, Interval))
    text = f"Behind it the {factor:g}x glass makes {times(most * factor)} of the {times(most)}, at the same distance."
    return Told((Line("head", text),), tuple(rows))
