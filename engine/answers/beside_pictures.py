"""What is added where something seen in the picture is told; each is loaded only then."""

from __future__ import annotations

from typing import Final

from engine.answers.beside_heard import Beside, heard, named
from engine.answers.parts.answer import Answer
from engine.answers.parts.knowledge import Knowledge
from grammar.kinds import CHAIN, COMPARE, COVERAGE, CROP_EQUIVALENT, EXPOSURE_ND, FOCUS_VERDICT, MACRO_DISTANCE, WHY
from grammar.questions import Question

_TWO: Final = 2
# between which circles it lies that one shape of the picture has dark corners and another none, before the answer
_dark_in_one: Final = named("picture.dark_in_one", "with_circle_between")
# which kind of filter to buy, behind the stops to hold back
_kinds_of_filter: Final = named("exposure.filter_bought", "with_kinds_of_filter")
# how much more light one frame gathers in all than another, before the answer
_light_of_frames: Final = named("picture.light_of_frames", "with_light_of_frames")
# what a converter does that is screwed before the lens, in place of the answer
_converter_before: Final = named("picture.front_converter", "with_converter_before")

# that a lens which comes sharp nowhere may be of the other mount of its thread, before the answer
_twin: Final = named("seat.all_blur", "with_twin_suspected")


def _by_stop(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """How much more light the faster of two lenses lets in, before the answer; loaded only where two have stops."""
    if sum(lens.f_number is not None for lens in question.lenses) < _TWO:
        return answer
    add: Beside = named("picture.lenses_by_stop", "with_lenses_by_stop")()
    return add(answer, question, knowledge)


SEEN: Final[tuple[tuple[tuple[str, ...], Beside], ...]] = (
    ((EXPOSURE_ND, CROP_EQUIVALENT, COVERAGE, WHY, COMPARE), heard(_light_of_frames, "light-in-all")),
    ((CROP_EQUIVALENT, EXPOSURE_ND, MACRO_DISTANCE), heard(_converter_before, "converter-before")),
    ((COMPARE,), _by_stop), ((CHAIN, FOCUS_VERDICT), heard(_twin, "all-blurred")),
    ((COVERAGE, WHY), heard(_dark_in_one, "clean-in-one")), ((EXPOSURE_ND,), heard(_kinds_of_filter, "bought")),
)  # fmt: skip
