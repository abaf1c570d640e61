"""Whether a subject so far away is still within focus with tubes between: 'a 9 mm tube, heron at 10 m, in reach?'."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, number
from engine.answers.parts.wording import distance, small_mm, trimmed
from engine.answers.seat.described import TUBE
from engine.answers.seat.distances import distances_of, moves_in_part
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.chains.walk import ADDED_FOCUSING
from grammar.kinds import MACRO_DISTANCE
from grammar.questions import Question


def with_in_reach(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind yes or no: a subject nearer than the far end is, if the focus ring turns out so far.

    Far end from the sensor: 2f + HH' + f f/x + x, with x the length of the tubes.
    """
    away, extension = distance_mm(question), _extension(question)
    lenses = [one for one in question.lenses if one.focal_length_mm and not moves_in_part(one, knowledge.catalogue)]
    of_close = answer.intent == MACRO_DISTANCE or not any(one.ids for one in question.bodies)
    if away is None or extension is None or len(lenses) != 1 or not of_close:
        return answer
    lens = distances_of(lenses[0], knowledge.catalogue)
    far = lens.from_sensor(extension) if lens is not None else None
    needed = lens.extension_at(away) if lens is not None else None
    if far is None or needed is None or not (is_known(far) and is_known(needed)):
        return answer
    there, ends, feet = distance(away, question.feet), distance(far.nominal, question.feet), question.feet
    focal = f"{trimmed(lenses[0].focal_length_mm or 0.0, 1)} mm"
    more = round(needed.nominal - extension, 3)
    if more >= 0:
        just = "just " if away > far.least else ""
        text = (
            f"Yes, {there} is {just}in reach: with {trimmed(extension, 2)} mm of tube the {focal} is sharp up to {ends}"
        )
        text += f" from the sensor, and for {there} its focus ring turns {small_mm(more)} out; farther off nothing is."
    else:
        text = (
            f"No, {there} is out of reach: with {trimmed(extension, 2)} mm of tube the {focal} stops at {ends} from the"
        )
        text += f" sensor. For {there} no more than {small_mm(needed.nominal)} may stand between."
    rows = (Quantity("far_from_sensor_mm", far, focal), Quantity("extension_mm", needed, distance(away, feet)))
    return replace(
        answer, lines=(Line("head", text), *answer.lines), quantities=(*rows, *(answer.quantities or ())),
    )  # fmt: skip


def _extension(question: Question) -> float | None:
    """How much stands between in tubes of one length, or is told as such, mm."""
    drawn = (one.thickness_mm for one in question.adapters if one.piece in (TUBE, *ADDED_FOCUSING))
    tubes = [size[0] for size in drawn if size is not None and size[0] == size[1]]
    return sum(tubes) if tubes else number(question, "extension")
