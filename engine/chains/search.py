"""Chains of adapters from a lens mount to a body mount, handed out by the best rank each can still have."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Sequence
from itertools import combinations, product
from typing import Any, Final

from engine.base.compact import compact
from engine.chains.ring_map import Joint, Ring, RingMap

MOST_PIECES: Final = 4
# Beyond this many chains the search stops and says so; real maps stay far below it.
MOST_CHAINS: Final = 400_000

Step = Ring | Joint


@compact
class Found:
    """A chain by numbers alone. `least_um`..`greatest_um` is the sum of its thicknesses."""

    steps: tuple[Step, ...]
    least_um: int
    greatest_um: int
    pieces: int
    glass: bool
    bought: int
    price_cents: int
    known: bool
    measured: bool
    ids: tuple[str, ...] = ()


@compact
class Wanted:
    """What the chains must keep to. `tubes`: whether stackable tubes may stand anywhere in the chain."""

    start: str
    goal: str
    most_pieces: int = MOST_PIECES
    tubes: bool = False
    allowed: Callable[[Ring], bool] = lambda ring: True
    parts: int = 0  # what the chain must hold, a bit each
    part_of: Callable[[Ring], int] = lambda ring: 0  # which of these parts a ring is
    accepted: Callable[[Found], bool] = lambda found: True  # of a whole chain, before anything is worked out


def pieces_to_goal(rings: RingMap, goal: str, most: int) -> dict[str, int]:
    """Mount -> the fewest adapters from it to `goal`, for those within `most`. Joints cost nothing."""
    cost = {goal: 0}
    front = [goal]
    for pieces in range(most + 1):
        queue = list(front)
        while queue:  # joints first: they stay on this level
            mount = queue.pop()
            for before in rings.joints_into(mount):
                if before not in cost:
                    cost[before] = pieces
                    queue.append(before)
                    front.append(before)
        following = []
        for mount in front:
            for before in rings.backward.get(mount, ()):
                if before not in cost:
                    cost[before] = pieces + 1
                    following.append(before)
        front = following
    return {mount: pieces for mount, pieces in cost.items() if pieces <= most}


def _walks(rings: RingMap, wanted: Wanted) -> Iterator[tuple[tuple[Joint | tuple[str, str], ...], tuple[str, ...]]]:
    """Every walk over mounts within the pieces allowed, no mount entered twice: (hops, mounts stood on).

    A hop is a joint, or the pair of mounts that an adapter joins. Two joints never follow each other: between two
    joints there would have to be a part.
    """
    far = pieces_to_goal(rings, wanted.goal, wanted.most_pieces)
    if wanted.start not in far:
        return
    stack: list[tuple[str, int, tuple[Any, ...], tuple[str, ...], bool]] = [
        (wanted.start, 0, (), (wanted.start,), False)
    ]
    while stack:
        mount, used, hops, stood, jointed = stack.pop()
        if mount == wanted.goal:
            yield hops, stood
            continue
        left = wanted.most_pieces - used
        for rear in rings.onward.get(mount, {}):
            if rear not in stood and far.get(rear, left) <= left - 1:
                stack.append((rear, used + 1, (*hops, (mount, rear)), (*stood, rear), False))
        if not jointed:
            for joint in rings.joints(mount):
                if joint.rear not in stood and far.get(joint.rear, left + 1) <= left:
                    stack.append((joint.rear, used, (*hops, joint), (*stood, joint.rear), True))


def _tube_sets(
    rings: RingMap, stood: Sequence[str], most: int, wanted: Wanted, lacking: int = 0
) -> Iterator[tuple[tuple[int, Ring], ...]]:
    """Sets of at most `most` tubes over the mounts of a walk, as (position, tube); a tube as often as it is owned.

    `lacking`: parts that the rest does not hold, so that the tubes must.
    """
    pool = [
        (position, tube)
        for position, mount in enumerate(stood)
        for tube in rings.tubes.get(mount, ())
        if wanted.allowed(tube)
        for _ in range(max(1, rings.copies.get(tube.id, 1)))
    ]
    seen = set()
    part_of = {tube.id: wanted.part_of(tube) for _, tube in pool} if lacking else {}
    for size in range(1, most + 1):
        for chosen in combinations(pool, size):
            if lacking and lacking & ~_all_of(part_of[tube.id] for _, tube in chosen):
                continue
            key = tuple((position, tube.id) for position, tube in chosen)
            if key not in seen:
                seen.add(key)
                yield chosen


def _all_of(parts: Iterable[int]) -> int:
    held = 0
    for part in parts:
        held |= part
    return held


def found_of(steps: tuple[Step, ...]) -> Found:
    """The numbers of a chain, summed over its adapters."""
    least = greatest = pieces = bought = price = 0
    glass, known, measured = False, True, True
    for step in steps:
        if isinstance(step, Joint):
            continue
        pieces += 1
        least += step.least_um
        greatest += step.greatest_um
        bought += not step.own
        price += step.price_cents
        glass = glass or step.glass
        known = known and step.known
        measured = measured and step.measured
    return Found(steps, least, greatest, pieces, glass, bought, price, known, measured, _ids_of(steps))


def _ids_of(steps: tuple[Step, ...]) -> tuple[str, ...]:
    return tuple([f"{step.front}>{step.rear}" if isinstance(step, Joint) else step.id for step in steps])


def _with_tubes(core: tuple[Step, ...], tubes: Sequence[tuple[int, Ring]]) -> tuple[Step, ...]:
    """The core with each tube on the mount it stands on: position 0 is ahead of the first step."""
    steps: list[Step] = []
    for position in range(len(core) + 1):
        steps += [tube for at, tube in tubes if at == position]
        if position < len(core):
            steps.append(core[position])
    return tuple(steps)


@compact(frozen=False)
class Search:
    """All chains for what is wanted. `capped` turns true where MOST_CHAINS was reached."""

    rings: RingMap
    wanted: Wanted
    capped: bool = False
    _count: int = 0

    def chains(self) -> Iterator[Found]:
        """Every chain, in no order; tubes are left out unless wanted."""
        for hops, stood in _walks(self.rings, self.wanted):
            choices: list[list[Step]] = [
                [hop] if isinstance(hop, Joint) else [*filter(self.wanted.allowed, self.rings.onward[hop[0]][hop[1]])]
                for hop in hops
            ]
            pieces = sum(not isinstance(hop, Joint) for hop in hops)
            for core in product(*choices):
                if self._full():
                    return
                lacking = self._lacking(core)
                if not lacking and self.wanted.accepted(found := found_of(core)):
                    yield found
                if self.wanted.tubes:
                    yield from self._tubed(core, stood, self.wanted.most_pieces - pieces, lacking)

    def _lacking(self, core: tuple[Step, ...]) -> int:
        """The parts wanted that a chain does not hold."""
        if not self.wanted.parts:
            return 0
        rings = (step for step in core if isinstance(step, Ring))
        return self.wanted.parts & ~_all_of(map(self.wanted.part_of, rings))

    def with_telling_tubes(self, core: Found) -> Iterator[Found]:
        """The chain with sets of tubes, of those alike in every number the first by price and ids alone.

        Chains that differ in nothing but which tubes make up the same length are told as one, so the others need not
        be looked at; there may be tens of thousands of them.
        """
        stood = [self.wanted.start, *(step.rear for step in core.steps)]
        best: dict[tuple[Any, ...], tuple[int, tuple[tuple[int, Ring], ...]]] = {}
        lacking = self._lacking(core.steps)
        for chosen in _tube_sets(self.rings, stood, self.wanted.most_pieces - core.pieces, self.wanted, lacking):
            least = greatest = price = bought = 0
            glass, known, measured = False, True, True
            for _, tube in chosen:
                least += tube.least_um
                greatest += tube.greatest_um
                price += tube.price_cents
                bought += not tube.own
                glass = glass or tube.glass
                known = known and tube.known
                measured = measured and tube.measured
            # ahead of glass or behind it, a tube counts differently
            places = tuple(position for position, _ in chosen) if glass or core.glass else ()
            key = (least, greatest, len(chosen), bought, glass, known, measured, places)
            if key not in best or price < best[key][0]:
                best[key] = (price, chosen)
        for (least, greatest, _, bought, glass, known, measured, _), (price, chosen) in best.items():
            steps = _with_tubes(core.steps, chosen)
            found = Found(
                steps, core.least_um + least, core.greatest_um + greatest, core.pieces + len(chosen),
                core.glass or glass, core.bought + bought, core.price_cents + price, core.known and known,
                core.measured and measured, _ids_of(steps),
            )  # fmt: skip
            if self.wanted.accepted(found):
                yield found

    def _tubed(self, core: tuple[Step, ...], stood: Sequence[str], most: int, lacking: int) -> Iterator[Found]:
        for tubes in _tube_sets(self.rings, stood, most, self.wanted, lacking):
            if self._full():
                return
            found = found_of(_with_tubes(core, tubes))
            if self.wanted.accepted(found):
                yield found

    def _full(self) -> bool:
        self._count += 1
        if self._count > MOST_CHAINS:
            self.capped = True
        return self.capped
