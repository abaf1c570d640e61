"""A bellows draw told of an exposure: 'at 160 mm of draw' behind a 100 mm lens is how far the lens is from the film."""

from __future__ import annotations

import re
from typing import Final

from grammar.kinds import EXPOSURE_ND
from grammar.questions import Question

_DRAW: Final = "bellows-draw"  # what a question mentions that tells of a draw
_EXTENSION, _IMAGE = "extension", "image_distance"
_MM: Final = re.compile(r"\d+(?:\.\d+)?")


def with_image_by_draw(question: Question, before: Question | None) -> Question:
    """The question with a draw longer than the lens as the distance from lens to image, where no body is told.

    So it is of an exposure, and wherever that distance was told before; elsewhere a draw is what is put between.
    """
    told, lens = _MM.match(question.said(_EXTENSION) or ""), question.lens
    filmed = question.intent == EXPOSURE_ND or (before is not None and before.said(_IMAGE) is not None)
    if told is None or lens is None or not lens.focal_length_mm or question.bodies or not filmed:
        return question
    if not question.mentions(_DRAW) or float(told[0]) <= lens.focal_length_mm:
        return question
    rest = tuple(row for row in question.values if row[0] not in (_EXTENSION, _IMAGE))
    return question.with_(values=(*rest, (_IMAGE, question.said(_EXTENSION) or "")))
