"""Why a frame stays dark at its edge: the circle of the lens, set against what the frame needs."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.picture.circle_explained import circle_explained
from engine.answers.picture.cover import cover
from engine.base.compact import replace
from grammar.kinds import COVERAGE, WHY
from grammar.questions import Question

WHY_DARK: Final = "A lens lights only its image circle: what the frame has beyond that stays dark."


def why_dark(question: Question, knowledge: Knowledge) -> Answer:
    """What makes the edge dark, before what the lens lights of each frame."""
    first = circle_explained(question, knowledge.catalogue).lines or (Line("head", WHY_DARK),)
    found = cover(question.with_(intent=COVERAGE, topic=None), knowledge)
    return replace(found, intent=WHY, question=question, lines=(*first, *found.lines))
