"""The checks between facts: what the engine counts on is asked for by name."""

from __future__ import annotations

from pathlib import Path

import engine
from engine.base.compact import replace
from engine.facts.catalogue import Catalogue, load_catalogue
from engine.judging.checks import NEEDED_ASSUMPTIONS, problems_of


def _shipped() -> Catalogue:
    return load_catalogue(cached=False)[0]


def test_every_assumption_that_the_engine_names_is_asked_for() -> None:
    source = "".join(path.read_text(encoding="utf-8") for path in Path(engine.__path__[0]).rglob("*.py"))
    named = {id_ for id_ in _shipped().assumptions if source.count(f'"{id_}"') > 0}
    assert named == set(NEEDED_ASSUMPTIONS)


def test_a_missing_assumption_is_told_with_the_nearest_good_one() -> None:
    facts = _shipped()
    left = {id_: row for id_, row in facts.assumptions.items() if id_ != "paper-stop"}
    told = [str(problem) for problem in problems_of(replace(facts, assumptions=left))]
    assert len(told) == 1
    assert "no assumption 'paper-stop'" in told[0]


def test_a_group_of_words_that_nothing_asks_for_is_told_and_one_that_has_no_words(tmp_path: Path) -> None:
    (tmp_path / "words.yaml").write_text("words:\n  more: {means: group scales, says: [dial]}\n", encoding="utf-8")
    facts, problems = load_catalogue((tmp_path,), cached=False)
    assert not problems
    (told,) = [str(problem) for problem in problems_of(facts)]
    assert "found group 'scales'" in told
    assert told.endswith("nearest: scale")
    left = {id_: word for id_, word in facts.words.items() if word.means not in ("group scale", "group scales")}
    (told,) = [str(problem) for problem in problems_of(replace(facts, words=left))]
    assert "no words of group 'scale'" in told


def test_a_cue_of_advice_that_no_word_asks_is_told_with_the_nearest() -> None:
    facts = _shipped()
    heavy = replace(facts.advice["heavy"], cue="wieght")
    (told,) = [str(problem) for problem in problems_of(replace(facts, advice={**facts.advice, "heavy": heavy}))]
    assert "found cue 'wieght'" in told
    assert told.endswith("nearest: weight")


def test_a_number_word_of_no_class_or_no_number_is_told(tmp_path: Path) -> None:
    (tmp_path / "words.yaml").write_text(
        "words:\n  more: {means: numeral units 11, says: [elf]}\n  less: {means: numeral ten x, says: [tenty]}\n",
        "utf-8",
    )
    facts, problems = load_catalogue((tmp_path,), cached=False)
    assert not problems
    told = [str(problem) for problem in problems_of(facts)]
    assert len(told) == 2
    assert told[0].endswith(
        "expected 'numeral', one of unit, ten, part, share, and a whole number above 0; nearest: unit"
    )
    assert "found 'numeral ten x'" in told[1]


def test_two_own_lenses_of_one_name_are_told(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(
        "lenses:\n  one: {name: avocet, mount: c}\n  two: {name: knot, aliases: [Avocet], mount: m42}\n"
        "  three: {name: plover, mount: m42}\n",
        encoding="utf-8",
    )
    facts, problems = load_catalogue((), gear, cached=False)
    assert not problems
    (told,) = [str(problem) for problem in problems_of(facts)]
    assert told.endswith(":3:3: found name 'avocet', expected a name that 'one' does not carry too")
