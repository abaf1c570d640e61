"""What the body is to be told: the settings whose condition holds on a trace."""

from __future__ import annotations

from collections.abc import Iterable, Iterator

from engine.base.problem import Problem
from engine.facts.guidance import Rule, Setting
from engine.judging.applies import holds
from engine.judging.cases import rule_cases
from engine.judging.judge import RuleCase
from engine.physics.trace import Trace


def setting_cases(settings: Iterable[Setting]) -> tuple[tuple[RuleCase, ...], tuple[Problem, ...]]:
    """Each setting with its condition read, as a rule that lowers nothing."""
    rows = (Rule(row.id, row.when, row.says, "note", place=row.place) for row in settings)
    return rule_cases(rows, cached=False)


def settings_that_hold(cases: Iterable[RuleCase], trace: Trace) -> Iterator[Rule]:
    """Those that hold at the nominal values; one that cannot be decided is not told."""
    return (case.rule for case in cases if holds(case.condition, trace).now)
