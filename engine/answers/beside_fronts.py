"""What is added where front threads, filters and step rings are spoken of; each is loaded only then."""

from __future__ import annotations

from engine.answers.beside_heard import Beside
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from grammar.kinds import (
    BUY_PLAN,
    CHAIN,
    COMPARE,
    COVERAGE,
    CROP_EQUIVALENT,
    DEFINITION,
    DEPTH_OF_FIELD,
    DIY_DIMENSION,
    EXPOSURE_ND,
    FOCUS_VERDICT,
    GEAR_SETTING,
    HAZARD,
    IDENTIFY_MOUNT,
    LIST_FITS,
    LOOK_ALIKE,
    MACRO_DISTANCE,
    SHIM_CALIBRATION,
    WHY,
)
from grammar.questions import Question

# kinds that wording about front threads may be taken for
ELSE_OF_FRONTS = (
    LOOK_ALIKE, LIST_FITS, IDENTIFY_MOUNT, COMPARE, DIY_DIMENSION, SHIM_CALIBRATION, HAZARD, CHAIN,
    FOCUS_VERDICT, WHY, DEFINITION, MACRO_DISTANCE,
)  # fmt: skip
# and kinds that ask of fronts themselves, or of the light, where one front alone is told
OF_ONE_FRONT = (BUY_PLAN, EXPOSURE_ND, COVERAGE, CROP_EQUIVALENT, DEPTH_OF_FIELD, GEAR_SETTING)


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
