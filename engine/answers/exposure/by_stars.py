"""How long stars may be exposed before they trail, by the blur that a frame allows; what is not computed beside it."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions
from engine.answers.parts.wording import figures, trimmed
from engine.answers.picture.frames import FULL, frames_named
from engine.base.interval import Interval, is_known
from engine.facts.records import Format
from engine.physics import coverage, flash_and_stars, focus
from grammar.questions import Question

STARS: Final = "star-trails"
_SKY: Final = "starry-sky"  # the light of it
RULE: Final = "stars-rule-of-thumb"  # the assumption that holds it
REST: Final = (
    "Towards the pole of the sky they drift slower; looked at pixel by pixel the drift shows sooner. How long a whole "
    "trail must be exposed is not computed."
)
ASKED: Final = "How long hangs on the focal length, and on the frame: which lens, on which sensor?"


def by_stars(question: Question, knowledge: Knowledge) -> Told:
    """Nothing where stars that trail are not spoken of, and no shutter is asked for under them."""
    lit = question.said("light") == _SKY and question.said("shutter") is None
    if not (lit or mentions(question, STARS)):
        return Told()
    lenses = focals(question)
    if not lenses:
        return Told((Line("ask", ASKED),))
    facts = knowledge.catalogue
    named = frames_named(question, facts)
    told = Told()
    for focal in lenses:
        for form in named or [facts.formats[FULL]]:
            told += _of(focal, form, "" if named else " (assumed)", knowledge)
    return told + Told((Line("text", REST),))


def _of(focal: float, form: Format, assumed: str, knowledge: Knowledge) -> Told:
    width, height = Interval.exact(form.width_mm), Interval.exact(form.height_mm)
    blur = focus.allowed_blur_mm(width, height, knowledge.catalogue.assumptions["blur-divisor"].value)
    time = flash_and_stars.longest_for_stars_s(Interval.exact(focal), blur)
    if not (is_known(time) and is_known(blur)):
        return Told()
    crop = coverage.FULL_FRAME_DIAGONAL_MM / form.diagonal_mm
    over = knowledge.catalogue.assumptions[RULE].value.nominal
    rule = over / (focal * crop)
    name = f"{trimmed(focal, 1)} mm on {form.name}{assumed}"
    text = (
        f"{figures(time.nominal, 2)} s at most for {name}: then a star has drifted {trimmed(blur.nominal, 3)} mm, what "
        f"counts as sharp. The {over:.0f} rule says {figures(rule, 2)} s."
    )
    rows = (
        Quantity("shutter_s", time, f"stars, {name}"),
        Quantity("shutter_s", Interval.exact(rule), f"{over:.0f} rule, {name}"),
    )
    return Told((Line("head", text),), rows)
