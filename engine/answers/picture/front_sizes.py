"""Which lenses a filter of a size screws into: no mount tells that, their fronts do; others by a step-up ring."""

from __future__ import annotations

from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed, trimmed
from engine.answers.picture.filters import STEP, sizes_mm
from engine.base.interval import Interval, is_known
from grammar.questions import Question


def with_takers(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of the answer: the own lenses with such a front, and from which fronts one ring leads to the filter."""
    facts = knowledge.catalogue
    sizes = sizes_mm(facts)
    size = next((sizes[thing.id] for thing in (*question.bodies, *question.lenses) if thing.id in sizes), None)
    if size is None:
        return answer
    name = f"{trimmed(size, 1)} mm"
    text = (
        f"A {name} filter screws into every lens with a {name} front thread, whatever its mount; the rim, the cap or "
        "the old filter carries the number, mostly behind a \u00f8. No mount tells it: lenses of one mount have many."
    )
    lines = [Line("head", text)]
    own = [
        lens.name for lens in facts.lenses.values()
        if lens.front_thread and is_known(major := facts.threads[lens.front_thread].major_mm) and major.nominal == size
    ]  # fmt: skip
    if own:
        lines.append(Line("text", f"Of yours: {listed(own)}."))
    rings = [row for row in facts.adapters.values() if row.kind == STEP and sizes.get(row.front) == size]
    fronts = sorted({sizes[row.rear] for row in rings if sizes.get(row.rear, size) < size})
    if fronts:
        shown = listed([trimmed(front, 1) for front in fronts])
        lines.append(Line("text", f"One step-up ring brings it before fronts of {shown} mm as well."))
    rows = tuple(Quantity("thread_diameter_mm", Interval.exact(front), "front, by a step-up ring") for front in fronts)
    rows = (Quantity("thread_diameter_mm", Interval.exact(size), "the filter's own"), *rows)
    return Answer(question.text, question.intent, ANSWERED, tuple(lines), question=question, quantities=rows)
