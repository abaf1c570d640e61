"""The mounts that stand for many where none is told: that of the usual hub, that of the usual tubes; plain barrels."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from typing import Final

from engine.answers.parts.answer import Line
from engine.answers.parts.said import mentions
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from engine.facts.records import Mount
from grammar.questions import Question, Thing

BY_RING: Final = "assumed by ring"  # trait of a body that is told by nothing but the length of the ring on it
HUB: Final = "usual-hub"
TUBES: Final = "usual-tubes"
OF_FORMAT: Final = "usual-of-its-format"
CINE: Final = "cine"  # the kind of lens
PROJECTOR: Final = "projector"  # the kind of lens that has one
PLAIN: Final = frozenset({"clamp", "push-in"})  # how a mount couples that is a plain barrel


def usual_mount(trait: str, facts: Catalogue) -> tuple[str, ...]:
    """The mount that the facts give this trait, as its id; empty where none has it."""
    return tuple(mount.id for mount in facts.mounts.values() if trait in mount.traits)[:1]


def as_met(ids: Sequence[str], facts: Catalogue) -> tuple[str, ...]:
    """The mounts in the order in which they are met: that of the name which most of them share."""
    rows = (row.mounts for row in facts.shared.values())
    shared = [names for names in rows if len(set(names) & set(ids)) > 1]
    usual = max(shared, key=lambda names: len(set(names) & set(ids)), default=())
    return tuple(sorted(ids, key=lambda id_: usual.index(id_) if id_ in usual else len(usual)))


def with_usual_of_format(question: Question, facts: Catalogue) -> tuple[Question, tuple[Line, ...]]:
    """'CX or MFT for lenses of 16 mm film': with the mount that such lenses mostly have, which is said."""
    question = _with_lenses_of_both(question)
    lenses, lines = [], []
    for thing in question.lenses:
        usual = of_format(thing, facts) if question.bodies else ()
        if usual:
            mount, form = facts.mounts[usual[0]].designation, facts.formats[thing.format or ""].name
            how = "the thread" if facts.mounts[usual[0]].thread else "the register"
            such = "such " if thing.traits else ""
            text = f"Taken for {mount}, as most {such}lenses made for {form} are: measure {how}."
            lines.append(Line("note", text))
            thing = replace(thing, kind="mount", ids=usual)
        lenses.append(thing)
    return (question.with_(lenses=tuple(lenses)), tuple(dict.fromkeys(lines))) if lines else (question, ())


def taken_by_format(question: Question, facts: Catalogue) -> tuple[Question, tuple[Line, ...]]:
    """The same, where nothing else tells the mount: no measure of it, no bayonet, no ring that is named."""
    measured = any(question.said(key) is not None for key in ("flange_to_image", "thread"))
    named = any(one.ids or one.front or one.thickness_mm for one in question.adapters)
    return (
        (question, ()) if measured or named or mentions(question, "bayonet") else with_usual_of_format(question, facts)
    )


def as_held_by_ring(question: Question, facts: Catalogue) -> Question:
    """The question with the lens's mount as the ring tells it: that which is on its front, and not what it leads to.

    'a 13 mm, D to C flush bush': by its name it takes D. 'an 8mm film lens drops through my C ring', and 'an 8mm film
    lens with a ring to C, on my C camera': the mount that such lenses mostly have, for one of C needs no ring there.
    """
    lens = question.lens
    if lens is None or len(question.lenses) > 1:
        return question
    if not lens.ids and not lens.kind:
        rings = [facts.adapters[one.id] for one in question.adapters if one.id is not None and one.id in facts.adapters]
        front = rings[0].front if rings and rings[0].front != rings[0].rear else None
        if front is not None and front in facts.mounts:
            return question.with_(lenses=(replace(lens, kind="mount", ids=(front,)),))
        return question
    fronts = {*question.limits.using, *(id_ for ring in question.adapters for id_ in ring.front)}
    dropped = bool(lens.ids) and lens.ids[0] in fronts and mentions(question, "drops-asked")
    same = bool(lens.ids) and any(body.ids[:1] == lens.ids[:1] for body in question.bodies)
    led_to = same and any(not ring.ids and ring.front[:1] in ((), lens.ids[:1]) for ring in question.adapters)
    if not (dropped or led_to) or lens.kind != "mount":
        return question
    plain = replace(lens, kind="", ids=())
    usual, named = of_format(plain, facts), facts.mounts[lens.ids[0]].designation.casefold()
    if not usual or usual[0] in lens.ids or named in lens.words.casefold().split():
        return question
    left = tuple(ring for ring in question.adapters if lens.ids[0] not in ring.front)
    return question.with_(lenses=(plain,), adapters=left)


def _with_lenses_of_both(question: Question) -> Question:
    """'CS camera or C camera, I own both kinds of lenses': with a lens of each mount that the bodies have."""
    mounts = [body for body in question.bodies if body.kind == "mount" and body.ids]
    if len(mounts) < 2 or any(lens.ids for lens in question.lenses) or not mentions(question, "lenses-of-both"):
        return question
    return question.with_(lenses=tuple(Thing("mount", body.ids[:1], body.words) for body in mounts))


def of_format(thing: Thing, facts: Catalogue) -> tuple[str, ...]:
    """The mount that lenses made for its format mostly have, of those that couple as is told."""
    if not thing.ids and not thing.kind and thing.format in facts.formats and thing.traits:
        coupled = _of_coupling(thing, facts)
        if coupled:
            return coupled
    if thing.ids or thing.kind or thing.lens_kind not in (None, CINE) or thing.format not in facts.formats:
        return ()
    mounts = (one for one in facts.mounts.values() if OF_FORMAT in one.traits and one.format == thing.format)
    return tuple(mount.id for mount in mounts)[:1]


def _of_coupling(thing: Thing, facts: Catalogue) -> tuple[str, ...]:
    """'breech-lock lenses of 6x6': of the mounts of that format which couple so, that with the most rings."""
    told = {trait.replace(" ", "-") for trait in thing.traits}
    mounts = [one.id for one in facts.mounts.values() if one.format == thing.format and one.coupling in told]
    rings = Counter(ring.front for ring in facts.adapters.values())
    return (max(mounts, key=lambda id_: rings[id_]),) if mounts else ()


def mounts_of_film(question: Question, facts: Catalogue) -> tuple[Mount, ...]:
    """The mount that cameras of the one film told mostly have; none of several films."""
    told = {one.format for one in (*question.bodies, *question.lenses, *question.things) if one.format}
    rows = (one for one in facts.mounts.values() if OF_FORMAT in one.traits and one.format in told)
    return tuple(rows)[:1] if len(told) == 1 else ()
