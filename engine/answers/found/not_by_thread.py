"""That a thread alone does not tell the mount: which others have it, and what decides."""

from __future__ import annotations

from engine.answers.found import together
from engine.answers.found.threads_measured import thread_measured
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.wording import listed, small_mm
from engine.base.interval import is_known
from grammar.questions import Question

ANOTHER_MM = 1.0  # a thread that is farther off is another


def not_by_thread(question: Question, knowledge: Knowledge) -> Told:
    """'42 mm, 1.0 pitch, so plain M42?': a screw mount named is one of several of its thread, which does not tell."""
    facts = knowledge.catalogue
    named = [facts.mounts[id_] for thing in question.lenses for id_ in thing.ids[:1] if id_ in facts.mounts]
    screws = [mount for mount in named if mount.thread]
    if len({mount.id for mount in screws}) != 1 or number(question, "flange_to_image") is not None:
        return Told()
    if not (mentions(question, "taken-for-sure") or question.text.rstrip().endswith("?")):
        return Told()
    mount = screws[0]
    told, thread = thread_measured(question)[0], facts.threads[mount.thread or ""]
    if told is not None and abs(told - thread.major_mm.nominal) > ANOTHER_MM:
        return Told()  # '57 mm, enlarger?' is not the thread that most of them have
    alike = [row for row in facts.mounts.values() if row.thread == mount.thread and row.id != mount.id
             and row.kind not in together.ACCESSORIES and "thread-only" not in row.traits]  # fmt: skip
    if not alike:
        return Told()
    alike.sort(key=lambda row: (not is_known(row.register_mm), row.id))
    others = listed([row.designation for row in alike[:4]], "or")
    register = f", register {small_mm(mount.register_mm.nominal)}" if is_known(mount.register_mm) else ""
    text = (
        f"The thread alone does not tell: {mount.designation}{register}, has the same thread as {others}, and makers of"
        " industrial and other lenses use it with a register of their own. It depends on flange to image: measure that."
    )
    return Told((Line("head", text),))
