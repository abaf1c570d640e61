"""How long the thread of a mount is made, and by how much one that is told is longer."""

from __future__ import annotations

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number
from engine.answers.parts.wording import ranged, small_mm, trimmed
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from grammar.questions import Question

TOLD = "thread_length"


def made_length(mount: Mount, knowledge: Knowledge) -> Interval | None:
    """How long the thread of the mount is, in mm; None where it has none, or where that is not known."""
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    return thread.engagement_mm if thread is not None and is_known(thread.engagement_mm) else None


def thread_made(question: Question, knowledge: Knowledge) -> Told:
    """How long a thread may be, where one mount alone is named, and what is to be thought of the one told."""
    mounts = [thing.id for thing in (*question.lenses, *question.bodies) if thing.id in knowledge.catalogue.mounts]
    if len(mounts) != 1:
        return Told()
    mount = knowledge.catalogue.mounts[mounts[0] or ""]
    length = made_length(mount, knowledge)
    if length is None:
        return Told()
    text = f"{mount.designation} threads are made {trimmed(length.least, 2)} to {trimmed(length.greatest, 2)} mm long."
    told = number(question, TOLD)
    if told is None:
        text += (
            " Longer ones exist and can meet shutter, filter or mirror before they seat: measure the body, flange to"
            " what lies behind."
        )
    elif told > length.greatest:
        over = Interval.exact(told) - length
        text += (
            f" This one of {small_mm(told)} is {ranged(over, small_mm)} longer: it can meet the filter or shutter"
            " before its shoulder seats. Do not turn it home before you have measured how deep your body is free."
        )
    else:
        text += f" This one of {small_mm(told)} is no longer than that."
    return Told((Line("head", text),), (Quantity("thread_length_mm", length, mount.id),))
