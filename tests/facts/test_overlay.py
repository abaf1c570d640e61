"""Layers over each other: what a later one adds, replaces or may not touch, and in which order problems come."""

from pathlib import Path

import pytest

from engine.base.interval import Interval
from engine.facts.files import Layer
from engine.facts.overlay import Loaded, load

BASE = (Path(__file__).parent / "base.yaml").read_text()


@pytest.fixture
def layers(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[Layer]:
    """Shipped facts in kb/, further ones in more/, and gear.yaml; the last two empty."""
    monkeypatch.chdir(tmp_path)
    for folder in ("kb", "more"):
        (tmp_path / folder).mkdir()
    (tmp_path / "kb" / "base.yaml").write_text(BASE)
    return [Layer("shipped", "kb"), Layer("extra", "more"), Layer("gear", "gear.yaml", needed=False)]


def loaded(layers: list[Layer], more: str = "", gear: str = "") -> Loaded:
    Path("more/m.yaml").write_text(more)
    Path("gear.yaml").write_text(gear)
    return load(layers)


def test_gear_is_laid_over_the_facts_and_known_as_such(layers: list[Layer]) -> None:
    facts = loaded(layers, gear="lenses: {tern: {mount: c}}")
    assert facts.problems == ()
    assert facts.gear_ids == {"tern"}
    assert list(facts.tables["lenses"]) == ["tern"]
    assert {"c", "m42", "e-mount"} <= set(facts.tables["mounts"])


def test_own_is_always_a_source(layers: list[Layer]) -> None:
    assert "own" in loaded(layers).tables["sources"]


def test_clash_with_an_earlier_layer_names_both_places(layers: list[Layer]) -> None:
    facts = loaded(layers, gear="mounts:\n  c: {designation: C, kind: cine, register: 17 mm}\n")
    assert [str(problem) for problem in facts.problems] == [
        "gear.yaml:2:3: found mount 'c' again, expected an id of its own, or 'overrides: yes'"
        " (it stands at kb/base.yaml:11:3 already)"
    ]
    assert facts.tables["mounts"]["c"].register_mm == Interval.exact(17.526)


def test_override_is_kept_in_the_place_of_the_earlier_record(layers: list[Layer]) -> None:
    facts = loaded(layers, gear="mounts: {c: {designation: C, kind: cine, register: 17 mm, overrides: yes}}")
    assert facts.problems == ()
    assert facts.tables["mounts"]["c"].register_mm == Interval.exact(17)
    assert next(iter(facts.tables["mounts"])) == "c"


def test_bad_override_leaves_the_earlier_record(layers: list[Layer]) -> None:
    facts = loaded(layers, gear="mounts: {c: {designation: C, kind: cine, register: 17, overrides: yes}}")
    assert len(facts.problems) == 1
    assert facts.tables["mounts"]["c"].register_mm == Interval.exact(17.526)


def test_later_layer_may_refer_to_an_earlier_one_but_not_the_other_way_round(layers: list[Layer]) -> None:
    mount = "mounts: {q: {designation: Q, kind: slr, confidence: memory, sources: [S1]}}"
    assert loaded(layers, more=mount, gear="lenses: {tern: {mount: q}}").problems == ()
    lens = "lenses: {tern: {name: Tern, mount: q, confidence: memory, sources: [S1]}}"
    facts = loaded(layers, more=lens, gear="mounts: {q: {designation: Q, kind: slr}}")
    assert [str(problem) for problem in facts.problems] == [
        "more/m.yaml:1:36: found mount 'q', expected a mount in the facts"
    ]


def test_problems_of_earlier_layers_come_first(layers: list[Layer]) -> None:
    facts = loaded(layers, more="lens: {}", gear="mount: {}")
    assert [problem.place.file for problem in facts.problems] == ["more/m.yaml", "gear.yaml"]


def test_further_facts_must_name_their_sources(layers: list[Layer]) -> None:
    facts = loaded(layers, more="terms: {seat: {names: [seat], means: where it rests}}")
    assert len(facts.problems) == 2
