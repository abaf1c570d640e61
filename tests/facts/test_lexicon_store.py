"""The lexicon kept prepared: the same as a built one, built again when anything changed, and never in the way."""

import json
from pathlib import Path
from typing import Any

import pytest

from engine.base.compact import replace
from engine.facts import cache, lexicon_store
from engine.facts.catalogue import Catalogue
from engine.facts.files import Layer
from engine.facts.lexicon_store import built, lexicon_of
from engine.facts.overlay import load
from grammar.words.lexicon import Lexicon

BASE = (Path(__file__).parent / "base.yaml").read_text()
GEAR = "lenses:\n  tern: {mount: c, focal_length: 25 mm, f_number: f/1.4, aliases: [my tern]}\n"
WORDS = """
words:
  get: {means: ask get, says: [get, put]}
  ring: {means: piece adapter, says: [ring, step ring]}
  lens: {means: lens, says: [lens]}
  wants: {means: intent chain, says: [get 2, lens !ring 1.5]}
  over: {means: order start-over, says: [start over]}
  scale: {means: group scale, says: [barrel, 'ring*']}
  forty: {means: numeral ten 40, says: [forty]}
"""


@pytest.fixture
def layers(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[Layer]:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("RINGPATH_CACHE", str(tmp_path / "cache"))
    (tmp_path / "kb").mkdir()
    (tmp_path / "kb" / "base.yaml").write_text(BASE)
    (tmp_path / "kb" / "words.yaml").write_text(WORDS)
    (tmp_path / "gear.yaml").write_text(GEAR)
    return [Layer("shipped", "kb"), Layer("gear", "gear.yaml")]


def catalogue(layers: list[Layer], cached: bool = True) -> Catalogue:
    loaded = load(layers, cached)
    assert loaded.problems == ()
    return Catalogue.of(loaded)


def in_a_new_run(facts: Catalogue) -> Lexicon:
    """The lexicon as a run has it that has asked nothing yet."""
    lexicon_store._last.clear()
    return lexicon_of(facts)


def slot(tmp_path: Path) -> Path:
    return tmp_path / "cache" / "ringpath" / "lexicon-own.json"


def forbid_building(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise AssertionError("built again")

    monkeypatch.setattr(Lexicon, "build", fail)


def test_kept_lexicon_equals_the_built_one(layers: list[Layer], monkeypatch: pytest.MonkeyPatch) -> None:
    facts = catalogue(layers)
    fresh = built(facts)
    assert fresh.words.orders == {"startover": "start-over"}
    assert fresh.own == {"tern"}
    assert in_a_new_run(facts) == fresh
    forbid_building(monkeypatch)
    assert in_a_new_run(catalogue(layers)) == fresh


def test_a_question_without_the_gear_leaves_the_lexicon_of_the_gear_kept(
    layers: list[Layer], monkeypatch: pytest.MonkeyPatch
) -> None:
    with_gear = in_a_new_run(catalogue(layers))
    assert in_a_new_run(catalogue(layers[:1])).own == frozenset()
    forbid_building(monkeypatch)
    assert in_a_new_run(catalogue(layers)) == with_gear


def test_changed_gear_or_words_are_heard_at_once(layers: list[Layer]) -> None:
    assert "myhawk" not in in_a_new_run(catalogue(layers)).names
    Path("gear.yaml").write_text(GEAR.replace("my tern", "my hawk"))
    assert "myhawk" in in_a_new_run(catalogue(layers)).names
    Path("kb/words.yaml").write_text(WORDS.replace("step ring", "tube ring"))
    assert "tubering" in in_a_new_run(catalogue(layers)).words.phrases
    assert in_a_new_run(catalogue(layers[:1])).own == frozenset()


def test_changed_code_builds_it_anew(layers: list[Layer], monkeypatch: pytest.MonkeyPatch) -> None:
    facts = catalogue(layers)
    in_a_new_run(facts)
    monkeypatch.setattr(lexicon_store, "_BUILT_BY", ("atoms.py",))
    forbid_building(monkeypatch)
    with pytest.raises(AssertionError, match="built again"):
        in_a_new_run(facts)


@pytest.mark.parametrize(
    "spoil",
    [
        lambda data: b"",
        lambda data: data[:-20],
        lambda data: data.replace(b"tern", b"hawk"),
        lambda data: b"\x80\x04K\x01.",
    ],
    ids=["empty", "torn", "changed", "pickled"],
)
def test_spoilt_lexicon_is_passed_over_and_mended(spoil: Any, layers: list[Layer], tmp_path: Path) -> None:
    facts = catalogue(layers)
    fresh = in_a_new_run(facts)
    good = slot(tmp_path).read_bytes()
    slot(tmp_path).write_bytes(spoil(good))
    assert in_a_new_run(facts) == fresh
    assert slot(tmp_path).read_bytes() == good


@pytest.mark.parametrize("payload", [[], {}, "x", {"names": 3}])
def test_payload_that_is_no_lexicon_is_passed_over(
    payload: Any, layers: list[Layer], monkeypatch: pytest.MonkeyPatch
) -> None:
    facts = catalogue(layers)
    monkeypatch.setattr(cache, "kept_at", lambda *_: payload)
    assert in_a_new_run(facts) == built(facts)


def test_nothing_is_kept_of_facts_that_are_not(layers: list[Layer], tmp_path: Path) -> None:
    in_a_new_run(catalogue(layers, cached=False))
    assert not slot(tmp_path).exists()
    Path("gear.yaml").write_text("lens: {}")
    loaded = load(layers, cached=True)
    assert (len(loaded.problems), loaded.key) == (1, "")
    in_a_new_run(Catalogue.of(loaded))
    assert not slot(tmp_path).exists()


def test_key_tells_facts_apart_and_is_empty_where_nothing_is_kept(
    layers: list[Layer], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert load(layers).key == ""
    key = load(layers, cached=True).key
    assert key == load(layers, cached=True).key != ""
    assert key != load(layers[:1], cached=True).key
    monkeypatch.setenv("RINGPATH_CACHE", "in-the-way")
    Path("in-the-way").write_text("")
    assert in_a_new_run(catalogue(layers)) == built(catalogue(layers))


def test_kept_lexicon_is_plain_json_for_its_owner_alone(layers: list[Layer], tmp_path: Path) -> None:
    in_a_new_run(catalogue(layers))
    assert slot(tmp_path).stat().st_mode & 0o777 == 0o600
    assert isinstance(json.loads(slot(tmp_path).read_bytes().partition(b"\n")[2]), dict)


def test_gear_written_in_the_same_run_brings_its_names_and_the_words_stay_one_list(layers: list[Layer]) -> None:
    plain, words = catalogue(layers[:1]), catalogue(layers[:1])
    with_gear = catalogue(layers)
    with_gear = replace(with_gear, words=plain.words)
    lexicon_store._last.clear()
    before, after = lexicon_of(plain), lexicon_of(with_gear)
    assert after.words is before.words
    assert after == built(with_gear)
    assert "mytern" in after.names
    assert lexicon_of(words) is before  # of the same facts, read anew
