"""The order of chains, best first, and how the best few are found without judging them all."""

from __future__ import annotations

from bisect import insort_right
from collections.abc import Callable
from heapq import heapify, heappop, heappush
from typing import Any, Final

from engine.base.compact import compact
from engine.base.interval import is_known
from engine.base.span import Span
from engine.chains.ring_map import Joint, Ring
from engine.chains.search import Found, Search
from engine.facts.kinds import VERDICTS
from engine.judging.by_numbers import Focus, extension_um, nearness_um
from engine.judging.judge import CERTAINTIES, Floor, Judged

MOST_TUBE_SETS: Final = 8  # told beside the best around the same rest
Rank = tuple[Any, ...]
Order = Callable[[Rank], Rank]


def usual(rank: Rank) -> Rank:
    """Verdict, danger, certainty, nearness to the right seat, pieces, glass, bought, price, ids: least is best."""
    return rank


def fewest_pieces(rank: Rank) -> Rank:
    """Where pieces were named: no more beside them than are needed, then no more joints, then as ever."""
    return (rank[4], len(rank[-1]), *rank)


def usable_first(rank: Rank) -> Rank:
    """Where a kind of piece was named and no piece itself: of no use comes last, then as where pieces were named."""
    return (rank[0] == VERDICTS.index("unusable"), *fewest_pieces(rank))


def cheapest(rank: Rank) -> Rank:
    """Verdict and danger first as ever, then the price."""
    verdict, danger, certainty, near, pieces, glass, bought, price, ids = rank
    return (verdict, danger, price, certainty, near, pieces, glass, bought, ids)


def possible_rank(focus: Focus, with_tubes: bool = False) -> Callable[[Found], Rank]:
    """The best rank that a chain can still have, from its numbers alone: never worse than the judged one.

    `with_tubes`: where the chain alone sits too close, the best that it can have once tubes are put to it.
    """

    def rank(found: Found) -> Rank:
        verdict, near = 0, 0
        ends = extension_um(found, focus)
        if ends is not None and focus.allowance_um is not None:
            least, greatest, factor = ends
            allowance = round(focus.allowance_um / factor)
            near = nearness_um(least, greatest, focus.allowance_um)  # that glass forgives more makes it no nearer
            if least > allowance:
                verdict = 1
            elif focus.reach_um is not None and greatest + focus.reach_um < -allowance:
                verdict = 2
        if verdict == 2 and with_tubes:
            return (0, 0, 1, 0, found.pieces + 1, found.glass, found.bought, found.price_cents, found.ids)
        certainty = 0 if found.measured and focus.certain_mounts else 1
        return (verdict, 0, certainty, near, found.pieces, found.glass, found.bought, found.price_cents, found.ids)

    return rank


def judged_rank(found: Found, judged: Judged, focus: Focus) -> Rank:
    """Verdict, danger, certainty, nearness to the right seat, pieces, glass, bought, price, ids: least is best."""
    bound = possible_rank(focus)(found)
    near = bound[3] if extension_um(found, focus) is not None else _judged_nearness_um(judged)
    return (
        VERDICTS.index(judged.verdict),
        int(any(finding.severity == "danger" for finding in judged.findings)),
        CERTAINTIES.index(judged.certainty),
        near,
        *bound[4:],
    )


def _judged_nearness_um(judged: Judged) -> int:
    """How far a chain stays from right by its judged seat, where its own numbers do not tell (glass behind a lens of
    no register of its own): a chain is no better for being less well known."""
    error = judged.trace.value("register_error_mm")
    if not isinstance(error, Span) or not (is_known(error.shortest) and is_known(error.longest)):
        return 0
    return nearness_um(round(error.shortest.nominal * 1000), round(error.longest.nominal * 1000), 0)


def raised(bound: Rank, floor: Floor) -> Rank:
    """A possible rank with what no chain on this setup can better."""
    verdict = max(bound[0], floor.verdict)
    certainty = len(CERTAINTIES) - 1 if floor.undecided > verdict else bound[2]
    return (verdict, max(bound[1], floor.danger), certainty, *bound[3:])


@compact
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


class Shortlist:
    """Chains by rank, best first; of several with the same core the best stands for all."""

    def __init__(self) -> None:
        self.rows: list[Listed] = []
        self._by_core: dict[tuple[str, ...], Listed] = {}

    def enter(self, new: Listed) -> None:
        """Put a chain in its place."""
        core = core_of(new.found)
        old = self._by_core.get(core) if core else None
        if old is not None:
            best, other = (old, new) if old.rank <= new.rank else (new, old)
            sets = dict.fromkeys((*best.tube_sets, *_tubes(other), *other.tube_sets))
            del self.rows[next(n for n, row in enumerate(self.rows) if row is old)]
            new = Listed(best.found, best.judged, best.rank, tuple(sets)[:MOST_TUBE_SETS])
        self._by_core[core] = new
        insort_right(self.rows, new, key=_rank_of)

    def has_enough_like(self, found: Found, rank: Rank) -> bool:
        """Whether a chain of tubes, of this rank at best, changes nothing: a better one and enough sets are told."""
        listed = self._by_core.get(core_of(found)) if _has_tube(found) else None
        return listed is not None and len(listed.tube_sets) == MOST_TUBE_SETS and listed.rank <= rank

    def beats(self, rank: Rank, most: int) -> bool:
        """Whether the `most` best are all better than any chain of this rank."""
        return len(self.rows) >= most and rank > self.rows[most - 1].rank


def _rank_of(listed: Listed) -> Rank:
    return listed.rank


def best_chains(
    search: Search,
    focus: Focus,
    judge: Callable[[Found], Judged],
    floor_of: Callable[[], Floor],
    most: int,
    accept: Callable[[Judged], bool] = lambda judged: True,
    ordered: Order = usual,
) -> tuple[Listed, ...]:
    """The `most` best chains, exact: judging goes on until what has been judged can no longer be beaten.

    Tubes are tried where the rest alone is unusable (too close, or the rear touches) for a reason that more length may
    lift; sets of tubes around the same rest count as one chain.
    """
    possible, numbers = possible_rank(focus, with_tubes=not search.wanted.tubes), possible_rank(focus)

    def by_numbers(found: Found) -> Rank:
        return ordered(numbers(found))

    waiting: list[tuple[Rank, int, Found]] = [
        (ordered(possible(found)), n, found) for n, found in enumerate(search.chains())
    ]
    heapify(waiting)
    counter = len(waiting)
    best = Shortlist()
    floor: Floor | None = None
    lengthened: set[tuple[str, ...]] = set()
    while waiting:
        bound, _, found = heappop(waiting)
        lengthens = bound != by_numbers(found)
        told = possible(found) if lengthens else numbers(found)
        if floor is not None and best.beats(ordered(raised(told, floor)), most):
            break
        if lengthens:
            # its place in the row was that of its tubes: put them, and itself, where their own numbers belong
            lengthened.add(found.ids)
            for row in (found, *search.with_telling_tubes(found)):
                heappush(waiting, (by_numbers(row), counter, row))
                counter += 1
            continue
        if floor is not None and best.has_enough_like(found, ordered(raised(told, floor))):
            continue
        judged = judge(found)
        floor = floor or floor_of()
        hopeless = floor.verdict == VERDICTS.index("unusable") or _stands_when_longer(judged)
        alone = not search.wanted.tubes and not _has_tube(found) and found.ids not in lengthened
        if judged.verdict == "unusable" and not hopeless and alone:
            for longer in search.with_telling_tubes(found):
                heappush(waiting, (by_numbers(longer), counter, longer))
                counter += 1
        if accept(judged):
            best.enter(Listed(found, judged, ordered(judged_rank(found, judged, focus))))
    return tuple(best.rows[:most])


def _stands_when_longer(judged: Judged) -> bool:
    """Whether a rule settles that the chain is unusable, and no tube lifts it."""
    return any(
        finding.rule.stands_when_longer and finding.decided and finding.limits == judged.verdict
        for finding in judged.findings
    )


def _has_tube(found: Found) -> bool:
    return any(isinstance(step, Ring) and step.front == step.rear for step in found.steps)


def _tubes(listed: Listed) -> tuple[tuple[str, ...], ...]:
    tubes = tuple(step.id for step in listed.found.steps if isinstance(step, Ring) and step.front == step.rear)
    return (tubes,) if tubes else ()
