"""A screw that drops through a thread without catching: which narrower ones are known, and what is to go between."""

from __future__ import annotations

from typing import Final

from engine.answers.found.by_features import UNFOCUSED
from engine.answers.found.dropped_through import dropped_through, that_drop_through
from engine.answers.found.thread_told import ASSUMED
from engine.answers.found.threads_measured import thread_measured
from engine.answers.found.threads_told import threads_told
from engine.answers.parts.answer import ANSWERED, Answer, Line, Quantity
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import at_wrong_depth, how_rare, mount_line
from engine.answers.parts.wording import article, small_mm, trimmed
from engine.answers.seat.seen import kinds_said
from engine.base.interval import is_known
from engine.facts.kinds import ACCESSORIES
from engine.facts.records import Mount, Thread
from grammar.kinds import LOOK_ALIKE
from grammar.questions import Question

MOST: Final = 5
_TRADES: Final = ("cine", "microscope", "industrial", "enlarger", "rangefinder")  # kinds of mounts that words tell of
_OF_APPARATUS: Final = ("microscope", "industrial", "enlarger")


def with_what_drops(answer: Answer, question: Question, knowledge: Knowledge) -> Answer:
    """In place of the answer: what is narrower than the one thread that is named; nothing where two threads are."""
    if question.follows:  # what is told on is of the lens
        return answer
    if not kinds_said(question, _OF_APPARATUS):  # else of what was made for such an apparatus
        told = None if answer.learnt is not None or answer.chains else dropped_through(question, knowledge)
        if told is not None or answer.learnt is not None:
            return told or answer
    hole = _hole(question, knowledge)
    threads = knowledge.catalogue.threads
    found = {id(mount): (threads[mount.thread or ""], mount) for mount in _narrower(hole, question, knowledge)}
    if hole is None or not found or answer.chains:
        return answer
    wide = f"{hole.designation} ({trimmed(hole.major_mm.nominal, 2)} mm across)"
    text = f"What drops through {wide} without catching has a narrower screw, and is made for another mount:"
    lines, rows = [Line("head", text)], list[Quantity]()
    held = _of_hole(question, hole, knowledge)
    for thread, mount in [*found.values()][:MOST]:
        text = f"{mount.designation}: {trimmed(thread.major_mm.nominal, 2)} mm across; {mount_line(mount, knowledge)}"
        lines.append(Line("fact", text + _at_depth(mount, held, knowledge), 1))
        rows.append(Quantity("thread_diameter_mm", thread.major_mm, mount.id))
        rows += [Quantity("register_mm", mount.register_mm, mount.id)] if is_known(mount.register_mm) else []
    between = (
        "It takes a sleeve (bushing) with both threads: screwed home in that it is held; fit says nothing of focus."
    )
    ask = Line("ask", "How wide is its screw, by caliper, and how long are ten crests?", wants="thread")
    return Answer(
        question.text, LOOK_ALIKE, ANSWERED, (*lines, Line("text", between), ask), question=question,
        quantities=tuple(dict.fromkeys(rows)),
    )  # fmt: skip


def _names(question: Question) -> list[str]:
    rings = [name for piece in question.adapters for name in piece.front[:1]]
    things = (*question.lenses, *question.bodies, *question.things)
    return [*(thing.ids[0] for thing in things if thing.ids and ASSUMED not in thing.traits), *rings]


def _hole(question: Question, knowledge: Knowledge) -> Thread | None:
    """The one thread that is named or measured."""
    facts = knowledge.catalogue
    named = {facts.mounts[name].thread for name in _names(question) if name in facts.mounts}
    named |= {name for name in _names(question) if name in facts.threads}
    threads = [facts.threads[name] for name in named if name] or threads_told(question, knowledge)
    if threads:
        return threads[0] if len(threads) == 1 else None
    width, _ = thread_measured(question)
    near = facts.assumptions["mating-same-diameter"].value.greatest
    of_mounts = [
        facts.threads[one.thread] for one in facts.mounts.values() if one.thread and one.kind not in ACCESSORIES
    ]
    return next((one for one in of_mounts if width is not None and abs(one.major_mm.nominal - width) <= near), None)


def _narrower(hole: Thread | None, question: Question, knowledge: Knowledge) -> list[Mount]:
    """The mounts whose screws drop through, of the trade that is told of; the usual ones first."""
    kinds = kinds_said(question, _TRADES)
    found = [
        (mount, screw)
        for mount, screw in (that_drop_through(hole, knowledge) if hole is not None else ())
        if mount.kind not in ACCESSORIES - kinds and (not kinds or mount.kind in kinds)
    ]
    found.sort(key=lambda row: (how_rare(row[0], knowledge), -row[1].major_mm.nominal))
    return [mount for mount, _ in found]


def _of_hole(question: Question, hole: Thread, knowledge: Knowledge) -> Mount | None:
    """The mount by which the thread was named, where it has a register."""
    mounts = knowledge.catalogue.mounts
    named = (mounts[name] for name in _names(question) if name in mounts and mounts[name].thread == hole.id)
    return next((one for one in named if is_known(one.register_mm)), None)


def _at_depth(lens: Mount, held: Mount | None, knowledge: Knowledge) -> str:
    """How far from right a flush sleeve holds it."""
    if held is None or UNFOCUSED in lens.traits or not (is_known(lens.register_mm) and is_known(held.register_mm)):
        return ""
    off = held.register_mm.nominal - lens.register_mm.nominal
    sits = f"in a flush sleeve {article(lens.designation)} {lens.designation} lens sits {small_mm(abs(off))}"
    return f"; {sits} {at_wrong_depth(off, knowledge)}"
