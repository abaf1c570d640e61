"""Whether infinity is there, asked beside what tells by how much a seat is off: the lens judged with that error."""

from __future__ import annotations

from engine.answers.parts.answer import Line, ListedChain, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, stop
from engine.answers.parts.wording import trimmed
from engine.answers.seat.spacing import USUAL_FORMAT
from engine.answers.seat.standin import as_listed, judged_alone
from engine.base.interval import Interval
from grammar.questions import Question

REACHED = "Infinity is there: it comes before the end of the focus ring, at a mark."


def said_first(question: Question, told: Told) -> Told:
    """'is that infinity': that it is, before what the shim is, where the seat is told to be too close."""
    (error,) = [row.value for row in told.quantities if row.name == "register_error_mm"][:1] or (None,)
    close = isinstance(error, Interval) and error.greatest < 0 and question.scale_pair is None
    return Told((Line("head", REACHED),)) if close and _asked(question) else Told()


def doubted(question: Question, told: Told, knowledge: Knowledge) -> tuple[ListedChain, ...]:
    """The one lens named on its own body with the error, in mm, that the answer has told; nothing where not asked."""
    lenses = focals(question)
    errors = [row.value for row in told.quantities if row.name == "register_error_mm"]
    if len(lenses) != 1 or len(errors) != 1 or not question.mentions("infinity-doubted"):
        return ()
    error = errors[0]
    if not isinstance(error, Interval):
        return ()
    form, pieces = knowledge.catalogue.formats[USUAL_FORMAT], (("extension-tube", error.nominal, error.nominal),)
    judged = judged_alone(lenses[0], stop(question), pieces, form, knowledge)
    way = "close" if error.nominal < 0 else "far out"
    return (as_listed(judged, f"a {trimmed(lenses[0], 1)} mm lens that sits too {way}"),)


def _asked(question: Question) -> bool:
    """'do i still get infinity', but not 'at which mark is it'."""
    return question.mentions("infinity-doubted") and not question.mentions("mark-asked")
