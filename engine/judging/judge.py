"""Findings, verdict and certainty of a chain, read off its quantities by the rules."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Final

from engine.base.compact import compact
from engine.base.interval import Interval, Unknown
from engine.chains.lens_and_body import setup_givens
from engine.chains.setup import Facts, Setup
from engine.chains.walk import Chain, Link, Seat, piece_givens, seat_givens, seat_of
from engine.facts.guidance import Rule
from engine.facts.kinds import VERDICTS
from engine.judging.applies import UNDECIDED, Holds, holds
from engine.judging.settled import Settled
from engine.physics.trace import Given, Trace
from grammar.conditions import Condition

CERTAINTIES: Final = ("certain", "likely", "borderline", "unknown")  # surest first


@compact
class RuleCase:
    """A rule with its condition read."""

    rule: Rule
    condition: Condition


@compact
class Finding:
    """A rule that holds, or that could not be decided. `holds.now`: at the nominal values."""

    rule: Rule
    severity: str
    limits: str | None
    decided: bool
    holds: Holds


@compact
class Judged:
    chain: Chain
    setup: Setup
    seats: tuple[Seat, ...]
    verdict: str
    best: str
    worst: str
    certainty: str
    findings: tuple[Finding, ...]
    trace: Trace  # everything that is not known taken into account
    measured_trace: Trace  # known tolerances alone, assumptions at their likeliest


@compact
class Floor:
    """What no chain on this setup can better, because rules that do not look at the chain settle it.

    `undecided`: what rules that nothing decides would lower the verdict to; a chain above that is never certain.
    """

    verdict: int = 0
    danger: int = 0
    undecided: int = 0


def worse(one: str, other: str) -> str:
    return VERDICTS[max(VERDICTS.index(one), VERDICTS.index(other))]


def nominal_where_assumed(given: Mapping[str, Given]) -> dict[str, Given]:
    """The same with every assumed interval at its likeliest value: what known tolerances alone leave open."""
    out = dict(given)
    for name, row in given.items():
        if row.assumed and isinstance(row.value, Interval):
            out[name] = Given(Interval.exact(row.value.nominal), row.says, row.sources, row.confidence, True)
    return out


class Judge:
    """Judges chains on one setup. What does not hang on the chain is worked out once."""

    def __init__(self, setup: Setup, facts: Facts, cases: Sequence[RuleCase]) -> None:
        self.setup = setup
        self.facts = facts
        self.cases = cases
        self._given = setup_givens(setup, facts)
        self._likeliest = nominal_where_assumed(self._given)
        self._settled: dict[str, tuple[Holds, Holds]] | None = None
        self._seats: dict[tuple[int, bool], Seat] = {}

    def judge(self, chain: Chain) -> Judged:
        """The verdict at the nominal values, how sure it is, and every finding."""
        setup, facts = self.setup, self.facts
        rows, made_right = self._seated(chain, True), self._seated(chain, False)
        pieces = piece_givens(chain, setup, facts)
        trace = Trace({**self._given, **seat_givens(rows, chain, setup, facts), **pieces})
        known = Trace({**self._likeliest, **seat_givens(made_right, chain, setup, facts), **pieces})
        if self._settled is None:
            on_all = Settled(self._likeliest)
            self._settled = {
                case.rule.id: (holds(case.condition, trace), holds(case.condition, known))
                for case in self.cases
                if on_all.covers(case.condition)
            }
        findings: list[Finding] = []
        limits = _Limits()
        for case in self.cases:
            settled = self._settled.get(case.rule.id)
            whole = settled[0] if settled else holds(case.condition, trace)
            if whole.extent == "no" and not self._is_open(case.rule):
                continue
            narrow = settled[1] if settled else holds(case.condition, known)
            if not narrow.now and self._is_open(case.rule):
                narrow = UNDECIDED  # what is usual for lenses of a kind is no tolerance: this one's own decides
            limits.add(case.rule.limits, whole, narrow)
            if narrow.now:
                findings.append(Finding(case.rule, case.rule.severity, case.rule.limits, True, whole))
            elif narrow.extent == "unknown" and (case.rule.undecided or case.rule.limits):
                findings.append(Finding(case.rule, case.rule.severity, case.rule.limits, False, whole))
        verdict, best, worst = limits.verdicts()
        certainty = limits.certainty(_strong(chain, setup))
        return Judged(chain, setup, rows, verdict, best, worst, certainty, tuple(findings), trace, known)

    def _is_open(self, rule: Rule) -> bool:
        """Whether what the rule hangs on is only assumed."""
        return bool(rule.hangs_on) and self._given[rule.hangs_on].assumed

    def _seated(self, chain: Chain, with_spread: bool) -> tuple[Seat, ...]:
        """The seats of a chain; that of a link, which many chains of the setup share, is worked out once."""
        return tuple(self._seat(link, with_spread) for link in chain.links)

    def _seat(self, link: Link, with_spread: bool) -> Seat:
        key = (id(link), with_spread)  # the seat holds its link, so no other can come to have its place
        seat = self._seats.get(key)
        if seat is None:
            seat = self._seats[key] = seat_of(link, self.setup, self.facts, with_spread)
        return seat

    def floor(self) -> Floor:
        """What rules that do not look at the chain have settled, once one was judged, for every chain on the setup."""
        verdict = danger = undecided = 0
        for case in self.cases:
            limit = VERDICTS.index(case.rule.limits) if case.rule.limits else 0
            if self._is_open(case.rule):
                undecided = max(undecided, limit)  # no chain decides it for the better
            settled = (self._settled or {}).get(case.rule.id)
            if settled is None:
                continue
            outcome = settled[1]
            if outcome.now:
                verdict = max(verdict, limit)
                danger = max(danger, int(case.rule.severity == "danger"))
            if outcome.extent == "unknown":
                undecided = max(undecided, limit)
        return Floor(verdict, danger, undecided)


def judge(chain: Chain, setup: Setup, facts: Facts, cases: Sequence[RuleCase]) -> Judged:
    """One chain on one setup, judged."""
    return Judge(setup, facts, cases).judge(chain)


class _Limits:
    """What the rules lower the verdict to: now, surely, perhaps, and within known tolerances alone."""

    def __init__(self) -> None:
        self.now = self.surely = self.perhaps = self.known_surely = self.known_perhaps = self.undecided = VERDICTS[0]

    def add(self, limit: str | None, whole: Holds, narrow: Holds) -> None:
        if limit is None:
            return
        if narrow.now:
            self.now = worse(self.now, limit)
        if whole.extent == "yes":
            self.surely = worse(self.surely, limit)
        self.perhaps = worse(self.perhaps, limit)
        if narrow.extent == "yes":
            self.known_surely = worse(self.known_surely, limit)
        if narrow.extent in ("yes", "sometimes"):
            self.known_perhaps = worse(self.known_perhaps, limit)
        if narrow.extent == "unknown":
            self.undecided = worse(self.undecided, limit)

    def verdicts(self) -> tuple[str, str, str]:
        """At nominal values, at best, at worst."""
        return self.now, self.surely, self.perhaps

    def certainty(self, strong: bool) -> str:
        if worse(self.now, self.undecided) != self.now:
            return "unknown"
        if self.known_surely != self.known_perhaps:
            return "borderline"
        if self.surely != self.perhaps or not strong:
            return "likely"
        return "certain"


def _strong(chain: Chain, setup: Setup) -> bool:
    """Whether every fact that the seat rests on is standard, told by two sources, or measured."""
    lens, body = setup.lens, setup.body
    own_lens, own_body = not isinstance(lens.register_mm, Unknown), not isinstance(body.register_mm, Unknown)
    if not own_lens and isinstance(setup.lens_mount.register_mm, Unknown):
        return False  # at best what is usual for such lenses
    return (
        (lens.basis if own_lens else setup.lens_mount.basis).is_strong
        and (body.basis if own_body else setup.body_mount.basis).is_strong
        and all(adapter.seat_basis == "measured" and adapter.basis.is_strong for adapter in chain.adapters)
    )
