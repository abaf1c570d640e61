"""What the ring for the mount spoken of before does with a lens that turns out to be of another of the same thread."""

from __future__ import annotations

from typing import Final

from engine.answers.parts.answer import Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.resolve import LensSide, lens_side
from engine.answers.parts.said import focals
from engine.answers.parts.wording import article, distance, small_mm, trimmed
from engine.answers.seat.distances import Distances
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from grammar.questions import Question

LEAST_MM: Final = 0.1  # of a difference of registers that a lens shows
SAME_PITCH_MM: Final = 0.05  # 26 turns to the inch go some way into a pitch of 1 mm


def with_ring_of_before(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind where the lens ends in that ring; as it was where the two mounts do not screw alike."""
    pair = _mounts(question, knowledge)
    if pair is None or any(one.ids or one.front or one.thickness_mm for one in question.adapters):
        return answer
    old, new = pair
    if not (_screw_alike(old, new, knowledge) and is_known(old.register_mm) and is_known(new.register_mm)):
        return answer
    off = round(old.register_mm.nominal - new.register_mm.nominal, 4)
    if abs(off) < LEAST_MM:
        return answer
    rows = [Quantity("register_error_mm", Interval.exact(off), f"in a ring for {old.designation}")]
    name = f"{article(new.designation)} {new.designation} lens"
    text = f"In a ring for {old.designation} {name} sits {small_mm(abs(off))} too"
    text += " far out" if off > 0 else " close: sharp only as far as its own focusing makes that up"
    for focal in focals(question)[:1] if off > 0 else ():
        ends = Distances(focal, knowledge.catalogue).from_sensor(off)
        if is_known(ends):
            rows.append(Quantity("far_from_sensor_mm", ends, f"in a ring for {old.designation}"))
            lens = f"{article(f'{trimmed(focal, 1)} mm')} {trimmed(focal, 1)} mm lens"
            text += f": {lens} ends {distance(ends.nominal, question.feet)} from the sensor"
    lines = (Line("head", f"{text}. It wants one of its own."), *answer.lines)
    return replace(answer, lines=lines, quantities=(*rows, *(answer.quantities or ())))


def _screw_alike(old: Mount, new: Mount, knowledge: Knowledge) -> bool:
    """Whether one goes where the other does: by the same thread, or by one of its name and all but its pitch: M39."""
    if not (old.thread and new.thread) or old.thread == new.thread:
        return old.thread is not None and old.thread == new.thread
    if not any({old.id, new.id} <= set(row.mounts) for row in knowledge.catalogue.shared.values()):
        return False
    pitches = [knowledge.catalogue.threads[one].pitch_mm for one in (old.thread, new.thread)]
    apart = pitches[0] - pitches[1]
    return is_known(apart) and abs(apart.nominal) <= SAME_PITCH_MM


def _mounts(question: Question, knowledge: Knowledge) -> tuple[Mount, Mount] | None:
    """The mount of the one lens spoken of before, and that of the one now."""
    prior = question.prior
    if prior is None or not question.follows or len(prior.lenses) != 1 or len(question.lenses) != 1:
        return None
    old = lens_side(prior.lens, knowledge.catalogue)
    new = lens_side(question.lens, knowledge.catalogue)
    same = prior.bodies == question.bodies or not question.bodies
    if not same or not isinstance(old, LensSide) or not isinstance(new, LensSide) or old.mount.id == new.mount.id:
        return None
    return old.mount, new.mount
