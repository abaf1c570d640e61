"""Findings, verdict and certainty of a chain, read off its quantities by the rules."""

from __future__ import annotations

from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass
from typing import Final

from engine.base.interval import Interval, Unknown
from engine.base.span import Span
from engine.chains.setup import Facts, Setup
from engine.chains.walk import CHAIN_NAMES, Chain, Seat, givens, seats
from engine.facts.records import VERDICTS, Rule
from engine.judging.applies import Holds, holds
from engine.physics.quantities import QUANTITIES
from engine.physics.trace import Given, Trace
from grammar.conditions import Condition, names_in

CERTAINTIES: Final = ("certain", "likely", "borderline", "unknown")  # surest first


@dataclass(frozen=True, slots=True)
class RuleCase:
    """A rule with its condition read."""

    rule: Rule
    condition: Condition


@dataclass(frozen=True, slots=True)
class Finding:
    """A rule that holds, or that could not be decided. `holds.now`: at the nominal values."""

    rule: Rule
    severity: str
    limits: str | None
    decided: bool
    holds: Holds


@dataclass(frozen=True, slots=True)
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


@dataclass(frozen=True, slots=True)
class Floor:
    """What no chain on this setup can better, because rules that do not look at the chain settle it."""

    verdict: int = 0
    danger: int = 0
    certainty: int = 0


def worse(one: str, other: str) -> str:
    return VERDICTS[max(VERDICTS.index(one), VERDICTS.index(other))]


def _lowered(limits: Sequence[str]) -> str:
    verdict = VERDICTS[0]
    for limit in limits:
        verdict = worse(verdict, limit)
    return verdict


def nominal_where_assumed(given: Mapping[str, Given]) -> dict[str, Given]:
    """The same with every assumed interval at its likeliest value: what known tolerances alone leave open."""
    out = dict(given)
    for name, row in given.items():
        if row.assumed and isinstance(row.value, Interval):
            out[name] = Given(Interval.exact(row.value.nominal), row.says, row.sources, row.confidence, True)
    return out


def judge(chain: Chain, setup: Setup, facts: Facts, cases: Sequence[RuleCase]) -> Judged:
    """The verdict at the nominal values, how sure it is, and every finding."""
    trace = Trace(givens(chain, setup, facts))
    known = Trace(nominal_where_assumed(givens(chain, setup, facts, with_spread=False)))
    findings: list[Finding] = []
    now: list[str] = []
    surely: list[str] = []
    perhaps: list[str] = []
    known_surely: list[str] = []
    known_perhaps: list[str] = []
    undecided: list[str] = []
    for case in cases:
        rule = case.rule
        whole = holds(case.condition, trace)
        if whole.extent == "no":
            continue
        narrow = holds(case.condition, known)
        if rule.limits:
            if narrow.now:
                now.append(rule.limits)
            if whole.extent == "yes":
                surely.append(rule.limits)
            perhaps.append(rule.limits)
            if narrow.extent == "yes":
                known_surely.append(rule.limits)
            if narrow.extent in ("yes", "sometimes"):
                known_perhaps.append(rule.limits)
            if narrow.extent == "unknown":
                undecided.append(rule.limits)
        if narrow.now:
            findings.append(Finding(rule, rule.severity, rule.limits, True, whole))
        elif narrow.extent == "unknown" and (rule.undecided or rule.limits):
            findings.append(Finding(rule, rule.severity, rule.limits, False, whole))
    verdict = _lowered(now)
    best, worst = _lowered(surely), _lowered(perhaps)
    certainty = _certainty(
        verdict, best, worst, (_lowered(known_surely), _lowered(known_perhaps)), _lowered(undecided),
        _strong(chain, setup, facts),
    )  # fmt: skip
    rows = seats(chain, setup, facts, with_spread=True)
    return Judged(chain, setup, rows, verdict, best, worst, certainty, tuple(findings), trace, known)


def _certainty(
    verdict: str, best: str, worst: str, known: tuple[str, str], undecided: str, strong: bool
) -> str:
    if worse(verdict, undecided) != verdict:
        return "unknown"
    if known[0] != known[1]:
        return "borderline"
    if best != worst or not strong:
        return "likely"
    return "certain"


def _strong(chain: Chain, setup: Setup, facts: Facts) -> bool:
    """Whether every fact that the seat rests on is standard, told by two sources, or measured."""
    lens, body = setup.lens, setup.body
    own_lens, own_body = not isinstance(lens.register_mm, Unknown), not isinstance(body.register_mm, Unknown)
    return (
        (lens.basis if own_lens else setup.lens_mount.basis).is_strong
        and (body.basis if own_body else setup.body_mount.basis).is_strong
        and all(adapter.seat_basis == "measured" and adapter.basis.is_strong for adapter in chain.adapters)
    )


def floor_of(judged: Judged, cases: Sequence[RuleCase]) -> Floor:
    """What rules that do not look at the chain have settled already, for every chain on this setup."""
    verdict = danger = certainty = 0
    for case in cases:
        if not all(_settled(name, judged.measured_trace) for name in names_in(case.condition)):
            continue
        found = holds(case.condition, judged.measured_trace)
        if found.now:
            if case.rule.limits:
                verdict = max(verdict, VERDICTS.index(case.rule.limits))
            danger = max(danger, int(case.rule.severity == "danger"))
    for case in cases:
        if case.rule.limits and VERDICTS.index(case.rule.limits) > verdict:
            settled = all(_settled(name, judged.measured_trace) for name in names_in(case.condition))
            if settled and holds(case.condition, judged.measured_trace).extent == "unknown":
                certainty = len(CERTAINTIES) - 1
    return Floor(verdict, danger, certainty)


def _settled(name: str, trace: Trace) -> bool:
    """Whether a quantity is the same whatever the chain: it does not need it, or is unknown without it."""
    if name in trace.given:
        return name not in CHAIN_NAMES
    roots = _roots(name, set())
    fixed = [root for root in roots if root in trace.given and root not in CHAIN_NAMES]
    if len(fixed) == len(roots):
        return True
    return any(_absent(trace.given[root].value) for root in fixed) and _absent(trace.value(name))


def _absent(value: object) -> bool:
    if isinstance(value, Span):
        return isinstance(value.shortest, Unknown) or isinstance(value.longest, Unknown)
    return isinstance(value, Unknown)


def _roots(name: str, seen: set[str]) -> Collection[str]:
    """The given quantities that a quantity is worked out from."""
    if name in seen:
        return ()
    seen.add(name)
    quantity = QUANTITIES.get(name)
    if quantity is None:
        return {name}
    return {root for need in quantity.needs for root in _roots(need, seen)}
