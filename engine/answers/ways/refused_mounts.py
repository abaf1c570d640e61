"""Which mounts do not go on a body, or take no lens, at infinity by a plain ring: by their registers."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed, small_mm
from engine.answers.ways.kinds_asked import is_of
from engine.base.interval import Interval, is_known
from engine.facts.records import Mount

NOT_FITTING: Final = "which-do-not-fit"  # a phrase that it is asked for them
MOST_REFUSED: Final = 14
MODERN: Final = frozenset({"slr", "rangefinder", "mirrorless", "medium-format"})  # kinds of bodies that are asked for
BODY_KINDS: Final = frozenset({"slr", "rangefinder", "mirrorless", "medium-format", "cine", "video", "industrial"})


def usual_by_rings(name: str, knowledge: Knowledge) -> int:
    """How usual a mount is: by the rings that lead from it and to it."""
    rings = knowledge.rings
    return sum(len(row) for row in rings.onward.get(name, {}).values()) + len(rings.backward.get(name, ()))


def refused(own: Mount | None, of_lens: bool, fitting: set[str], knowledge: Knowledge) -> Told:
    """The usual mounts that do not: their register is too short for the body, or the body's too long for the lens."""
    off = list(_off(own, of_lens, fitting, BODY_KINDS, knowledge))
    if not off:
        return Told()
    names = listed([mount.designation for mount in off[:MOST_REFUSED]], "or")
    why = "its register is too short for them" if of_lens else "their registers are too short for it"
    return Told((Line("text", f"Not, save close up or with glass: {names}; {why}."),))


def not_fitting(
    own: Mount | None, of_lens: bool, fitting: set[str], kinds: frozenset[str], knowledge: Knowledge
) -> Told:
    """The mounts too short for a body, or too deep for a lens, before all else, where it is asked for them."""
    off = list(_off(own, of_lens, fitting, kinds or (MODERN if of_lens else BODY_KINDS), knowledge))
    if own is None or not off or not isinstance(own.register_mm, Interval):
        return Told()
    mine = own.register_mm.nominal
    rows = [(mount, mount.register_mm) for mount in off if isinstance(mount.register_mm, Interval)]
    rows = [row for row in rows if row[1].nominal != mine]
    names = listed([f"{mount.designation} ({small_mm(size.nominal)})" for mount, size in rows[:MOST_REFUSED]])
    more = f"; of {len(rows)} the usual ones" if len(rows) > MOST_REFUSED else ""
    what = "deep" if of_lens else "short"
    text = f"Too {what} for {own.designation} ({small_mm(mine)}), so close up only, or to infinity with glass{more}: "
    numbers = tuple(Quantity("register_mm", size, mount.id) for mount, size in rows[:MOST_REFUSED])
    return Told((Line("head", f"{text}{names}."),), numbers) if rows else Told()


def _off(
    own: Mount | None, of_lens: bool, fitting: set[str], kinds: frozenset[str], knowledge: Knowledge
) -> Iterator[Mount]:
    """Mounts of these kinds whose register is on the wrong side of that of `own`, the usual ones first."""
    if own is None or not is_known(own.register_mm):
        return
    mounts = sorted(knowledge.catalogue.mounts.values(), key=lambda one: (-usual_by_rings(one.id, knowledge), one.id))
    for mount in mounts:
        if mount.id in fitting or mount.id == own.id or not is_known(mount.register_mm) or not is_of(mount, kinds):
            continue
        longer = own.register_mm.nominal < mount.register_mm.nominal
        if longer is of_lens and not (of_lens and "lens-side-only" in mount.traits):
            yield mount
