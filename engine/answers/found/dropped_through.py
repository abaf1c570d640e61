"""A lens that drops through a thread: not of that mount, but of a narrower one, most likely of the same pitch."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.found.screwed_in import DROPS
from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.mount_line import mount_line, mount_numbers
from engine.answers.parts.said import mentions
from engine.answers.parts.usual_mounts import of_format
from engine.answers.parts.wording import READS_MM, small_mm
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.chains.joints import screw_of
from engine.facts.records import Mount, Thread
from engine.physics.mating import mate
from grammar.questions import Question, Thing

_MOST: Final = 3
_OTHER: Final = frozenset(["filter", "enlarger"])  # kinds of threads that are no mounts of lenses that focus
_SHARE: Final = 0.5  # of the width of the hole: what is narrower yet is taken for it by nobody
WIDTH: Final = "How wide is its thread across, by caliper? That tells which of them it is."


def dropped_through(question: Question, knowledge: Knowledge) -> Answer | None:
    """What such a lens is; None where the mount named is that of the lens, or nothing drops through."""
    lens = question.lens
    holes = question.limits.using or tuple(id_ for ring in question.adapters for id_ in ring.front[:1])
    if lens is None or len(question.lenses) != 1 or len(holes) != 1 or not mentions(question, "drops-asked"):
        return None
    mounts, threads = knowledge.catalogue.mounts, knowledge.catalogue.threads
    hole = mounts.get(holes[0])
    thread = threads.get(hole.thread or "") if hole is not None else None
    measured = question.said("thread") is not None or question.said("flange_to_image") is not None
    if hole is None or thread is None or lens.ids[:1] not in ((), (hole.id,)) or _names(lens, hole) or measured:
        return None
    found = _narrower(hole, thread, lens, knowledge)
    if not found:
        return None
    first, wide = found[0], threads[found[0].thread or ""]
    alike = " and of the same pitch" if _is_of_pitch(wide, thread) else ""
    head = (
        f"Not {hole.designation}: it is narrower than that thread of {small_mm(thread.major_mm.nominal)}. Most likely"
        f" {first.designation}, {small_mm(wide.major_mm.nominal)} wide{alike}. A sleeve (bushing) that has both threads"
        " must go between."
    )
    lines = [Line("head", head), *_nearer(first, hole)]
    lines += [Line("fact", f"{one.designation}: {mount_line(one, knowledge)}", 1) for one in found]
    lines.append(Line("ask", WIDTH, wants="thread"))
    rows = tuple(row for one in found for row in mount_numbers(one, knowledge))
    of_body = bool(question.bodies) and not question.adapters and not any(one.ids for one in question.bodies)
    body = (Thing("mount", (hole.id,), hole.designation),) if of_body else question.bodies
    meant = replace(lens, kind="mount", ids=tuple(one.id for one in found))
    limits = replace(question.limits, using=())
    learnt = question.with_(lenses=(meant,), bodies=body, limits=limits, topic=None)
    return Answer(
        question.text, question.intent, ANSWERED, tuple(lines), question=question, quantities=rows, learnt=learnt
    )


def _names(lens: Thing, hole: Mount) -> bool:
    """Whether the mount is told of the lens itself: 'a D lens'."""
    return hole.designation.casefold() in lens.words.casefold().split()


def _nearer(first: Mount, hole: Mount) -> list[Line]:
    """How much nearer to the sensor, or farther, it has to sit than a lens that the thread is for."""
    if not (is_known(first.register_mm) and is_known(hole.register_mm)):
        return []
    apart = hole.register_mm.nominal - first.register_mm.nominal
    if abs(apart) < READS_MM:
        return []
    way = "nearer to" if apart > 0 else "farther from"
    flush = " In a flush sleeve it stands out by that; for infinity it has to sink in so far." if apart > 0 else ""
    text = f"It sits {small_mm(abs(apart))} {way} the sensor than a lens of {hole.designation}.{flush}"
    return [Line("text", text)]


def _narrower(hole: Mount, thread: Thread, lens: Thing, knowledge: Knowledge) -> list[Mount]:
    """Mounts whose screw drops through, the lens's format first, then the same pitch, then those met most."""
    facts = knowledge.catalogue
    usual = of_format(replace(lens, kind="", ids=()), facts)
    rows = []
    for mount, one in that_drop_through(thread, knowledge):
        wide = one.major_mm.nominal
        focuses = mount.kind not in _OTHER and is_known(mount.register_mm)
        if focuses and wide >= _SHARE * thread.major_mm.nominal:
            rings = sum(ring.front == mount.id for ring in facts.adapters.values())  # how often such lenses are met
            rows.append((mount.id not in usual, not _is_of_pitch(one, thread), -rings, -wide, mount.id, mount))
    return [row[-1] for row in sorted(rows, key=lambda row: row[:-1])][:_MOST]


def that_drop_through(hole: Thread, knowledge: Knowledge) -> Iterator[tuple[Mount, Thread]]:
    """Every mount whose screw, told behind it, does not catch in the hole."""
    facts = knowledge.catalogue
    for mount in facts.mounts.values():
        screw = facts.threads.get(mount.thread or "") if mount.coupling == "screw" else None
        if screw is not None and mate(screw_of(screw), screw_of(hole), knowledge.joints.limits).outcome == DROPS:
            yield mount, screw


def _is_of_pitch(one: Thread, other: Thread) -> bool:
    first, second = one.pitch_mm, other.pitch_mm
    return is_known(first) and is_known(second) and abs(first.nominal - second.nominal) < READS_MM
