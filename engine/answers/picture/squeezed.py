"""The shape and the view that an anamorphic lens gives once its picture is drawn wide again, before the answer."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import trimmed
from engine.answers.picture.crop_factors import shapes_told
from engine.answers.picture.frames import frames_named
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from grammar.kinds import CHAIN, DRAW, FOCUS_VERDICT, MACRO_DISTANCE
from grammar.questions import Question

SQUEEZE: Final = "squeeze"
OF_SEATS: Final = frozenset([CHAIN, FOCUS_VERDICT, DRAW, MACRO_DISTANCE])  # kinds that ask something else first
ACROSS: Final = "across the squeezed width"


def with_squeeze(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Of each shape told, else of each frame named: its width times the squeeze, over its height."""
    factor = number(question, SQUEEZE)
    if factor is None:
        return answer
    told = _drawn_wide(factor, question, knowledge) + _seen(factor, question, knowledge.catalogue)
    if not told.lines:
        return answer
    quantities = (*told.quantities, *answer.quantities)
    if question.intent in OF_SEATS:
        return replace(
            answer, lines=(*answer.lines, *(replace(line, kind="text") for line in told.lines)), quantities=quantities
        )
    rest = () if mentions(question, "shape-of-picture") else answer.lines
    return replace(answer, lines=(*told.lines, *rest), quantities=quantities)


def _drawn_wide(factor: float, question: Question, knowledge: Knowledge) -> Told:
    frames = [(form.name, form.width_mm / form.height_mm) for form in frames_named(question, knowledge.catalogue)]
    made = [(name, shape * factor) for name, shape in shapes_told(question) or frames]
    if not made:
        return Told()
    rows = tuple(Quantity("aspect", Interval.exact(wide), f"{name}, {factor:g}x squeeze") for name, wide in made)
    each = "; ".join(f"{name} becomes {trimmed(wide, 2)}:1" for name, wide in made)
    text = (
        f"Drawn wide again by {factor:g}: {each}. Height and the vertical angle stay, the width sees {factor:g}x more."
    )
    return Told((Line("head", text),), rows)


def _seen(factor: float, question: Question, facts: Catalogue) -> Told:
    """What focal length it sees like across, where that of the lens is known; up and down it is its own."""
    focal = next((one for lens in question.lenses if (one := _focal(lens.focal_length_mm, lens.id, facts))), None)
    if focal is None:
        return Told()
    own, across = trimmed(focal, 1), trimmed(focal / factor, 1)
    text = f"Across, {own} mm squeezed by {factor:g} sees what {across} mm would; up and down what {own} mm does."
    return Told((Line("text", text),), (Quantity("squeezed_focal_mm", Interval.exact(focal / factor), ACROSS),))


def _focal(told: float | None, id_: str | None, facts: Catalogue) -> float | None:
    own = facts.lenses.get(id_ or "")
    known = own.focal_length_mm if own is not None else None
    return told or (known.nominal if known is not None and is_known(known) else None)
