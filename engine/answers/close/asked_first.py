"""What is asked for in so many words of a picture close up, before the rows: its width, how far off the lens it is."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from engine.answers.close.close_picture import shown_by
from engine.answers.close.tube_sets import tubes_told
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import focals, mentions, number
from engine.answers.parts.wording import area, distance, trimmed
from engine.answers.picture.filling import motif_told
from engine.answers.picture.frames import USUAL_FRAMES
from engine.base.compact import replace
from engine.base.interval import Interval
from engine.base.units import MM_PER_METRE
from grammar.numbers.motifs import FIELD
from grammar.questions import Question

_NEAR_SIDE: Final = 0.03  # share by which a side is that of a format
_HOST: Final = "mirrorless"  # kind of the mounts whose sensors may be the one


def with_asked_first(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind those of its numbers that are asked for."""
    rows = answer.quantities or ()
    if motif_told(question, knowledge.catalogue) is not None:
        return answer  # what fills the frame is known, and told with it
    told = _field(question, rows, knowledge) + _from_lens(question, rows)
    if not told.lines:
        return answer
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=(*told.quantities, *rows))


def _field(question: Question, rows: Sequence[Quantity], knowledge: Knowledge) -> Told:
    """'how wide is the thing in the frame': the field at the first setting told."""
    form = shown_by(question, knowledge).form
    wide, high = _first(rows, "field_width_mm"), _first(rows, "field_height_mm")
    if form is None or wide is None or high is None or not mentions(question, "field-asked"):
        return Told()
    size = area(wide.value.nominal, high.value.nominal, question.feet)
    return Told((Line("head", f"What fills {form.name} is {size}{_with(wide.case)}."),))


def _from_lens(question: Question, rows: Sequence[Quantity]) -> Told:
    """'and how far from the lens': the subject before the front principal plane, u = f + f x f / x."""
    away, whole = _first(rows, "from_front_principal_mm"), _first(rows, "focus_from_sensor_mm")
    if away is None or whole is None or not mentions(question, "from-lens-asked"):
        return Told()
    text = (
        f"{_exact(whole, question)} from the sensor, {_exact(away, question)} from the lens (its front principal plane)"
    )
    return Told((Line("head", f"{text}{_with(away.case)}."),))


def sensor_told(question: Question, knowledge: Knowledge) -> Told:
    """'68 mm of tube behind a 100 shows 53 mm, what sensor is it': m = x / f times what is seen is a side of it."""
    seen, lenses, tubes = number(question, FIELD), focals(question), list(tubes_told(question, knowledge))
    framed = shown_by(question, knowledge).form is not None
    if seen is None or framed or len(lenses) != 1 or not tubes or not mentions(question, "sensor-wanted"):
        return Told()
    m = sum(tubes) / lenses[0]
    side = m * seen
    facts = knowledge.catalogue
    hosts = (mount for mount in facts.mounts.values() if mount.kind == _HOST)
    forms = dict.fromkeys([*USUAL_FRAMES, *(name for mount in hosts for name in mount.formats)])
    alike = [facts.formats[name].name for name in forms if abs(facts.formats[name].width_mm / side - 1) <= _NEAR_SIDE]
    text = f"{trimmed(sum(tubes), 2)} mm behind {trimmed(lenses[0], 1)} mm is {trimmed(m, 3)}x: "
    text += f"{trimmed(seen, 1)} mm is {trimmed(side, 1)} mm on the sensor"
    text += f", as wide as {' or '.join(alike)}" if alike else ", no usual width"
    rows = (Quantity("magnification", Interval.exact(m)), Quantity("image_size_mm", Interval.exact(side)))
    return Told((Line("head", f"{text}."),), rows)


def _first(rows: Sequence[Quantity], name: str) -> Quantity | None:
    return next((row for row in rows if row.name == name), None)


def _with(case: str | None) -> str:
    return f", with {case} of extension" if case and case.endswith("mm") and "," not in case else ""


def _exact(row: Quantity, question: Question) -> str:
    size = row.value.nominal
    return distance(size, question.feet) if question.feet or size >= MM_PER_METRE else f"{size:.0f} mm"
