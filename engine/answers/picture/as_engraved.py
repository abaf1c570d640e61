"""'so the stabiliser gets 77?' of a 50 mm lens on APS-C: the equivalent is told for what is engraved."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Told
from engine.answers.parts.said import focals
from engine.answers.parts.wording import trimmed
from engine.answers.picture.frames import frames_of
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from engine.physics.coverage import FULL_FRAME_DIAGONAL_MM
from grammar.questions import Question

LEAST_CROP: Final = 1.1  # no equivalent is told for frames nearer to full frame
_ROUNDED: Final = 0.03  # by which an equivalent is told rounded


def as_engraved(question: Question, facts: Catalogue) -> tuple[Question, Told]:
    """The question of the lens that the talk has spoken of, and that the number told now is but its equivalent."""
    told = focals(question)
    if len(told) != 1 or not question.follows:
        return question, Told()
    crops = [FULL_FRAME_DIAGONAL_MM / form.diagonal_mm for form in frames_of(question, facts)]
    for before in question.known:
        focal = before.focal_length_mm
        likened = focal is not None and any(
            crop >= LEAST_CROP and abs(told[0] / (focal * crop) - 1) <= _ROUNDED for crop in crops
        )
        if focal is not None and likened:
            text = (
                f"Not {trimmed(told[0], 1)}: that is the full frame equivalent. Enter what is engraved, "
                f"{trimmed(focal, 1)} mm; the body knows its own sensor."
            )
            lenses = tuple(replace(one, focal_length_mm=focal) for one in question.lenses)
            return question.with_(lenses=lenses), Told((Line("head", text),))
    return question, Told()
