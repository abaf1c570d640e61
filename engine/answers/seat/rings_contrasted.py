"""Rings of several lenses that a reason is asked of: 'why is the one for F a tube on E and the one for C a cup'.

Each is named by the lens that it takes. A mount of old cameras beside that of a body in use is such a lens, wherever
its words stand, and what a ring is 'on' is a body.
"""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.kinds import WHY
from grammar.questions import Question, Thing

SEVERAL: Final = 2
IN_USE: Final = "mirrorless"  # the kind of mounts that rings end on
# kinds of mounts that are a lens's where a body in use is named besides: of cine cameras, rangefinders, machines
OF_LENSES: Final = frozenset(["cine", "rangefinder", "industrial", "video", "medium-format"])
MOUNT: Final = "mount"
_ON: Final = frozenset(["on", "onto"])


def with_rings_contrasted(question: Question, catalogue: Catalogue) -> Question:
    """The question with each lens that a ring is told of, and each body, in its own role."""
    if question.intent != WHY or question.follows or len(_named(question)) <= SEVERAL:
        return question
    ends = [_end(end) for one in question.adapters for end in (one.front, one.rear) if end]
    fronts = [_end(one.front) for one in question.adapters if one.front and _kind(_end(one.front), catalogue) != IN_USE]
    stood_on = [one for one in question.lenses if _is_stood_on(one, question, catalogue, bool(fronts))]
    bodies = [*question.bodies, *stood_on, *(one for one in ends if _kind(one, catalogue) == IN_USE)]
    astray = [one for one in bodies if _kind(one, catalogue) in OF_LENSES and one.focal_length_mm is None]
    lenses = _each([*(one for one in question.lenses if one not in stood_on), *astray, *fronts])
    in_use = _each([one for one in bodies if one not in astray])
    if not any(_kind(one, catalogue) == IN_USE for one in in_use) or len(lenses) + len(in_use) <= SEVERAL:
        return question
    if not lenses or {one.ids[:1] for one in lenses} & {one.ids[:1] for one in in_use}:
        return question
    rings = tuple(replace(one, front=(), rear=(), thickness_mm=None) for one in question.adapters)
    # what one of the rings measures is not told of the others
    kept = question.without("extension", "thickness") if len(lenses) >= SEVERAL else question
    return kept.with_(lenses=lenses, bodies=in_use, adapters=rings)


def _named(question: Question) -> set[tuple[str, ...]]:
    """Every mount that the question names, in whatever role."""
    ends = [end[:1] for one in question.adapters for end in (one.front, one.rear) if end]
    return {one.ids[:1] for one in (*question.lenses, *question.bodies) if one.kind == MOUNT} | set(ends)


def _each(things: list[Thing]) -> tuple[Thing, ...]:
    """The things in the order they stand in the text, each mount once."""
    first: dict[tuple[str, ...], Thing] = {}
    for one in things:
        first.setdefault(one.ids[:1], one)
    return tuple(first.values())


def _end(ids: tuple[str, ...]) -> Thing:
    return Thing(MOUNT, ids[:1])


def _kind(thing: Thing, catalogue: Catalogue) -> str:
    mount = catalogue.mounts.get(thing.id or "") if thing.kind == MOUNT else None
    return mount.kind if mount is not None else ""


def _is_stood_on(thing: Thing, question: Question, catalogue: Catalogue, of_ring: bool) -> bool:
    """'so thin on EF', 'the ring .. long for E ones': a mount that something is put on, or that of a body in use.

    `of_ring`: the lens is told by the ring that takes it.
    """
    kind = _kind(thing, catalogue)
    if kind in ("", *OF_LENSES) or thing.focal_length_mm is not None:
        return False
    before = question.text[: max(thing.column - 1, 0)].split()
    return (of_ring and kind == IN_USE) or (bool(before) and before[-1].casefold() in _ON)
