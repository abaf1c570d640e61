"""The rules with their conditions read, and what is wrong with those that cannot be."""

from __future__ import annotations

from collections.abc import Iterable

from engine.base.problem import Problem, nearest_of
from engine.facts.records import Rule
from engine.judging.judge import RuleCase
from engine.physics.quantities import NAMES
from grammar.conditions import parse_condition, template_names
from grammar.values import Fault


def rule_cases(rules: Iterable[Rule]) -> tuple[tuple[RuleCase, ...], tuple[Problem, ...]]:
    """Each rule with its condition; a rule that names what nobody knows is a problem and is left out."""
    cases: list[RuleCase] = []
    problems: list[Problem] = []
    for rule in rules:
        condition = parse_condition(rule.when, NAMES)
        if isinstance(condition, Fault):
            found = f"{condition.found} at {condition.offset + 1} of the condition of '{rule.id}'"
            problems.append(Problem(rule.place, found, condition.expected, condition.nearest))
            continue
        unknown = [
            name
            for text in (rule.because, rule.undecided, rule.remedy or "")
            for name in template_names(text)
            if name not in NAMES
        ]
        if unknown:
            near = nearest_of(unknown[0], NAMES)
            problems.append(Problem(rule.place, f"quantity '{unknown[0]}' in a sentence of '{rule.id}'", "a named quantity", near))
            continue
        cases.append(RuleCase(rule, condition))
    return tuple(cases), tuple(problems)
