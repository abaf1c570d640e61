"""That a thread alone does not tell the mount: which others have it, and what decides."""

from __future__ import annotations

from engine.answers.found.threads_measured import by_thread, thread_measured
from engine.answers.found.threads_told import ANOTHER_MM, width_told
from engine.answers.parts.answer import Line, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.near_enough import told_register_mm
from engine.answers.parts.said import mentions, number, numbers
from engine.answers.parts.wording import listed, small_mm, trimmed
from engine.base.interval import is_known
from engine.facts.kinds import ACCESSORIES
from engine.facts.records import Mount
from grammar.questions import Question

UNFOCUSED = "no-focusing"  # the trait of mounts whose lenses are focused by an apparatus, and the phrase for it
WIDTH_MM, PITCH_MM = 0.35, 0.1  # what a caliper and paper may be off


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
             and row.kind not in ACCESSORIES and "thread-only" not in row.traits]  # fmt: skip
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


def of_another_width(question: Question, mount: Mount, knowledge: Knowledge) -> Told:
    """'M35 thread, 17.5 register, same as C?': the threads are told apart by their width, whatever the register is."""
    told, thread = thread_measured(question)[0], knowledge.catalogue.threads.get(mount.thread or "")
    told = width_told(question, told, knowledge) if told is not None else None
    if told is None or thread is None or abs(told - thread.major_mm.nominal) <= ANOTHER_MM:
        return Told()
    text = (
        f"No: the thread is {trimmed(told, 2)} mm across and that of {mount.designation}"
        f" {trimmed(thread.major_mm.nominal, 2)} mm; the narrower drops through, the wider does not start."
    )
    register = number(question, "flange_to_image") or next(iter(numbers(question, "numbers")), None)
    near, own = told_register_mm(knowledge.catalogue), mount.register_mm
    if register is not None and is_known(own) and abs(register - own.nominal) <= near:
        text += " Their registers alone are alike."
    return Told((Line("head", text),)) + by_thread(question, knowledge)[0]


def by_no_focus_ring(question: Question, knowledge: Knowledge) -> Told:
    """'39 mm thread, an iris but no focus ring': the screws of such a width whose lenses do not focus by themselves."""
    facts = knowledge.catalogue
    if not mentions(question, UNFOCUSED):
        return Told()
    width, pitch = thread_measured(question)
    named = [
        facts.mounts[id_].thread or "" for thing in question.lenses for id_ in thing.ids[:1] if id_ in facts.mounts
    ]
    if width is None and named and named[0]:
        width = facts.threads[named[0]].major_mm.nominal
    if width is None:
        return Told()
    found = []
    for mount in facts.mounts.values():
        thread = facts.threads.get(mount.thread or "")
        if thread is None or not mount.adjustable or UNFOCUSED not in mount.traits:
            continue
        fits = pitch is None or not is_known(thread.pitch_mm) or abs(thread.pitch_mm.nominal - pitch) <= PITCH_MM
        if fits and abs(thread.major_mm.nominal - width) <= WIDTH_MM:
            found.append(mount)
    if not found:
        return Told()
    names = listed([mount.designation for mount in found], "or")
    text = (
        f"Without a focus ring it is most likely of an apparatus that does the focusing: {names}. Such a lens has no"
        " register of its mount: flange to the image of a far window tells its own, and a helicoid must stand between."
    )
    return Told((Line("head", text),))
