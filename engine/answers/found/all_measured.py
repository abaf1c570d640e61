"""A lens of which thread, pitch and flange to image are told: what they say of its mount, taken together."""

from __future__ import annotations

from engine.answers.found import together
from engine.answers.found.not_by_thread import not_by_thread
from engine.answers.found.thread_told import ASSUMED
from engine.answers.found.threads_measured import ROUGHLY_MM, ROUNDED_MM, thread_measured
from engine.answers.parts.answer import ANSWERED, Answer, Line
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.said import mentions, number
from engine.answers.parts.usual_mounts import as_met
from engine.answers.seat.seen import is_coupled_by_lugs
from engine.base.compact import replace
from engine.base.interval import is_known
from engine.facts.records import Mount
from grammar.questions import BY_MEASURES, Question, Thing

WIDER_MM = 1.5  # than a thread that meets it at all
BY_PAPER = "How far is it from flange to the image of a far window on paper, set to infinity? Measure that: it decides."


def combined(question: Question, knowledge: Knowledge, by_name: bool = False) -> Answer | None:
    """Thread, pitch and flange to image of all that was told, taken together; None where that is too little."""
    diameter, pitch = thread_measured(question)
    sure = [thing for thing in question.lenses if thing.kind == "mount" and ASSUMED not in thing.traits]
    named = tuple(id_ for thing in sure for id_ in thing.ids[:1])
    if is_bayonet(question):
        return None
    if diameter is None and by_name:
        diameter = _named_width(named, knowledge)
    register = number(question, "flange_to_image")
    rough = mentions(question, "roughly") and (pitch is not None or (register is not None and question.follows))
    # a width told in whole millimetres is off by half of one, where the pitch tells which thread it is
    rounded = diameter is not None and float(diameter).is_integer() and pitch is not None
    found = together.Found(diameter, pitch, register, ROUGHLY_MM if rough else ROUNDED_MM if rounded else 0.0)
    rows = together.matches(found, named, knowledge)
    if not rows or (found.register_mm is None and not named):
        return None
    told = together.told(found, rows, named, knowledge)
    mounts = together.settled(found, rows)
    asked = question
    if mounts:
        ids = _likeliest_first(mounts, found, knowledge)
        words = knowledge.catalogue.mounts[ids[0]].designation
        lens = question.lens or Thing()
        traits = tuple(dict.fromkeys((*lens.traits, BY_MEASURES)))
        lens = replace(lens, kind="mount", ids=ids, words=words, traits=traits if not named else lens.traits)
        asked = replace(question, lenses=(lens, *question.lenses[1:]))
    lines = [*not_by_thread(question, knowledge).lines, *told.lines]
    if found.register_mm is None and any(not row.bad for row in rows):
        lines.append(Line("ask", BY_PAPER, wants="flange_to_image"))
    return Answer(
        question.text, "identify-mount", ANSWERED, tuple(lines), question=question, quantities=told.quantities,
        learnt=asked,
    )  # fmt: skip


def _likeliest_first(mounts: list[Mount], found: together.Found, knowledge: Knowledge) -> tuple[str, ...]:
    """Those nearest to the register told, of those that paper cannot tell apart the one that is met most."""
    order, told = as_met([mount.id for mount in mounts], knowledge.catalogue), found.register_mm or 0.0
    near = {
        mount.id: round(abs(mount.register_mm.nominal - told), 1) for mount in mounts if is_known(mount.register_mm)
    }
    return tuple(sorted(order, key=lambda id_: near.get(id_, 0.0)))


def as_unnamed(question: Question) -> Question:
    """The lens without the mount that its measures told before: '55' after 45.5 mm and M42 makes it another."""
    lens = question.lens
    if lens is None or BY_MEASURES not in lens.traits:
        return question
    traits = tuple(trait for trait in lens.traits if trait != BY_MEASURES)
    bare = replace(lens, kind="", ids=(), words="", traits=traits)
    return replace(question, lenses=(bare, *question.lenses[1:]))


def not_of_the_ring(question: Question, knowledge: Knowledge) -> Question:
    """'20 mm thread, falls through my M25 ring': not of the mount of a ring whose thread is so much wider.

    A screw that bodies are told to have had, with no lens beside them, is that of the lens: 'which 39 mm thread did the
    early reflexes use, how do i tell mine'.
    """
    bodies = [one for one in question.bodies if one.kind == "mount" and one.ids]
    if not question.lenses and len(bodies) == len(question.bodies) == 1 and _named_width(bodies[0].ids[:1], knowledge):
        return replace(question, lenses=tuple(bodies), bodies=())
    lens, (diameter, _) = question.lens, thread_measured(question)
    lent = lens.ids[0] if lens is not None and lens.ids and lens.ids[0] in question.limits.using else None
    width = _named_width((lent,), knowledge) if lent is not None else None
    if lens is None or diameter is None or width is None or abs(width - diameter) < WIDER_MM:
        return question
    bare = replace(lens, kind="", ids=(), words=lens.lens_kind or "")
    limits = replace(question.limits, using=tuple(one for one in question.limits.using if one != lent))
    return replace(question, lenses=(bare, *question.lenses[1:]), limits=limits)


def _named_width(named: tuple[str, ...], knowledge: Knowledge) -> float | None:
    """'42 mm screw, image at 55': the name of a screw mount tells how wide its thread is, not whose register it has."""
    mounts, threads = knowledge.catalogue.mounts, knowledge.catalogue.threads
    thread = threads.get(mounts[named[0]].thread or "") if len(named) == 1 and named[0] in mounts else None
    return thread.major_mm.nominal if thread is not None else None


def is_bayonet(question: Question) -> bool:
    """Whether what was measured is a bayonet: its width is no thread."""
    told = question if question.prior is None or not question.follows else question.prior
    seen = any(mentions(one, "bayonet") or is_coupled_by_lugs(one) for one in (question, told))
    seen = seen or question.said("throat") is not None  # only what a bayonet goes into has one
    return seen and not mentions(question, "thread-told")
