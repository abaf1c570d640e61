"""The bore of a cup that a barrel goes into, and the wall that the throat leaves for it."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import Missing, body_side
from engine.answers.parts.said import number
from engine.answers.parts.wording import trimmed
from engine.base.interval import is_known
from grammar.questions import Question


def bore_for(question: Question, knowledge: Knowledge) -> Told:
    """The bore of a cup for a barrel, and what wall the throat leaves."""
    barrel = number(question, "barrel")
    if barrel is None:
        return Told()
    bore = barrel + knowledge.catalogue.assumptions["cup-play"].value
    text = (
        f"Cup bore {trimmed(bore.least, 1)} to {trimmed(bore.greatest, 1)} mm for a {trimmed(barrel, 1)} mm barrel,"
        " over its full depth"
    )
    body = body_side(question.body, knowledge.catalogue)
    if not isinstance(body, Missing) and is_known(body.mount.throat_mm):
        wall = (body.mount.throat_mm.nominal - bore.nominal) / 2
        text += f"; the throat of {trimmed(body.mount.throat_mm.nominal, 1)} mm leaves a wall of {trimmed(wall, 1)} mm"
    return Told((Line("head", f"{text}."),), (Quantity("bore_mm", bore),))
