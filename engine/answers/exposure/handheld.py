"""The slowest shutter for a lens held by hand: one over the focal length that the frame makes of it."""

from __future__ import annotations

from engine.answers.exposure.lighting import seconds
from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.usual_glass import with_usual_factor
from engine.answers.parts.wording import trimmed
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.crop_factors import Crop, crops_of
from engine.base.interval import Interval
from grammar.questions import Question

FULL = Crop("full frame", 1.0)
RING = (
    "A ring without glass changes nothing of it; glass in it and the crop do. It is a rule of thumb: for every detail "
    "that the sensor holds halve the time."
)


def handheld(question: Question, knowledge: Knowledge) -> Told:
    """1/(f x factor of the glass x crop) for each frame; nothing where holding by hand is not spoken of.

    Stops that a stabiliser is said to make up lengthen it.
    """
    lenses = focals(question)
    if not lenses or not _is_by_hand(question):
        return Told()
    question, note = with_usual_factor(question, knowledge.catalogue)
    factor = glass_factor(question, knowledge.catalogue)
    crops = crops_of(question, knowledge) or [FULL]
    if not (question.bodies or question.things or question.said("crop") or question.said("area")):
        crops = [FULL, *(crop for crop in crops if crop.name != FULL.name)]
    made_up = (number(question, "stops") or 0.0) if mentions(question, "steadied") else 0.0
    told = Told()
    for focal in lenses:
        for crop in crops:
            like = focal * (factor or 1.0) * crop.by_diagonal
            time = 2**made_up / like
            made = f" x {factor:g}" if factor is not None else ""
            lens = f"{trimmed(focal, 1)} mm{made} on {crop.name}"
            text = f"{seconds(time)} or shorter by hand for {lens}: one over {like:.0f}"
            text += f", {trimmed(made_up, 1)} stops longer by the stabiliser" if made_up else ""
            row = Quantity("shutter_s", Interval.exact(time), f"by hand, {lens}")
            told += Told((Line("head", f"{text}."),), (row,))
    return told + Told((Line("text", RING),)) + note


def _is_by_hand(question: Question) -> bool:
    """Whether it is held by hand: by its own words, or by those of the turn before that it goes on with."""
    prior = question.prior
    if mentions(question, "hand-meter"):
        return False  # it is the meter that is in the hand
    scene = question.said("light") is not None or bool(question.places("nd-or-density"))
    went_on = question.follows and prior is not None and prior.intent == question.intent and not scene
    return mentions(question, "by-hand") or (went_on and prior is not None and mentions(prior, "by-hand"))
