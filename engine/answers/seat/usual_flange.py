"""How far behind its flange a lens without a register usually forms its image, where that is asked."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import article, trimmed
from engine.answers.seat.open_lens import usual_flange_to_image
from engine.base.compact import replace
from grammar.questions import Question


def with_usual_flange(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind that distance, by the kind and the focal length of the lens, where no body is named."""
    lens = question.lens
    if lens is None or question.bodies or question.said("flange_to_image") is not None:
        return answer
    usual = usual_flange_to_image(lens, knowledge)
    if usual is None or lens.focal_length_mm is None:
        return answer
    kind = f" {lens.lens_kind}" if lens.lens_kind else ""
    name = f"{trimmed(lens.focal_length_mm, 1)} mm{kind}"
    text = (
        f"{article(name).capitalize()} {name} lens usually forms the far picture {usual.least:.0f} to "
        f"{usual.greatest:.0f} mm behind its flange. Each has its own: throw a far window on paper and measure."
    )
    rows = (Quantity("register_mm", usual, "usual"), *(answer.quantities or ()))
    return replace(answer, lines=(Line("head", text), *answer.lines), quantities=rows)
