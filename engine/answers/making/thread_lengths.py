"""How long the male thread of a mount may be, and what one does that is longer."""

from __future__ import annotations

from engine.answers.found.threads_told import threads_told
from engine.answers.parts.answer import Answer, Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import number
from engine.answers.parts.usual_mounts import mounts_of_film
from engine.answers.parts.wording import small_mm, trimmed
from engine.base.compact import replace
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount
from grammar.questions import Question

LENGTH: str = "thread_length"  # key of the length of a thread that is told


def thread_length(mount: Mount, knowledge: Knowledge) -> Interval | None:
    """As long as threads of the mount are made, in mm."""
    thread = knowledge.catalogue.threads.get(mount.thread or "")
    return thread.engagement_mm if thread is not None and is_known(thread.engagement_mm) else None


def as_long_as(question: Question, knowledge: Knowledge) -> Told:
    """How long a thread may be, where one mount alone is named; what a longer one that is told does."""
    mounts = knowledge.catalogue.mounts
    named = [thing.id for thing in (*question.lenses, *question.bodies) if thing.id in mounts]
    named = named or [_usual(one.id, knowledge) for one in threads_told(question, knowledge)]  # 'the 1-32 thread'
    named = named or [one.id for one in mounts_of_film(question, knowledge.catalogue)]
    if len(set(named)) != 1 or None in named:
        return Told()
    mount = mounts[named[0] or ""]
    turned = _by_turns(question, mount, knowledge)
    if turned.lines:
        return turned
    made = thread_length(mount, knowledge)
    if made is None:
        return Told()
    told = number(question, LENGTH)
    usual = f"{mount.designation} threads are made {trimmed(made.least, 2)} to {trimmed(made.greatest, 2)} mm long."
    if told is None:
        text = f"{usual} Longer ones exist and can meet shutter, filter or mirror before they seat"
    elif told <= made.greatest:
        text = f"{usual} {small_mm(told)} is no longer than that. Still never force it"
    else:
        text = (
            f"{small_mm(told)} is {small_mm(round(told - made.greatest, 4))} too long. {usual} The rest can meet"
            " shutter, cover glass or mirror before it seats: do not screw it home by force"
        )
    text = f"{text}: measure the body, flange to what lies behind."
    return Told((Line("head", text),), (Quantity("thread_length_mm", made, mount.id),))


def _by_turns(question: Question, mount: Mount, knowledge: Knowledge) -> Told:
    """'4 turns of M42, how long is the thread': turns x pitch; nothing where no turns are told."""
    thread, turns = knowledge.catalogue.threads.get(mount.thread or ""), number(question, "turns")
    if thread is None or turns is None or not is_known(thread.pitch_mm):
        return Told()
    length = thread.pitch_mm * turns
    text = (
        f"{trimmed(turns, 2)} turns of {mount.designation} are {small_mm(length.nominal)} of thread: "
        f"its pitch is {trimmed(thread.pitch_mm.nominal, 3)} mm. Leave some over for the lead-in."
    )
    return Told((Line("head", text),), (Quantity("thread_length_mm", length, f"{trimmed(turns, 2)} turns"),))


def _usual(thread: str, knowledge: Knowledge) -> str | None:
    """The mount that is known by a thread: the first of those that have it."""
    return next((one.id for one in knowledge.catalogue.mounts.values() if one.thread == thread), None)


def with_thread_length(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """The answer behind how long the thread may be."""
    told = as_long_as(question, knowledge)
    if not told.lines or any(row.name == "thread_length_mm" for row in answer.quantities or ()):
        return answer
    quantities = (*told.quantities, *(answer.quantities or ()))
    return replace(answer, lines=(*told.lines, *answer.lines), quantities=quantities)
