"""Which module answers a kind of question; each is loaded only when it is asked."""

from __future__ import annotations

from collections.abc import Callable, Sequence

from engine.answers.beside import BESIDE, Beside
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from grammar.questions import Question

Handler = Callable[[Question, Knowledge], Answer]


# kinds of question that go by focal length and stop, which the gear file tells of one's own lenses
BY_FOCAL = ("macro-distance", "exposure-nd", "crop-equivalent", "depth-of-field", "coverage", "gear-setting")

FORWARD = ("chain", "focus-verdict", "draw")  # kinds that go by a lens as it is made to be mounted
TURNED = "reversed"  # the trait of a lens that is not


def handler_for(intent: str) -> Handler:
    """The module that answers a kind of question; each is loaded only when it is asked."""
    handler = _with_own_facts(_handler(intent)) if intent in BY_FOCAL else _handler(intent)
    handler = _unless_turned(handler) if intent in FORWARD else handler
    beside = [add for kinds, add in BESIDE if intent in kinds]
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


def _with_own_facts(handler: Handler) -> Handler:
    """The handler, asked with what the gear file knows of one's own lenses; the question is remembered as it was."""

    def asked(question: Question, knowledge: Knowledge) -> Answer:
        from engine.answers.parts.owned import with_own_facts
        from engine.base.compact import replace

        return replace(handler(with_own_facts(question, knowledge.catalogue), knowledge), question=question)

    return asked


def _handler(intent: str) -> Handler:
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
        from engine.answers.picture.equivalent import equivalent

        return equivalent
    if intent == "depth-of-field":
        from engine.answers.sharp import sharpness

        return sharpness
    if intent == "look-alike":
        from engine.answers.found.lookalike import look_alike

        return look_alike
    if intent == "definition":
        from engine.answers.words.lookup import definition

        return definition
    if intent == "list-fits":
        from engine.answers.ways.fits import list_fits

        return list_fits
    if intent == "coverage":
        from engine.answers.picture.cover import cover

        return cover
    if intent == "draw":
        from engine.answers.pictures import draw

        return draw
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
    if intent == "which-own":
        from engine.answers.own.which_own import which_own

        return which_own
    if intent == "all-on-all":
        from engine.answers.own.all_on_all import all_on_all

        return all_on_all
    if intent == "card":
        from engine.answers.card import best_cards

        return best_cards
    if intent in ("hazard", "why"):
        from engine.answers.advising import advise

        return advise
    from engine.answers import plain_talk

    return plain_talk.HANDLERS.get(intent, plain_talk.not_yet)
