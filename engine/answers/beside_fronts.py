"""What is added where front threads, filters and step rings are spoken of; each is loaded only then."""

from __future__ import annotations

from engine.answers.beside_heard import Beside
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from grammar.questions import Question

# kinds that wording about front threads may be taken for
ELSE_OF_FRONTS = (
    "look-alike", "list-fits", "identify-mount", "compare", "diy-dimension", "shim-calibration", "hazard", "chain",
    "focus-verdict", "why", "definition", "macro-distance",
)  # fmt: skip
# and kinds that ask of fronts themselves, or of the light, where one front alone is told
OF_ONE_FRONT = ("buy-plan", "exposure-nd", "coverage", "crop-equivalent", "depth-of-field", "gear-setting")


def fronts(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Front threads of several lenses ask for step rings, whatever else the words lean to."""
    if question.said("filter_thread") is None and not any(thing.steps for thing in question.adapters):
        return answer
    from engine.answers.picture.filters import filter_answer, for_filters

    return filter_answer(question, knowledge) if for_filters(question, knowledge.catalogue) else answer


def front_asked() -> Beside:
    """Which filter a lens takes, in place of the answer."""
    from engine.answers.picture.front_asked import with_front_told

    return with_front_told


def takers() -> Beside:
    """Which lenses a filter goes on, in place of the answer."""
    from engine.answers.picture.front_sizes import with_takers

    return with_takers
