"""The bodies on which a plain ring, or a cup, seats a lens at its register: where else it would do."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Final

from engine.answers.parts.answer import Line, Quantity, Told
from engine.answers.parts.knowledge import Knowledge
from engine.answers.parts.wording import listed, small_mm
from engine.base.interval import is_known
from engine.facts.records import Mount

MOST: Final = 10
KINDS: Final = ("mirrorless", "industrial", "slr")  # of bodies, the likeliest to be owned first


def rings_onward(lens: Mount, knowledge: Knowledge) -> Iterator[tuple[Mount, float, bool]]:
    """(body mount, seat in mm, whether it needs a cup) for each single ring without glass cut to hold infinity."""
    if not is_known(lens.register_mm):
        return
    facts = knowledge.catalogue
    off = facts.assumptions["making-spread-nominal"].value.greatest
    for rear, rings in knowledge.rings.onward.get(lens.id, {}).items():
        body = facts.mounts[rear]
        if body.kind not in KINDS or not is_known(body.register_mm) or "thread-only" in body.traits:
            continue
        right = lens.register_mm.nominal - body.register_mm.nominal
        for ring in rings:
            near = ring.known and ring.least_um / 1000 - off <= right <= ring.greatest_um / 1000 + off
            if near and not ring.glass:
                yield body, right, right < 0  # a seat inside the body is a cup, whatever the piece is called
                break


def elsewhere(lens: Mount, knowledge: Knowledge, but: str | None = None, most: int = MOST) -> Told:
    """On which bodies such a lens reaches infinity by one ring, the plain ones first."""
    rows = [row for row in rings_onward(lens, knowledge) if row[0].id != but]
    plain = [row for row in rows if not row[2]]
    rows = sorted(plain or rows, key=lambda row: (KINDS.index(row[0].kind), row[1], row[0].id))[:most]
    if not rows:
        return Told()
    words = [f"{mount.designation} {small_mm(seat)}" for mount, seat, _ in rows]
    what = "a plain ring" if plain else "a cup"
    from engine.base.interval import Interval

    quantities = tuple(Quantity("ring_thickness_mm", Interval.exact(seat), mount.id) for mount, seat, _ in rows)
    lead = f"On other bodies {what} keeps infinity:" if but else f"{what.capitalize()} keeps infinity on"
    line = Line("text", f"{lead} {listed(words)}.")
    return Told((line,), quantities)
