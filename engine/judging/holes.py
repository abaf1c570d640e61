"""What facts and gear leave open as a whole: lenses that no chain brings onto a body, ways that hang on one record."""

from __future__ import annotations

from collections.abc import Iterator
from typing import TYPE_CHECKING, Final

from engine.base.compact import compact
from engine.base.place import Place
from engine.chains.graph import graph_of, leading_to, reached_from, sole_parts
from engine.chains.ring_map import RingMap
from engine.facts.catalogue import Catalogue

if TYPE_CHECKING:
    from engine.chains.graph import Map

IN_USE: Final = "mirrorless"  # the kind of the bodies that old lenses are put on
AHEAD_OF_A_LENS: Final = "filter"  # the kind of the threads at the front of a lens
NO_SEAT: Final = "thread-only"  # the trait of a thread that nothing is seated on


@compact
class Hole:
    """Something that is left open, in a sentence; it is nobody's mistake. `place`: of the record that it is about."""

    told: str
    place: Place | None = None

    def __str__(self) -> str:
        return f"note: {self.told}" if self.place is None else f"{self.place}: note: {self.told}"


def holes_of_gear(catalogue: Catalogue, rings: RingMap) -> Iterator[Hole]:
    """One's own lenses that no known chain brings onto a body of one's own, and rings that serve none of them."""
    own = catalogue.gear_ids
    lenses = [lens for lens in catalogue.lenses.values() if lens.id in own]
    goals = {body.mount for body in catalogue.bodies.values() if body.id in own}
    if not lenses or not goals:
        return
    graph = graph_of(rings, catalogue.mounts)
    served, reached = leading_to(graph, goals), reached_from(graph, {lens.mount for lens in lenses})
    for lens in lenses:
        if lens.mount not in served:
            yield Hole(
                f"no ring that is known brings '{lens.id}' (mount {lens.mount}) onto a body of yours", lens.place
            )
    for ring in catalogue.adapters.values():
        ends = (catalogue.mounts[ring.front], catalogue.mounts[ring.rear])
        if ring.id not in own or any(mount.kind == AHEAD_OF_A_LENS for mount in ends):
            continue
        if ring.front not in reached or ring.rear not in served:
            yield Hole(f"'{ring.id}' helps none of your lenses onto a body of yours", ring.place)


def holes_of_facts(catalogue: Catalogue, rings: RingMap) -> Iterator[Hole]:
    """What the keeper of the facts may want to fill: mounts without a way, rings that lead nowhere, weak only ways."""
    mounts = catalogue.mounts
    goals = {body.mount for body in catalogue.bodies.values() if mounts[body.mount].kind == IN_USE}
    graph = graph_of(rings, mounts)
    yield from _without_a_way(catalogue, graph, goals)
    carried = leading_to(graph, {body.mount for body in catalogue.bodies.values()})
    for ring in catalogue.adapters.values():
        rear = mounts[ring.rear]
        if ring.rear not in carried and rear.kind != AHEAD_OF_A_LENS and NO_SEAT not in rear.traits:
            yield Hole(f"'{ring.id}' leads to {rear.id}, and from there no chain leads to any body", ring.place)
    for part, all_hanging in sole_parts(graph, goals).items():
        only = catalogue.adapters.get(part)
        hanging = tuple(name for name in all_hanging if mounts[name].kind != AHEAD_OF_A_LENS)
        if only is not None and hanging and not only.basis.is_strong:
            told = f"every way from {', '.join(hanging)} to a {IN_USE} body goes through '{part}'"
            yield Hole(f"{told}, which rests on {only.basis.confidence}", only.place)


def _without_a_way(catalogue: Catalogue, graph: Map, goals: set[str]) -> Iterator[Hole]:
    """The mounts of lenses that no chain leads from to a body in use, a line a kind."""
    led, lost = leading_to(graph, goals), dict[str, list[str]]()
    for mount in catalogue.mounts.values():
        if mount.id not in led and mount.kind != AHEAD_OF_A_LENS and NO_SEAT not in mount.traits:
            lost.setdefault(mount.kind, []).append(mount.id)
    for kind, names in sorted(lost.items()):
        yield Hole(f"no chain leads to a {IN_USE} body from {kind} mounts ({len(names)}): {', '.join(sorted(names))}")
