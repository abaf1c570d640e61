"""How far a lens has moved out by its own focusing at a mark of its scale: 'how far out is a 50 at 0.5 m'."""

from __future__ import annotations

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import distance_mm, focals, mentions, number
from engine.answers.parts.wording import about, article, distance, small_mm, times, trimmed
from engine.answers.seat.distances import distances_of
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.physics import focus
from grammar.questions import Question


def _from_lens(focal: float, away: float) -> str:
    """The move where the distance is counted from the lens, x = f x f / (u - f)."""
    return f" ({small_mm(focal * focal / (away - focal))} if from the lens)" if away > focal else ""


def with_move_at_mark(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """Before the answer: x of the mark, by the square-root form, as of a lens that focuses as a whole."""
    mark = number(question, "mark", "close_focus", "native")
    mark = mark if mark is not None else distance_mm(question)
    lenses = focals(question)
    lens = distances_of(question.lens, knowledge.catalogue) if question.lens is not None else None
    if mark is None or lens is None or len(lenses) != 1:
        return answer
    moved = focus.travel_to_mark_mm(Interval.exact(mark), lens.focal, Interval.exact(0.0))
    size = focus.magnification(lens.focal, moved)
    if not (is_known(moved) and is_known(size)):
        return answer
    at, name = distance(mark, question.feet), f"{trimmed(lenses[0], 1)} mm"
    text = (
        f"At its {at} mark {article(name)} {name} lens stands {small_mm(moved.nominal)} farther out than at infinity,"
        f" {about(size, times)}: of one that focuses as a whole, marks counted from the sensor."
    )
    rows = (Quantity("extension_mm", moved, f"{name}, {at}"), Quantity("magnification", size, f"{name}, {at}"))
    if mentions(question, "span-to-near"):
        text = (
            f"From infinity to {at} {article(name)} {name} lens moves {small_mm(moved.nominal)}, {about(size, times)}"
        )
        text += f", {at} counted from the sensor{_from_lens(lenses[0], mark)}; one that focuses as a whole."
    return replace(answer, lines=(Line("head", text), *answer.lines), quantities=(*rows, *(answer.quantities or ())))
