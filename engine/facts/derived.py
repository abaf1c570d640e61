"""What follows from a layer's mounts: the seat of register-difference rings, and a generic body for each format."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterator, Mapping
from typing import Any, Final

from engine.base.compact import replace
from engine.base.interval import UNKNOWN, is_known
from engine.base.span import Span
from engine.facts.records import Adapter, Body, Format, Mount
from engine.facts.sections import with_article
from engine.facts.tables import Tables

DIFFERENCE_BASIS: Final = "register-difference"
Records = dict[str, dict[str, Any]]  # section -> id -> record


def derive(records: Records, earlier: Tables) -> None:
    """Adds to a layer's records what its mounts settle, in earlier layers' adapters too where it overrides a mount."""
    mounts: dict[str, Mount] = {**earlier["mounts"], **records["mounts"]}
    formats: dict[str, Format] = {**earlier["formats"], **records["formats"]}
    changed = {mount_id for mount_id in records["mounts"] if mount_id in earlier["mounts"]}
    adapters: dict[str, Adapter] = records["adapters"]
    if changed:
        touched = (a for a in earlier["adapters"].values() if a.front in changed or a.rear in changed)
        adapters = {**{a.id: a for a in touched if a.seat_basis == DIFFERENCE_BASIS}, **adapters}
    records["adapters"] = {a.id: settled(a, mounts) for a in adapters.values()}
    bodies: dict[str, Body] = {**earlier["bodies"], **records["bodies"]}
    derived_at = {mount.place for mount in earlier["mounts"].values()}
    generic = {(body.mount, body.format) for body in bodies.values() if body.generic and body.place not in derived_at}
    words = Counter(mount_words(mount.designation) for mount in mounts.values())
    for mount in records["mounts"].values():
        for body in generic_bodies(mount, formats, words[mount_words(mount.designation)] == 1):
            if (body.mount, body.format) not in generic and body.id not in records["bodies"]:
                records["bodies"][body.id] = body


def settled(adapter: Adapter, mounts: Mapping[str, Mount]) -> Adapter:
    """A `register difference` ring with its thickness, unknown where a register is; any other adapter as it is."""
    if adapter.seat_basis != DIFFERENCE_BASIS:
        return adapter
    front, rear = mounts[adapter.front].register_mm, mounts[adapter.rear].register_mm
    difference = front - rear if is_known(front) and is_known(rear) else UNKNOWN
    return replace(adapter, thickness_mm=Span.fixed(difference))


def generic_bodies(mount: Mount, formats: Mapping[str, Format], alone: bool = True) -> Iterator[Body]:
    """A body of no maker for each format that the mount's bodies are built with.

    `alone`: no other mount goes by the same words, so that the body's name need not say more.
    """
    called = mount_words(mount.designation)
    for format_id in mount.formats:
        of = formats[format_id]
        # 'Micro Four Thirds' needs no second 'Four Thirds'
        names = [
            called if name.casefold() in called.casefold() else f"{called} {name}" for name in (of.name, *of.aliases)
        ]
        yield Body(
            id=f"generic-{mount.id}-{of.id}",
            name=with_article(f"{names[0] if alone else f'{mount.designation} {of.name}'} body"),
            mount=mount.id,
            format=of.id,
            basis=mount.basis,
            clear_depth_mm=mount.clear_depth_mm,
            generic=True,
            aliases=tuple(dict.fromkeys(f"{name} body" for name in names[1:] if name != names[0])),
            place=mount.place,
        )


def mount_words(designation: str) -> str:
    """The designation as it stands before 'body': 'C' becomes 'C-mount', what is in brackets is left out."""
    short = re.split(r" \(|, ", designation)[0]
    return f"{short}-mount" if len(short) <= 4 and short.isalnum() else short
