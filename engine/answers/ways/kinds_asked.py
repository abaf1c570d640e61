"""Which kinds of mount are asked for: SLR bodies, cine lenses, digital ones."""

from __future__ import annotations

from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from engine.facts.records import Mount
from grammar.questions import Question, Thing

# kinds of mount as people call them, where a kind is asked for
KINDS = {
    "slr": ("slr",), "dslr": ("digital slr",), "mirrorless": ("mirrorless",), "rangefinder": ("rangefinder",),
    "cine": ("cine", "video"), "medium format": ("medium-format",),
    "digital": ("digital",), "medium-format": ("medium-format",),
    "cctv": ("industrial",), "industrial": ("industrial",), "enlarger": ("enlarger",), "projector": ("projector",),
}  # fmt: skip

RINGED = frozenset({"slr", "medium-format"})  # lenses of these are put on other bodies by a plain ring
FEW_OF_FORMAT = 12  # mounts of one format that are all told
# phrases for the mounts of a kind of body
SPOKEN = {"mirrorless-mounts": ("mirrorless",), "slr-mounts": ("slr",), "dslr-mounts": ("digital slr",)}
# and of a kind of lens
OF_LENSES = {"cine-mounts": ("cine", "video"), "rangefinder-mounts": ("rangefinder",)}


def kinds_asked(question: Question, of_bodies: bool) -> frozenset[str]:
    """The kinds of the bodies asked for, or of the lenses; bodies also by their mounts: 'which mirrorless mounts'."""
    if of_bodies and question.mentions("kind-or-not"):
        return frozenset()  # 'mirrorless or not' asks for all
    told = kinds_of(question.bodies if of_bodies else question.lenses)
    said = SPOKEN if of_bodies else OF_LENSES
    spoken = {kind for key, kinds in said.items() if question.mentions(key) for kind in kinds} if not told else set()
    return told or frozenset(spoken)


def kinds_of(things: tuple[Thing, ...]) -> frozenset[str]:
    """The kinds of mount asked for, where only a kind is told: 'SLR bodies', 'cine lenses'."""
    words = [word for thing in things if not thing.ids for word in (*thing.traits, thing.lens_kind or "", thing.words)]
    return frozenset(
        kind for word in words for name, row in KINDS.items() if f" {name} " in f" {word.casefold()} " for kind in row
    )


def lens_for_kind(question: Question, facts: Catalogue) -> Question:
    """'every mirrorless for C mount': of a mount that no body of the kind told has, the lens is meant."""
    told = question.bodies[0] if len(question.bodies) == 1 and not question.lenses else None
    kinds = kinds_of((replace(told, ids=()),)) if told is not None else frozenset()
    mount = facts.mounts.get(told.ids[0]) if told is not None and told.kind == "mount" and told.ids else None
    if told is None or mount is None or not kinds or is_of(mount, kinds) or mount.iris == "electronic":
        return question  # 'a Four Thirds dslr'; of mounts whose bodies drive the iris a body is meant
    lens = Thing("mount", told.ids, mount.designation, column=told.column)
    return question.with_(lenses=(lens,), bodies=(replace(told, kind="", ids=()),))


def is_of(mount: Mount, kinds: frozenset[str]) -> bool:
    """Whether a mount is of one of the kinds; 'digital' are those that bodies with a sensor are built with."""
    smaller = mount.smallest_format is not None and mount.smallest_format != mount.format
    digital = mount.kind == "mirrorless" or (smaller and mount.kind in ("slr", "rangefinder", "medium-format"))
    return (
        mount.kind in kinds
        or ("digital" in kinds and digital)
        or ("digital slr" in kinds and digital and mount.kind == "slr")
    )


def of_format(partners: list[str], lens: Thing | None, question: Question, facts: Catalogue) -> list[str]:
    """'645 lenses for my Z body': of the mounts those of that format, with all others of it where they are few."""
    told = {thing.format for thing in question.lenses if thing.format and not thing.ids} if lens is None else set()
    if not told:
        return partners
    mounts = facts.mounts
    every = [name for name, one in mounts.items() if told & set(one.formats) and one.kind in RINGED]
    return (
        every if 0 < len(every) <= FEW_OF_FORMAT else [n for n in partners if told & set(mounts[n].formats)] or partners
    )
