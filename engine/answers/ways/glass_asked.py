"""Whether a lens needs glass to get on a body, first of all where that is asked."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm
from engine.base.compact import replace
from grammar.questions import Question


def with_glass_asked(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind a yes or no to glass, where it is of one lens on one body and a way is known."""
    if not answer.chains or answer.ring is None or answer.ring.thickness_mm is None:
        return answer
    if any(thing.factor for thing in question.adapters):
        return answer  # a reducer or extender is asked about, which has glass for another reason
    room, best = answer.ring.thickness_mm.nominal, answer.chains[0].listed.judged
    glass = any(adapter.has_glass for adapter in best.chain.adapters)
    if room < 0 and (glass or best.verdict != "infinity"):
        # who asks for a way without glass is not told yes
        yes = "No, not to infinity" if question.limits.without_glass else "Yes, for infinity"
        text = f"{yes}: without glass the lens is {small_mm(-room)} or more too far out, so close-up only."
    elif best.verdict == "infinity" or glass:
        by = small_mm(abs(room))
        how = (
            f"longer by {by}, which a plain ring makes up" if room >= 0 else f"shorter by {by}, by which a cup is sunk"
        )
        yes = "Yes" if question.limits.without_glass else "No"
        text = f"{yes}, no glass is needed for infinity: the lens register is {how}."
    else:
        return answer
    return replace(answer, lines=(Line("head", text), *answer.lines))
