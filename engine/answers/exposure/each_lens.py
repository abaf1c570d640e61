"""The density for every further lens that is told with a stop of its own: 'nd for both' of an f/1.8 and an f/1.4."""

from __future__ import annotations

from engine.answers.exposure.holding_back import held_back
from engine.answers.exposure.lighting import light_of
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.base.compact import replace
from engine.base.interval import is_known
from grammar.questions import Question


def others_held_back(question: Question, knowledge: Knowledge) -> Told:
    """What is to be held back before each lens after the first, wide open, where no stop is set for all of them."""
    first, told = question.lens, Told()
    if first is None or question.f_number is not None:
        return told
    shown = {first.f_number}
    for lens in question.lenses[1:]:
        light = light_of(question.with_(lenses=(lens,)), knowledge)
        if lens.f_number in shown or lens.f_number is None or light.counted is None or not is_known(light.shutter):
            continue
        shown.add(lens.f_number)
        held = held_back(light, question.with_(lenses=(lens,)), knowledge)
        case = f"{lens.focal_length_mm:g} mm" if lens.focal_length_mm else f"f/{lens.f_number:g}"
        told += Told(_brief(held.lines, case), tuple(replace(row, case=row.case or case) for row in held.quantities))
    return told


def _brief(lines: tuple[Line, ...], case: str) -> tuple[Line, ...]:
    """Headed by the lens that it is told of, without the cautions, which were told with the first."""
    told = (line for line in lines if line.kind not in ("caution", "danger", "note"))
    return tuple(replace(line, text=f"{case}: {line.text}") if line.kind == "head" else line for line in told)
