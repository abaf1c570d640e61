"""The rules with their conditions read, and what is wrong with those that cannot be."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from hashlib import sha256
from pathlib import Path

from engine.base.problem import Problem, nearest_of
from engine.facts import cache
from engine.facts.guidance import Rule
from engine.judging.judge import RuleCase
from engine.physics.given import GIVEN_NAMES
from engine.physics.quantities import NAMES
from grammar.conditions import from_plain, parse_condition, template_names, to_plain
from grammar.values import Fault

SLOT = "conditions"


def rule_cases(rules: Iterable[Rule], cached: bool = True) -> tuple[tuple[RuleCase, ...], tuple[Problem, ...]]:
    """Each rule with its condition; a rule that names what nobody knows is a problem and is left out.

    `cached`: conditions that were read before, from the same texts by the same program, may be used and are kept.
    """
    rows = list(rules)
    key = _key(rows) if cached else ""
    kept = _kept(rows, key) if cached else None
    if kept is not None:
        return kept, ()
    cases, problems = _read(rows)
    if cached and not problems:
        cache.keep_at(SLOT, key, [to_plain(case.condition) for case in cases])
    return cases, problems


def _key(rules: Sequence[Rule]) -> str:
    """Changes with the rules' texts, the names they may use, and what reads them."""
    import grammar.conditions

    digest = sha256("\n".join(sorted(NAMES)).encode())
    here = Path(grammar.conditions.__file__)
    for file in (here, here.with_name("condition.lark")):
        digest.update(file.read_bytes())
    for rule in rules:
        digest.update(
            "\0".join(
                (rule.id, rule.when, rule.because, rule.undecided, rule.remedy or "", rule.brief, rule.hangs_on)
            ).encode()
        )
    return digest.hexdigest()


def _kept(rules: Sequence[Rule], key: str) -> tuple[RuleCase, ...] | None:
    plain = cache.kept_at(SLOT, key)
    if not isinstance(plain, list) or len(plain) != len(rules):
        return None
    try:
        return tuple(RuleCase(rule, from_plain(row)) for rule, row in zip(rules, plain, strict=True))
    except ValueError:
        return None


def _read(rules: Sequence[Rule]) -> tuple[tuple[RuleCase, ...], tuple[Problem, ...]]:
    cases: list[RuleCase] = []
    problems: list[Problem] = []
    for rule in rules:
        condition = parse_condition(rule.when, NAMES)
        if isinstance(condition, Fault):
            found = f"{condition.found} at {condition.offset + 1} of the condition of '{rule.id}'"
            problems.append(Problem(rule.place, found, condition.expected, condition.nearest))
            continue
        texts = (rule.because, rule.undecided, rule.remedy or "", rule.brief)
        unknown = [name for text in texts for name in template_names(text) if name not in NAMES]
        if unknown:
            found = f"quantity '{unknown[0]}' in a sentence of '{rule.id}'"
            problems.append(Problem(rule.place, found, "a named quantity", nearest_of(unknown[0], NAMES)))
            continue
        if rule.hangs_on and rule.hangs_on not in GIVEN_NAMES:
            found = f"quantity '{rule.hangs_on}' that '{rule.id}' hangs on"
            problems.append(Problem(rule.place, found, "a given quantity", nearest_of(rule.hangs_on, GIVEN_NAMES)))
            continue
        cases.append(RuleCase(rule, condition))
    return tuple(cases), tuple(problems)
