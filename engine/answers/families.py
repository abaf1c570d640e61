"""Which module answers a kind of question; each is loaded only when it is asked."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from importlib import import_module
from typing import Final

from engine.answers.beside import BESIDE
from engine.answers.beside_heard import Beside
from engine.answers.beside_pictures import SEEN
from engine.answers.beside_reach import REACHED
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from grammar.kinds import (
    CHAIN,
    COVERAGE,
    CROP_EQUIVALENT,
    DEPTH_OF_FIELD,
    DRAW,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    MACRO_DISTANCE,
)
from grammar.questions import CLOSE_UP_LENS, Question

Handler = Callable[[Question, Knowledge], Answer]


# kinds of question that go by focal length and stop, which the gear file tells of one's own lenses
BY_FOCAL = (MACRO_DISTANCE, EXPOSURE_ND, CROP_EQUIVALENT, DEPTH_OF_FIELD, COVERAGE, GEAR_SETTING)

BY_GLASS = (COVERAGE, DEPTH_OF_FIELD)  # kinds whose numbers go by the glass between
FORWARD = (CHAIN, FOCUS_VERDICT, DRAW)  # kinds that go by a lens as it is made to be mounted
TURNED = "reversed"  # the trait of a lens that is not

# the function that answers a kind of question, with its module in this room
_ANSWERED_BY: Final = {
    "all-on-all": "own.all_on_all.all_on_all",
    "buy-plan": "priced_pieces.priced_or_planned",
    "card": "card.best_cards",
    "chain": "howto.how_to",
    "compare": "compare.compare",
    "coverage": "picture.cover.cover",
    "crop-equivalent": "picture.equivalent.equivalent",
    "definition": "words.lookup.definition",
    "depth-of-field": "sharp.sharpness",
    "diy-dimension": "ring_to_cut.to_make",
    "draw": "pictures.draw",
    "exposure-nd": "light.exposed",
    "focus-verdict": "howto.how_to",
    "gear-setting": "settings.setting",
    "hazard": "advising.advise",
    "identify-mount": "identify.identify",
    "list-fits": "ways.fits.list_fits",
    "look-alike": "found.lookalike.look_alike",
    "macro-distance": "closeup.macro",
    "shim-calibration": "calibrate.calibrated",
    "which-own": "own.which_own.which_own",
    "why": "advising.advise",
}


def handler_for(intent: str) -> Handler:
    """The module that answers a kind of question; each is loaded only when it is asked."""
    handler = _with_own_facts(_handler(intent)) if intent in BY_FOCAL else _handler(intent)
    handler = _unless_turned(handler) if intent in FORWARD else handler
    handler = _unless_worn(handler) if intent == FOCUS_VERDICT else handler
    handler = _behind_either(handler) if intent in BY_GLASS else handler
    beside = [add for kinds, add in (*BESIDE, *SEEN, *REACHED) if intent in kinds]
    return _with(handler, beside) if beside else handler


def _with(handler: Handler, beside: Sequence[Beside]) -> Handler:
    """The handler, with what goes beside its answer."""

    def asked(question: Question, knowledge: Knowledge) -> Answer:
        answer = handler(question, knowledge)
        for add in beside:
            answer = add(answer, question, knowledge)
        return answer

    return asked


def _unless_turned(handler: Handler) -> Handler:
    """The handler, but for a lens turned round."""

    def asked(question: Question, knowledge: Knowledge) -> Answer:
        if not any(TURNED in (*lens.traits, lens.lens_kind or "") for lens in question.lenses):
            return handler(question, knowledge)
        from engine.answers.turned_answer import turned

        return turned(question, knowledge)

    return asked


def _unless_worn(handler: Handler) -> Handler:
    """The handler, but for a lens that wears a close-up lens."""

    def asked(question: Question, knowledge: Knowledge) -> Answer:
        if not any(one.piece == CLOSE_UP_LENS and one.factor for one in question.adapters):
            return handler(question, knowledge)
        from engine.answers.worn_far import power_worn, worn_far

        return worn_far(question, knowledge, power_worn(question) or 1.0)

    return asked


def _behind_either(handler: Handler) -> Handler:
    """The handler, asked for each of two kinds of glass to choose from by itself."""

    def asked(question: Question, knowledge: Knowledge) -> Answer:
        from engine.answers.picture.each_glass import joined, of_each

        either = of_each(question)
        answers = [handler(one, knowledge) for one in either]
        return joined(question, either, answers) if answers else handler(question, knowledge)

    return asked


def _with_own_facts(handler: Handler) -> Handler:
    """The handler, asked with what the gear file knows of one's own lenses; the question is remembered as it was."""

    def asked(question: Question, knowledge: Knowledge) -> Answer:
        from engine.answers.parts.owned import with_own_facts
        from engine.base.compact import replace

        return replace(handler(with_own_facts(question, knowledge.catalogue), knowledge), question=question)

    return asked


def _handler(intent: str) -> Handler:
    module, _, name = _ANSWERED_BY.get(intent, "").rpartition(".")
    if not module:
        from engine.answers import plain_talk

        return plain_talk.HANDLERS.get(intent, plain_talk.not_yet)
    handler: Handler = getattr(import_module(f"engine.answers.{module}"), name)
    return handler
