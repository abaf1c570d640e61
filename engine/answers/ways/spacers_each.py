"""Where a lens stops with each of several spacers that are told to choose from, one at a time: x = its length."""

from __future__ import annotations

from engine.answers.close.close_picture import shown_by
from engine.answers.close.close_rows import assumed_note, at_extension
from engine.answers.parts.answer import Answer, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import small_mm
from engine.answers.seat.described import TUBE
from engine.answers.seat.distances import distances_of, moves_in_part
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.base.span import Span
from grammar.questions import Question

_LEAST = 2  # spacers; of one alone it is the answer itself
_SAME_MM = 0.01


def with_each_spacer(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The far end with each spacer first, where without them the lens sits right; the answer is of all together."""
    lengths = [one.thickness_mm[0] for one in question.adapters if one.piece == TUBE and one.thickness_mm is not None]
    lens, first = question.lens, answer.chains[0].listed.judged if answer.chains else None
    if len(lengths) < _LEAST or lens is None or first is None or moves_in_part(lens, knowledge.catalogue):
        return answer
    error, distances = first.measured_trace.value("register_error_mm"), distances_of(lens, knowledge.catalogue)
    if distances is None or not isinstance(error, Span) or not is_known(error.shortest) or len(question.lenses) > 1:
        return answer
    if abs(error.shortest.nominal - sum(lengths)) > _SAME_MM:
        return answer
    shown, told = shown_by(question, knowledge), Told()
    for length in lengths:
        case = f"{small_mm(length)} alone"
        told += at_extension(distances, length, shown, case, lead=f"with {case}, at the infinity mark", level=0)
    told += assumed_note(distances)
    lines, rows = (*told.lines, *answer.lines), (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=lines, quantities=rows)
