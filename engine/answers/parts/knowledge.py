"""All that is known, made ready to answer with: the facts, the map of adapters and the rules with conditions read."""

from __future__ import annotations

from collections.abc import Callable, Iterable
from functools import cached_property
from typing import TypeVar

from engine.base.compact import compact, replace
from engine.base.problem import Problem
from engine.chains.joints import Joints
from engine.chains.ring_map import Ring, RingMap, map_of, rings_of
from engine.chains.search import MOST_PIECES, Found, Search, Wanted
from engine.chains.setup import Setup
from engine.chains.walk import Chain, givens
from engine.facts.catalogue import Catalogue
from engine.facts.kinds import ADAPTER_KINDS, DRAWN_OUT, GLASS_KINDS
from engine.facts.records import Adapter
from engine.judging.by_numbers import focus_of
from engine.judging.cases import rule_cases
from engine.judging.judge import Judge, Judged, RuleCase, judge
from engine.judging.ranking import (
    Listed,
    Order,
    best_chains,
    cheapest,
    fewest_pieces,
    usable_first,
    usual,
)
from engine.judging.senseless import is_senseless
from engine.physics.trace import Trace
from grammar.questions import Limits

K = TypeVar("K")
V = TypeVar("V")


@compact(slots=False)
class Knowledge:
    """What a question is answered from. `cases`: every rule with its condition read."""

    catalogue: Catalogue
    cases: tuple[RuleCase, ...]
    problems: tuple[Problem, ...] = ()

    @staticmethod
    def of(catalogue: Catalogue) -> Knowledge:
        """The facts with every rule's condition read; what cannot be read is a problem and left out."""
        cases, problems = rule_cases(catalogue.rules.values())
        return Knowledge(catalogue, cases, problems)

    @cached_property
    def chosen(self) -> dict[tuple[Setup, Limits, int], Choice]:
        """What was chosen last, the latest at the end: `choose` fills it."""
        return {}

    @cached_property
    def told(self) -> dict[tuple[Adapter, ...], Knowledge]:
        """The same with adapters that were told last: `with_adapters` fills it."""
        return {}

    @cached_property
    def joints(self) -> Joints:
        values = {name: row.value for name, row in self.catalogue.assumptions.items()}
        return Joints(self.catalogue.mounts, self.catalogue.threads, values)

    @cached_property
    def rings(self) -> RingMap:
        adapters = self.catalogue.adapters.values()
        copies = {adapter.id: adapter.owned for adapter in adapters if adapter.owned > 1}
        return map_of(rings_of(adapters, self.catalogue.mounts), self.joints.onward, self.joints.into, copies)

    def with_adapters(self, adapters: tuple[Adapter, ...]) -> Knowledge:
        """The same with further adapters, for a ring that the question describes."""
        if not adapters:
            return self
        if adapters not in self.told:
            table = {**self.catalogue.adapters, **{adapter.id: adapter for adapter in adapters}}
            told = Knowledge(replace(self.catalogue, adapters=table), self.cases)
            told.__dict__["joints"] = self.joints  # of the mounts and threads, which are the same
            _put(self.told, adapters, told, MOST_TOLD)
        return self.told[adapters]

    def chain_of(self, found: Found) -> Chain:
        """The chain found, with its adapters' records."""
        links = tuple(self.catalogue.adapters[step.id] if isinstance(step, Ring) else step for step in found.steps)
        variants = {step.id: step.variants for step in found.steps if isinstance(step, Ring) and step.variants}
        return Chain(links, variants)

    def judged(self, found: Found, setup: Setup) -> Judged:
        return judge(self.chain_of(found), setup, self.catalogue, self.cases)

    def judge_of(self, setup: Setup) -> Judge:
        return Judge(setup, self.catalogue, self.cases)

    def judge_chain(self, chain: Chain, setup: Setup) -> Judged:
        return judge(chain, setup, self.catalogue, self.cases)


_FACTOR = "factor "  # before the factor of glass that was named by that alone
MOST_GLASS = 1  # nobody looks through two correcting lenses, unless they were asked for


@compact
class Choice:
    """The chains for a setup, best first. `capped`: the search stopped before it had seen all."""

    listed: tuple[Listed, ...]
    capped: bool


MOST_KEPT = 256  # choices that are kept for the next turns, or the next reading, of a talk about the same pairs
MOST_TOLD = 4  # sets of rings told, each with the map that they make


def choose(knowledge: Knowledge, setup: Setup, limits: Limits, most: int) -> Choice:
    """The `most` best chains within the limits, judged exactly."""
    wanted, kept = (setup, limits, most), knowledge.chosen
    if wanted not in kept:
        _put(kept, wanted, _choose(knowledge, setup, limits, most), MOST_KEPT)
    return kept[wanted]


def _put(kept: dict[K, V], key: K, value: V, most: int) -> None:
    """Keep a value, and no more than so many: the oldest goes."""
    if len(kept) >= most:
        del kept[next(iter(kept))]
    kept[key] = value


def _choose(knowledge: Knowledge, setup: Setup, limits: Limits, most: int) -> Choice:
    allowed = _allowed(knowledge, limits)
    tubes = any(_is_tube(knowledge, name) for names in limits.using for name in names.split("|"))
    adapters = knowledge.catalogue.adapters
    wanted_names = [frozenset(names.split("|")) for names in limits.using]
    with_glass = sum(_is_glass(knowledge, names) for names in limits.using)
    most_glass = with_glass or (limits.pieces or MOST_PIECES if limits.with_glass else MOST_GLASS)

    def accepted(found: Found) -> bool:
        return not found.glass or sum(step.glass for step in found.steps if isinstance(step, Ring)) <= most_glass

    known_parts: dict[str, int] = {}  # a ring is met on many chains

    def part_of(ring: Ring) -> int:
        if ring.id not in known_parts:
            called = names_of((adapters[ring.id],), ring.variants)
            known_parts[ring.id] = sum(1 << n for n, names in enumerate(wanted_names) if not names.isdisjoint(called))
        return known_parts[ring.id]

    wanted = Wanted(
        setup.lens_mount.id, setup.body_mount.id, limits.pieces if limits.pieces is not None else MOST_PIECES,
        tubes, allowed, (1 << len(wanted_names)) - 1, part_of, accepted,
    )  # fmt: skip
    search = Search(knowledge.rings, wanted)
    start = Trace(givens(Chain((), {}), setup, knowledge.catalogue, with_spread=False))
    focus = focus_of(
        setup, start.value("lens_register_mm"), start.value("body_register_mm"),
        start.value("infinity_allowance_mm"), start.value("usual_travel_mm"), knowledge.catalogue,
    )  # fmt: skip

    def accept(judged: Judged) -> bool:
        glass = any(adapter.has_glass for adapter in judged.chain.adapters)
        if limits.with_glass and not glass:
            return False
        if glass and judged.verdict != "infinity" and not (limits.with_glass or limits.using):
            return False  # a correcting lens that corrects nothing
        if limits.price_usd is not None and _cheapest(judged.chain) > limits.price_usd:
            return False
        if not limits.using and is_senseless(judged, knowledge.catalogue):
            return False
        return not (limits.at_least == "infinity" and judged.verdict != "infinity")

    bench = knowledge.judge_of(setup)
    order = cheapest if limits.cheapest else _order_of(limits.using, knowledge)
    listed = best_chains(
        search, focus, lambda found: bench.judge(knowledge.chain_of(found)), bench.floor, most, accept, order
    )  # fmt: skip
    return Choice(listed, search.capped)


def _order_of(using: tuple[str, ...], knowledge: Knowledge) -> Order:
    """The order where pieces were named: of a kind alone there may be one that does, so one of no use comes last.

    A mount that the way leads by names no piece: 'C to CS to E' wants the ring between the two.
    """
    if all(name in knowledge.catalogue.mounts for name in using):
        return usual
    return usable_first if all(name in ADAPTER_KINDS for name in using) else fewest_pieces


def _cheapest(chain: Chain) -> float:
    """The least the pieces not owned may cost, in dollars; a piece without a known price counts as infinite."""
    total = 0.0
    for adapter in chain.adapters:
        if not adapter.owned:
            total += adapter.price_usd[0] if adapter.price_usd else float("inf")
    return total


def _is_tube(knowledge: Knowledge, name: str) -> bool:
    adapter = knowledge.catalogue.adapters.get(name)
    if name.startswith(_FACTOR):
        return float(name.removeprefix(_FACTOR)) > 1  # an extender stands on the lens's own mount, as a tube does
    return adapter.stackable if adapter else name in ("extension-tube", "helicoid", "bellows", "teleconverter")


def _is_glass(knowledge: Knowledge, names: str) -> bool:
    """Whether what was named (alternatives parted by '|') has glass."""
    adapters = knowledge.catalogue.adapters
    return any(
        adapters[name].has_glass if name in adapters else name in GLASS_KINDS or name.startswith(_FACTOR)
        for name in names.split("|")
    )


def _allowed(knowledge: Knowledge, limits: Limits) -> Callable[[Ring], bool]:
    adapters = knowledge.catalogue.adapters
    without = frozenset(limits.without)
    named_tubes = frozenset(name for name in limits.using if _is_tube(knowledge, name))

    settled: dict[str, bool] = {}  # the search asks for a ring once on every walk that comes by it

    def allowed(ring: Ring) -> bool:
        if ring.id not in settled:
            settled[ring.id] = is_allowed(ring)
        return settled[ring.id]

    def is_allowed(ring: Ring) -> bool:
        if limits.without_glass and ring.glass:
            return False
        if limits.owned_only and not ring.own:
            return False
        adapter = adapters[ring.id]
        if without and (adapter.id in without or adapter.kind in without or {adapter.front, adapter.rear} & without):
            return False
        if named_tubes and (ring.front == ring.rear or adapter.kind in DRAWN_OUT):
            # the tubes that were named, and no others beside them
            factor = f"{_FACTOR}{adapter.factor:g}" if adapter.factor is not None else ""
            told = {adapter.id, adapter.kind, f"{adapter.front}>{adapter.rear}", factor}
            return bool({*named_tubes, *limits.using} & told)
        # converters keep the seat and multiply the focal length: they are used where they are asked for
        if ring.glass and ring.front == ring.rear:
            return limits.with_glass or adapter.id in limits.using or adapter.kind in limits.using
        return True

    return allowed


def names_of(adapters: Iterable[Adapter], twins: Iterable[str]) -> frozenset[str]:
    """Everything that a chain's pieces answer to: ids, kinds, mounts, pairs of mounts, factors."""
    names = set(twins)
    for adapter in adapters:
        names |= {adapter.id, adapter.kind, adapter.front, adapter.rear, f"{adapter.front}>{adapter.rear}"}
        if adapter.factor is not None:
            names.add(f"{_FACTOR}{adapter.factor:g}")
    return frozenset(names)
