"""The order of chains, best first, and how the best few are found without judging them all."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from heapq import heapify, heappop, heappush
from typing import Any

from engine.base.interval import is_known
from engine.chains.ring_map import Joint, Ring
from engine.chains.search import Found, Search
from engine.chains.setup import Setup
from engine.facts.records import VERDICTS
from engine.judging.judge import CERTAINTIES, Floor, Judged

Rank = tuple[Any, ...]


@dataclass(frozen=True, slots=True)
class Focus:
    """What the rank by numbers needs, in whole micrometres: the two registers, the allowance and the lens's reach.

    `None` where unknown: then every chain may still be the best.
    """

    difference_um: int | None  # lens register - body register
    allowance_um: int | None
    reach_um: int | None  # how far the lens's own focusing can make up for sitting too close
    certain_mounts: bool


def focus_of(setup: Setup, lens_register: object, body_register: object, allowance: object, reach: object) -> Focus:
    """Micrometres of the nominal values; None for what is not known."""

    def um(value: object) -> int | None:
        return round(value.nominal * 1000) if is_known(value) else None

    lens, body = um(lens_register), um(body_register)
    return Focus(
        None if lens is None or body is None else lens - body,
        um(allowance),
        um(reach),
        setup.lens_mount.basis.is_strong and setup.body_mount.basis.is_strong,
    )


def nearness_um(least_um: int, greatest_um: int, allowance_um: int) -> int:
    """How far a register error that can be set to `least_um`..`greatest_um` stays from right, beyond the allowance."""
    return max(0, least_um - allowance_um, -greatest_um - allowance_um)


def possible_rank(focus: Focus, with_tubes: bool = False) -> Callable[[Found], Rank]:
    """The best rank that a chain can still have, from its numbers alone: never worse than the judged one.

    `with_tubes`: where the chain alone sits too close, the best that it can have once tubes are put to it.
    """

    def rank(found: Found) -> Rank:
        verdict, near = 0, 0
        if focus.difference_um is not None and focus.allowance_um is not None and found.known and not found.glass:
            least, greatest = found.least_um - focus.difference_um, found.greatest_um - focus.difference_um
            near = nearness_um(least, greatest, focus.allowance_um)
            if least > focus.allowance_um:
                verdict = 1
            elif focus.reach_um is not None and greatest + focus.reach_um < -focus.allowance_um:
                verdict = 2
        if verdict == 2 and with_tubes:
            return (0, 0, 1, 0, found.pieces + 1, found.glass, found.bought, found.price_cents, found.ids)
        certainty = 0 if found.measured and focus.certain_mounts else 1
        return (verdict, 0, certainty, near, found.pieces, found.glass, found.bought, found.price_cents, found.ids)

    return rank


def judged_rank(found: Found, judged: Judged, focus: Focus) -> Rank:
    """Verdict, danger, certainty, nearness to the right seat, pieces, glass, bought, price, ids: least is best."""
    bound = possible_rank(focus)(found)
    return (
        VERDICTS.index(judged.verdict),
        int(any(finding.severity == "danger" for finding in judged.findings)),
        CERTAINTIES.index(judged.certainty),
        *bound[3:],
    )


def raised(bound: Rank, floor: Floor) -> Rank:
    """A possible rank with what no chain on this setup can better."""
    return (
        max(bound[0], floor.verdict), max(bound[1], floor.danger), max(bound[2], floor.certainty), *bound[3:]
    )  # fmt: skip


@dataclass(frozen=True, slots=True)
class Listed:
    """A chain of the answer with its rank, and the sets of tubes told together with it."""

    found: Found
    judged: Judged
    rank: Rank
    tube_sets: tuple[tuple[str, ...], ...] = ()


def core_of(found: Found) -> tuple[str, ...]:
    """The ids of a chain without its tubes: chains with the same core are told as one."""
    return tuple(
        step.id if isinstance(step, Ring) else f"{step.front}>{step.rear}"
        for step in found.steps
        if isinstance(step, Joint) or step.front != step.rear
    )


def best_chains(
    search: Search,
    focus: Focus,
    judge: Callable[[Found], Judged],
    floor_of: Callable[[Judged], Floor],
    most: int,
    accept: Callable[[Judged], bool] = lambda judged: True,
) -> tuple[Listed, ...]:
    """The `most` best chains, exact: judging goes on until what has been judged can no longer be beaten.

    Tubes are tried where the rest alone is unusable (too close, or the rear touches); sets of tubes around the same
    rest count as one chain.
    """
    order = possible_rank(focus, with_tubes=not search.wanted.tubes)
    by_numbers = possible_rank(focus)
    waiting: list[tuple[Rank, int, Found]] = [(order(found), n, found) for n, found in enumerate(search.chains())]
    heapify(waiting)
    counter = len(waiting)
    listed: list[Listed] = []
    floor: Floor | None = None
    while waiting:
        bound, _, found = heappop(waiting)
        if floor is not None and len(listed) >= most and raised(bound, floor) > listed[most - 1].rank:
            break
        judged = judge(found)
        floor = floor or floor_of(judged)
        hopeless = floor.verdict == VERDICTS.index("unusable")
        if judged.verdict == "unusable" and not hopeless and not search.wanted.tubes and not _has_tube(found):
            for longer in search.with_tubes(found):
                heappush(waiting, (by_numbers(longer), counter, longer))
                counter += 1
        if accept(judged):
            _enter(listed, Listed(found, judged, judged_rank(found, judged, focus)))
    return tuple(listed[:most])


def _has_tube(found: Found) -> bool:
    return any(isinstance(step, Ring) and step.front == step.rear for step in found.steps)


def _enter(listed: list[Listed], new: Listed) -> None:
    """Put a chain in its place; of several with the same core the best stands for all."""
    core = core_of(new.found)
    for n, old in enumerate(listed):
        if core and core_of(old.found) == core:
            best, other = (old, new) if old.rank <= new.rank else (new, old)
            sets = dict.fromkeys((*best.tube_sets, *_tubes(other), *other.tube_sets))
            del listed[n]
            new = Listed(best.found, best.judged, best.rank, tuple(sets)[:8])
            break
    at = next((n for n, old in enumerate(listed) if new.rank < old.rank), len(listed))
    listed.insert(at, new)


def _tubes(listed: Listed) -> tuple[tuple[str, ...], ...]:
    tubes = tuple(step.id for step in listed.found.steps if isinstance(step, Ring) and step.front == step.rear)
    return (tubes,) if tubes else ()
