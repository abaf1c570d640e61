"""Where a lens on a draw is sharp at the ends of that draw, by lengths alone: x = seat - seat for infinity, D by the
focus model."""

from __future__ import annotations

from engine.answers.close.close_picture import shown_by
from engine.answers.close.close_rows import assumed_note, at_extension
from engine.answers.parts.answer import Answer, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import right_seat_mm
from engine.answers.parts.said import focals
from engine.answers.parts.wording import small_mm
from engine.answers.seat.chain_numbers import FULLY_OUT
from engine.answers.seat.distances import distances_of, moves_in_part
from engine.base.compact import replace
from engine.base.interval import Interval
from grammar.questions import Question


def ends_told(ends_mm: tuple[float, float], piece: str, question: Question, knowledge: Knowledge) -> Told:
    """What is sharp with the draw fully out, and shut, where it then lies so far (mm) beyond infinity.

    Nothing where the focal length is not told, or where the lens moves only a part of itself.
    """
    lens, named = question.lens, focals(question)
    if lens is None or not named or moves_in_part(lens, knowledge.catalogue):
        return Told()
    distances = distances_of(replace(lens, focal_length_mm=named[0]), knowledge.catalogue)
    (shut, out), near = ends_mm, right_seat_mm(knowledge.catalogue)
    if distances is None or out <= near:
        return Told()
    shown, told = shown_by(question, knowledge), Told()
    own = "" if lens.lens_kind else ", the lens itself at infinity"
    for off, case, end in ((out, FULLY_OUT, "near"), (shut, f"{piece} shut", "far")):
        if off > near:
            lead = f"{piece} {'fully out' if end == 'near' else 'shut'}{own}, {small_mm(off)} beyond infinity"
            told += at_extension(distances, round(off, 4), shown, case, end=end, lead=lead)
    return told + assumed_note(distances)


def is_told_already(answer: Answer, out_mm: float, knowledge: Knowledge) -> bool:
    """Whether the way that the answer lists first tells its near end, and so that of the draw as it was told."""
    first = answer.chains[0].listed.judged if answer.chains else None
    if first is None:
        return False
    near, error = first.trace.value("near_from_sensor_mm"), first.trace.value("register_error_mm")
    longest = getattr(error, "longest", None)
    if not (isinstance(near, Interval) and isinstance(longest, Interval)):
        return False
    return abs(longest.nominal - out_mm) < right_seat_mm(knowledge.catalogue)
