"""Which module answers a kind of question; each is loaded only when it is asked."""

from __future__ import annotations

from collections.abc import Callable

from engine.answers.answer import Answer
from engine.answers.knowledge import Knowledge
from grammar.questions import Question

Handler = Callable[[Question, Knowledge], Answer]


def handler_for(intent: str) -> Handler:
    """The module that answers a kind of question; each is loaded only when it is asked."""
    if intent in ("chain", "focus-verdict"):
        from engine.answers.howto import how_to

        return how_to
    if intent == "macro-distance":
        from engine.answers.closeup import macro

        return macro
    if intent == "exposure-nd":
        from engine.answers.light import exposed

        return exposed
    if intent == "crop-equivalent":
        from engine.answers.equivalent import equivalent

        return equivalent
    if intent == "depth-of-field":
        from engine.answers.sharp import sharpness

        return sharpness
    if intent == "look-alike":
        from engine.answers.lookalike import look_alike

        return look_alike
    if intent == "definition":
        from engine.answers.lookup import definition

        return definition
    if intent == "list-fits":
        from engine.answers.fits import list_fits

        return list_fits
    if intent == "coverage":
        from engine.answers.cover import cover

        return cover
    if intent == "shim-calibration":
        from engine.answers.calibrate import calibrated

        return calibrated
    if intent == "buy-plan":
        from engine.answers.buying import plan

        return plan
    if intent == "compare":
        from engine.answers.compare import compare

        return compare
    if intent == "identify-mount":
        from engine.answers.identify import identify

        return identify
    if intent == "diy-dimension":
        from engine.answers.ring_to_cut import to_make

        return to_make
    if intent == "gear-setting":
        from engine.answers.settings import setting

        return setting
    if intent == "card":
        from engine.answers.card import best_cards

        return best_cards
    if intent in ("hazard", "why"):
        from engine.answers.advising import advise

        return advise
    from engine.answers import plain_talk

    return plain_talk.HANDLERS.get(intent, plain_talk.not_yet)
