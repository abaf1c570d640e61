"""The mounts that stand for many where none is told: that of the usual hub, that of the usual tubes; plain barrels."""

from __future__ import annotations

from typing import Final

from engine.facts.catalogue import Catalogue

HUB: Final = "usual-hub"
TUBES: Final = "usual-tubes"
PROJECTOR: Final = "projector"  # the kind of lens that has one
PLAIN: Final = frozenset({"clamp", "push-in"})  # how a mount couples that is a plain barrel


def usual_mount(trait: str, facts: Catalogue) -> tuple[str, ...]:
    """The mount that the facts give this trait, as its id; empty where none has it."""
    return tuple(mount.id for mount in facts.mounts.values() if trait in mount.traits)[:1]
