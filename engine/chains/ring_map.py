"""The map that the search walks: mounts, the adapters between them, and the joints that need no adapter."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping
from typing import Final

from engine.base.compact import compact, field, replace
from engine.base.interval import is_known
from engine.facts.records import Adapter, Mount

# an adapter whose price nobody told stands behind every one that has a price
UNPRICED: Final = 10_000_000


@compact
class Ring:
    """An adapter as the search sees it: whole micrometres, whole cents, and its twins.

    `variants` are adapters that differ from it in nothing that a reader cares about.
    """

    id: str
    front: str
    rear: str
    least_um: int
    greatest_um: int
    known: bool  # whether the thickness is known; 0 stands in where it is not
    glass: bool
    own: bool
    price_cents: int
    measured: bool  # measured by hand, on a record that can be trusted
    factor: float = 1.0  # of its glass
    off_um: int | None = None  # what it adds to the register error beyond its thickness; None: not known
    variants: tuple[str, ...] = ()


@compact
class Joint:
    """Two mounts that meet with nothing between: a thread that takes another, or a shared bayonet."""

    front: str
    rear: str
    kind: str  # thread | bayonet | held: against a mount that does not take it
    outcome: str  # same | loose | binds | jams | bayonet | held
    off_um: int | None = None  # what it adds to the register error; None: a register is not known


JointFinder = Callable[[str], tuple[Joint, ...]]


@compact
class RingMap:
    onward: Mapping[str, Mapping[str, tuple[Ring, ...]]]  # front -> rear -> rings
    tubes: Mapping[str, tuple[Ring, ...]]
    joints: JointFinder  # from a mount: what it goes into although nothing stands between
    backward: Mapping[str, frozenset[str]]  # rear -> fronts
    joints_into: Callable[[str], tuple[str, ...]]  # into a mount: the mounts that go into it
    copies: Mapping[str, int] = field(default_factory=dict)  # how many of a tube may be used; else one


def off_um(front: str, rear: str, mounts: Mapping[str, Mount]) -> int | None:
    """Register of the rear mount less that of the front mount, in whole micrometres; None where one is not known."""
    one, other = mounts.get(front), mounts.get(rear)
    if one is None or other is None or not (is_known(one.register_mm) and is_known(other.register_mm)):
        return None
    return round((other.register_mm.nominal - one.register_mm.nominal) * 1000)


def ring_of(adapter: Adapter, mounts: Mapping[str, Mount]) -> Ring:
    """The adapter in whole micrometres and cents."""
    shortest, longest = adapter.thickness_mm.shortest, adapter.thickness_mm.longest
    known = is_known(shortest) and is_known(longest)
    low = round(shortest.nominal * 1000) if is_known(shortest) else 0
    high = round(longest.nominal * 1000) if is_known(longest) else 0
    price = adapter.price_usd
    return Ring(
        adapter.id, adapter.front, adapter.rear, low, high, known, adapter.has_glass, adapter.owned > 0,
        0 if adapter.owned else round(price[0] * 100) if price else UNPRICED,
        adapter.seat_basis == "measured" and adapter.basis.is_strong,
        adapter.factor or 1.0, off_um(adapter.front, adapter.rear, mounts),
    )  # fmt: skip


def _likeness(adapter: Adapter) -> tuple[object, ...]:
    """What a reader cares about in an adapter. Adapters alike in this are told as one, with the variants named."""
    cup = (adapter.cup.bore_mm, adapter.cup.depth_mm) if adapter.cup else None
    return (
        adapter.kind, adapter.thickness_mm, adapter.factor, adapter.iris, adapter.electronics,
        cup, adapter.clear_diameter_mm, adapter.owned > 0, adapter.seat_basis,
    )  # fmt: skip


def rings_of(adapters: Iterable[Adapter], mounts: Mapping[str, Mount]) -> tuple[Ring, ...]:
    """Every adapter as a ring, twins folded into the cheapest; tubes at hand never, since two alike can be stacked."""
    groups: dict[tuple[object, ...], list[Adapter]] = {}
    for adapter in adapters:
        single = adapter.id if adapter.owned and adapter.front == adapter.rear else ""
        groups.setdefault((adapter.front, adapter.rear, single, *_likeness(adapter)), []).append(adapter)
    rings = []
    for twins in groups.values():
        rows = sorted((ring_of(twin, mounts) for twin in twins), key=lambda ring: (ring.price_cents, ring.id))
        first = rows[0]
        if len(rows) > 1:
            first = replace(first, variants=tuple(row.id for row in rows[1:]))
        rings.append(first)
    return tuple(rings)


def map_of(
    rings: Iterable[Ring],
    joints: JointFinder = lambda mount: (),
    joints_into: Callable[[str], tuple[str, ...]] = lambda mount: (),
    copies: Mapping[str, int] | None = None,
) -> RingMap:
    """The map of these rings. `joints`, `joints_into`: mounts that meet a mount with nothing between."""
    onward: dict[str, dict[str, list[Ring]]] = {}
    tubes: dict[str, list[Ring]] = {}
    backward: dict[str, set[str]] = {}
    for ring in rings:
        if ring.front == ring.rear:
            tubes.setdefault(ring.front, []).append(ring)
        else:
            onward.setdefault(ring.front, {}).setdefault(ring.rear, []).append(ring)
            backward.setdefault(ring.rear, set()).add(ring.front)
    return RingMap(
        {front: {rear: tuple(row) for rear, row in rears.items()} for front, rears in onward.items()},
        {mount: tuple(sorted(row, key=lambda ring: ring.id)) for mount, row in tubes.items()},
        joints,
        {rear: frozenset(fronts) for rear, fronts in backward.items()},
        joints_into,
        copies or {},
    )


def shared_bayonets(mounts: Mapping[str, Mount]) -> dict[str, tuple[Joint, ...]]:
    """Mount -> the mounts whose body takes its bayonet as it is, whatever the register."""
    return {
        mount.id: tuple(
            Joint(mount.id, other, "bayonet", "bayonet", off_um(mount.id, other, mounts))
            for other in mount.shares_bayonet
        )
        for mount in mounts.values()
        if mount.shares_bayonet
    }
