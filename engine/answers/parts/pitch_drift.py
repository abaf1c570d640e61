"""What a turn of the thread that is spoken of moves, and how far two of different pitch run apart over their turns."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number, pitch_mm
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.catalogue import Catalogue
from grammar.questions import Question

OTHER_PITCH = "other_pitch"  # key of the one that a thread is cut at in place of another
SAME_MM = 0.005  # pitches nearer than this are one
LONGEST_THREAD_MM = 12.0  # of a lens


def drift(question: Question, knowledge: Knowledge, *, of_two: bool = False) -> Told:
    """How far a thread cut at another pitch than the one named, or told, runs apart from it over its turns.

    `of_two`: two threads are set against each other, so that the one named first is what goes into the other.
    """
    told, turns = pitch_mm(question), number(question, "turns")
    cut, right = (number(question, OTHER_PITCH) or told), told if question.said(OTHER_PITCH) else None
    named = _pitches_named(question, knowledge)
    if cut is None and of_two:
        cut, named = next(iter(named), None), named[1:]
    right = right or next((pitch for pitch in named if cut is None or abs(pitch - cut) >= SAME_MM), None)
    if cut is None or right is None or abs(cut - right) < SAME_MM:
        return Told()
    if turns is None:  # as many as its length has
        length = number(question, "thread_length", "thickness", "length")
        turns = length / right if length is not None and length <= LONGEST_THREAD_MM else None
    if turns is None:
        return Told()
    off = abs(cut - right) * turns
    how = f"A pitch of {trimmed(cut, 3)} mm in one of" if of_two else f"Cut at {trimmed(cut, 3)} mm instead of"
    text = (
        f"{how} {trimmed(right, 3)} mm{'' if of_two else ' it'} runs {small_mm(off)} apart over"
        f" {trimmed(turns, 2)} turn{'' if turns == 1 else 's'}: it binds unless it is cut that much loose, or has"
        " fewer turns."
    )
    return Told((Line("head", text),), (Quantity("pitch_drift_mm", Interval.exact(off)),))


def turned_pitch(question: Question, facts: Catalogue) -> Interval | None:
    """The pitch told, else that of the lens's own thread, in mm."""
    told = pitch_mm(question)
    if told is not None:
        return Interval.exact(told)
    mounts, threads = facts.mounts, facts.threads
    named = sorted((*question.lenses, *question.bodies), key=lambda thing: -thing.column)
    if question.follows and question.prior is not None and not question.prior.bodies:
        named.sort(key=lambda thing: thing not in question.bodies)  # 'and on an M42 one' after a C lens
    ids = [thing.id for thing in named] + [front for thing in question.adapters for front in thing.front[:1]]
    for id_ in ids:  # the thread named last is the one that is turned
        mount = mounts.get(id_ or "")
        thread = threads.get(mount.thread or "") if mount else None
        if thread is not None and is_known(thread.pitch_mm):
            return thread.pitch_mm
    return None


def _pitches_named(question: Question, knowledge: Knowledge) -> list[float]:
    """The pitches of the mounts named, those of lenses first, then of bodies and of rings."""
    mounts, threads = knowledge.catalogue.mounts, knowledge.catalogue.threads
    ids = [thing.id for thing in (*question.lenses, *question.bodies)]
    ids += [front for thing in question.adapters for front in thing.front[:1]]
    named = [threads.get((mounts[id_].thread or "") if id_ in mounts else "") for id_ in ids if id_]
    known = [thread.pitch_mm for thread in named if thread is not None]
    return [pitch.nominal for pitch in known if is_known(pitch)]
