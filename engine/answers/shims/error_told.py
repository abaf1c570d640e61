"""An error told by itself with the lens it is of: judged at the stop and on the frame told, before it is mended."""

from __future__ import annotations

from engine.answers.parts.answer import ListedChain, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, stop
from engine.answers.parts.wording import trimmed
from engine.answers.picture.frames import frames_judged
from engine.answers.seat.standin import as_listed, judged_alone
from engine.answers.shims.forgiving import forgiven, is_error
from engine.answers.shims.loose import off_by_mm
from engine.base.compact import compact
from grammar.questions import Question


@compact
class Judgement:
    """Whether the error matters, where that is asked, and the first lens with it as it is judged."""

    told: Told = Told()
    chains: tuple[ListedChain, ...] = ()


def error_judged(question: Question, knowledge: Knowledge) -> Judgement:
    """'0.02 too thick, 135 at f/4, do i care': what the depth of focus forgives; and the verdict on any error told."""
    told = forgiven(question, knowledge)
    off, at, named = off_by_mm(question), stop(question), focals(question)
    if off is None or not is_error(abs(off), knowledge) or not named:
        return Judgement(told)
    form = frames_judged(question, knowledge.catalogue)[0]
    judged = judged_alone(named[0], at, (("extension-tube", off, off),), form, knowledge)
    words = f"{trimmed(named[0], 1)} mm lens, {trimmed(abs(off), 3)} mm {'too far out' if off > 0 else 'too close'}"
    return Judgement(told, (as_listed(judged, words),))
