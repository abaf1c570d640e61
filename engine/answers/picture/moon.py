"""How large the moon is on the sensor: its image is as wide as the focal length times the tangent of its angle."""

from __future__ import annotations

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals
from engine.answers.parts.wording import figures, small_mm, trimmed
from engine.answers.picture.circles import glass_factor
from engine.answers.picture.frames import frames_of
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics import coverage
from grammar.kinds import OF_FRAMES
from grammar.questions import Question

MOST_FRAMES = 2


def with_moon(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind it, for each focal length told; as it is where none is told."""
    facts = knowledge.catalogue
    angle, factor = facts.assumptions["moon-degrees"].value, glass_factor(question, facts) or 1.0
    lines: list[Line] = []
    rows: list[Quantity] = []
    for focal in focals(question):
        wide = coverage.image_of_angle_mm(Interval.exact(focal * factor), angle)
        if not is_known(wide):
            continue
        by = f"{trimmed(focal, 1)} mm" + (f" with {trimmed(factor, 2)}x" if factor != 1.0 else "")
        rows.append(Quantity("image_size_mm", wide, by))
        least, most = small_mm(wide.least).removesuffix(" mm"), small_mm(wide.greatest)
        lines.append(
            Line("head", f"{by}: the moon is {least} to {most} wide on the sensor, as it is farther or nearer.")
        )
        for form in frames_of(question, facts)[:MOST_FRAMES]:
            share = wide.nominal / form.height_mm
            text = (
                f"{figures(100 * share, 2)} % of the height of {form.name}"
                if share < 1
                else f"more than {form.name} is high"
            )
            lines.append(Line("fact", text, 1))
    if not lines:
        return answer
    rest = () if answer.intent in OF_FRAMES else answer.lines  # whether it covers was not asked
    return replace(answer, status=ANSWERED, lines=(*lines, *rest), quantities=(*rows, *(answer.quantities or ())))
