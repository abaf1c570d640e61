"""The shape of the picture that an anamorphic lens gives once it is drawn wide again, before the answer."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, numbers
from engine.answers.parts.wording import trimmed
from engine.answers.picture.crop_factors import shapes_told
from engine.answers.picture.frames import frames_named
from engine.base.compact import replace
from engine.base.interval import Interval
from grammar.questions import Question

ANAMORPHIC: Final = "anamorphic"
LEAST, MOST = 1.2, 2.0  # factors that such lenses squeeze the width by


def with_squeeze(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Of each shape told, else of each frame named: its width times the squeeze, over its height."""
    told = _drawn_wide(question, knowledge)
    if not told.lines:
        return answer
    rest = () if mentions(question, "shape-of-picture") else answer.lines
    return replace(answer, lines=(*told.lines, *rest), quantities=(*told.quantities, *answer.quantities))


def _drawn_wide(question: Question, knowledge: Knowledge) -> Told:
    lens = question.lens
    if lens is None or ANAMORPHIC not in ((lens.lens_kind or ""), *lens.traits):
        return Told()
    factor = next((one for one in numbers(question, "magnification", "numbers") if LEAST <= one <= MOST), None)
    frames = [(form.name, form.width_mm / form.height_mm) for form in frames_named(question, knowledge.catalogue)]
    shapes = shapes_told(question) or frames
    if factor is None or not shapes:
        return Told()
    made = [(name, shape * factor) for name, shape in shapes]
    rows = tuple(Quantity("aspect", Interval.exact(wide), f"{name}, {factor:g}x squeeze") for name, wide in made)
    each = "; ".join(f"{name} becomes {trimmed(wide, 2)}:1" for name, wide in made)
    text = (
        f"Drawn wide again by {factor:g}: {each}. Height and the vertical angle stay, the width sees {factor:g}x more."
    )
    return Told((Line("head", text),), rows)
