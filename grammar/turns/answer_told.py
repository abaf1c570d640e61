"""What the answer before told in numbers, by quantity, and how near a number of the next turn must be to be one."""

from __future__ import annotations

from typing import Final

from grammar.questions import Question

VIEW: Final = "equivalent_focal_mm"
LACKING: Final = "ring_thickness_mm"  # the ring that is to be added
RIGHT: Final = "right ring"  # the ring that is right for the pair
SEAT: Final = "seat"  # the rings for the other lenses, bodies and chains of the answer
CIRCLE: Final = "image_circle_mm"  # both ends of it are told
FILTER_ON: Final = "filter on"  # stops that the filter holds back which was told to be taken
STACK: Final = "stack"  # how long the pieces at hand come to together, mm
GLASS: Final = "glass"  # the factor of the glass in the way that was told best
ERROR: Final = "register_error_mm"  # by how much it sits off
SHIFT: Final = "glass_shift_mm"  # how far glass moves the image
ERROR_IF_MEANT: Final = "register_error_mm, if so meant"  # by how much, where that is another meaning of the question
LIKENED: Final = "equivalent_f_number"  # the stop of the same depth on full frame
KEPT: Final = frozenset(
    [VIEW, LACKING, CIRCLE, ERROR, LIKENED, SHIFT]
)  # quantities of an answer that the next turn may say again
MADE_WITHIN_MM: Final = 0.6  # by which a ring at hand may differ from the right one
SOLD_WITHIN_MM: Final = 1.0  # from what is lacking to what is sold
MEASURED_WITHIN_MM: Final = 1.5  # by which a ring differs at most from what it was told to be


def told_as(question: Question, *names: str) -> list[float]:
    """The numbers that the answer to a question told of these quantities, in their order."""
    return [value for name, value in question.told if name in names]
