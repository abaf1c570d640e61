"""A step ring that is told by its two threads alone, as the ring that it is between the mounts with those threads."""

from __future__ import annotations

from typing import Final

from engine.base.compact import replace
from engine.facts.catalogue import Catalogue
from grammar.questions import RING, Thing

_STEP: Final = "step-ring"
_ALIKE_MM: Final = 0.5  # that a thread's name may be off its width


def as_thread_rings(things: list[Thing], lens_mount: str, body_mount: str, facts: Catalogue) -> list[Thing]:
    """'the 39-42 ring' for an LTM lens, before an M42 to EF ring: from the lens's thread to what takes the other."""
    fronts = {name for thing in things for name in thing.front[:1]} | {body_mount}
    return [_as_ring(thing, lens_mount, fronts, facts) for thing in things]


def _as_ring(thing: Thing, lens_mount: str, fronts: set[str], facts: Catalogue) -> Thing:
    if thing.piece != _STEP or thing.steps is None or thing.front:
        return thing
    rears = sorted(name for name in fronts if _is_threaded(name, thing.steps[1], facts))
    if not _is_threaded(lens_mount, thing.steps[0], facts) or len(rears) != 1:
        return thing
    return replace(thing, front=(lens_mount,), rear=(rears[0],), piece=RING, steps=None)


def _is_threaded(name: str, width_mm: float, facts: Catalogue) -> bool:
    mount = facts.mounts.get(name)
    thread = facts.threads.get(mount.thread or "") if mount is not None else None
    return thread is not None and abs(thread.major_mm.nominal - width_mm) <= _ALIKE_MM
