"""What is multiplied by the crop factor and what is not, where no lens is told."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.said import mentions
from engine.facts.catalogue import Catalogue
from grammar.questions import Question

ANY_LENS: Final = "crop-of-any-lens"  # the advice
BY_CROP: Final = (
    "Times the crop factor for depth of field, times its square for the light gathered in all, or ISO alike; for "
    "exposure the f-number is multiplied by nothing."
)


def of_any_lens(question: Question, facts: Catalogue) -> Told:
    """'do I multiply lenses made for APS-C too': that the crop factor asks nothing of what a lens was made for."""
    asked = mentions(question, "multiplied") and not mentions(question, "crop-or-exposure")
    rows = [facts.advice[ANY_LENS]] if asked and ANY_LENS in facts.advice else []
    return Told(tuple(Line("head", row.says) for row in rows))


def stops_first(examples: Told) -> Told:
    """'is the f-number multiplied too, or by the square': in a sentence, then the stops of `examples`."""
    return Told((Line("head", BY_CROP), *examples.lines), examples.quantities)
