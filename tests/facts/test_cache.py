"""Prepared facts: the same as read ones, made again when anything changed, and never in the way."""

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any, get_type_hints

import pytest

from engine.base.compact import fields
from engine.facts import cache, records
from engine.facts.encoding import CODECS
from engine.facts.files import Layer, files_of
from engine.facts.overlay import Loaded, load
from engine.facts.sections import SECTIONS

ROOT = Path(__file__).parents[2]
BASE = (Path(__file__).parent / "base.yaml").read_text()
MORE = """
lenses:
  tern: {mount: c, focal_length: 25 mm, f_number: f/1.4, price_paid: 12}
adapters:
  ring: {front: c, rear: e-mount, kind: helicoid, thickness: 3..5 mm, cup: {bore: 30 mm}, price: 8..25, factor: 0.7}
bodies:
  ketch: {mount: e-mount, format: aps-c-1.5, pixels: 6000 x 4000}
mounts:
  m42: {designation: M42, kind: slr, mirror: no, register: 45.5 mm +0/-0.1, overrides: yes}
"""


@pytest.fixture
def layers(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[Layer]:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("RINGPATH_CACHE", str(tmp_path / "cache"))
    (tmp_path / "kb").mkdir()
    (tmp_path / "kb" / "base.yaml").write_text(BASE)
    (tmp_path / "gear.yaml").write_text(MORE)
    return [Layer("shipped", "kb"), Layer("gear", "gear.yaml")]


def everything(loaded: Loaded) -> list[tuple[Any, ...]]:
    rows = [record for table in loaded.tables.values() for record in table.values()]
    assert loaded.problems == ()
    # places are left out of a record's equality, and are compared here
    return [(record, record.place) for record in rows] + [(loaded.gear_ids,)]


def kept(tmp_path: Path) -> list[Path]:
    return sorted((tmp_path / "cache" / "ringpath").glob("*"))


def forbid_reading(monkeypatch: pytest.MonkeyPatch) -> None:
    def fail(*_: object) -> None:
        raise AssertionError("read again")

    monkeypatch.setattr("engine.facts.loading.read_part", fail)


def test_prepared_facts_equal_read_ones(layers: list[Layer], monkeypatch: pytest.MonkeyPatch) -> None:
    cold = everything(load(layers))
    assert everything(load(layers, cached=True)) == cold
    forbid_reading(monkeypatch)
    warm = load(layers, cached=True)
    assert [list(table) for table in warm.tables.values()] == [
        list(table) for table in load(layers, True).tables.values()
    ]
    assert everything(warm) == cold


def test_names_are_the_same_before_and_after_records_are_made(layers: list[Layer]) -> None:
    load(layers, cached=True)
    warm = load(layers, cached=True).tables["bodies"]
    before = list(warm.called("bodies"))
    warm.values()
    assert list(warm.called("bodies")) == before


def test_places_are_shown_from_where_one_stands_now(layers: list[Layer], monkeypatch: pytest.MonkeyPatch) -> None:
    here = os.getcwd()
    load(layers, cached=True)
    monkeypatch.chdir("/")
    forbid_reading(monkeypatch)
    warm = load([Layer(layer.kind, os.path.join(here, layer.path)) for layer in layers], cached=True)
    assert warm.tables["lenses"]["tern"].place.file == os.path.relpath(os.path.join(here, "gear.yaml"), "/")


def test_changed_gear_is_read_again_and_shipped_facts_are_not(layers: list[Layer], tmp_path: Path) -> None:
    load(layers, cached=True)
    shipped = [path.stat().st_mtime_ns for path in kept(tmp_path) if path.name.startswith("shipped")]
    Path("gear.yaml").write_text(MORE.replace("25 mm", "26 mm"))
    assert load(layers, cached=True).tables["lenses"]["tern"].focal_length_mm.nominal == 26
    assert [path.stat().st_mtime_ns for path in kept(tmp_path) if path.name.startswith("shipped")] == shipped
    assert len(kept(tmp_path)) == 2


def test_changed_facts_below_are_seen_by_the_gear_above(layers: list[Layer]) -> None:
    load(layers, cached=True)
    Path("kb/base.yaml").write_text(BASE.replace("  c:\n", "  cc:\n"))
    assert "mount 'c'" in str(load(layers, cached=True).problems[0])


def test_facts_with_problems_are_not_kept(layers: list[Layer], tmp_path: Path) -> None:
    Path("gear.yaml").write_text("lens: {}")
    for _ in range(2):
        assert len(load(layers, cached=True).problems) == 1
    assert [path.name.partition("-")[0] for path in kept(tmp_path)] == ["shipped"]


@pytest.mark.parametrize(
    "spoil",
    [
        lambda data: b"",
        lambda data: data[:-20],
        lambda data: data.replace(b"45.44", b"46.44"),
        lambda data: b"\x80\x04K\x01.",
        lambda data: data.replace(b"ringpath facts", b"other facts"),
    ],
    ids=["empty", "torn", "changed", "pickled", "other"],
)
def test_spoilt_cache_is_passed_over_and_mended(spoil: Any, layers: list[Layer], tmp_path: Path) -> None:
    cold = everything(load(layers, cached=True))
    good = [path.read_bytes() for path in kept(tmp_path)]
    for path in kept(tmp_path):
        path.write_bytes(spoil(path.read_bytes()))
    assert everything(load(layers, cached=True)) == cold
    assert [path.read_bytes() for path in kept(tmp_path)] == good


ODD: list[Any] = [{}, [[]], float("nan"), -1, 10**9, [3.0, 1.0, 2.0], ["a", 1, 1]]


def spoilt_payloads(payload: Any) -> list[Any]:
    """Payloads that are out of shape in one place each, as only somebody else could have written them."""
    found: list[Any] = [None, [], {}, 3, "x", {**payload, "tables": []}, {**payload, "bases": [[]]}]
    for section, rows in payload["tables"].items():
        for column in range(len(rows[0]) if rows else 0):
            for odd in ODD:
                row = [*rows[0][:column], odd, *rows[0][column + 1 :]]
                found.append({**payload, "tables": {**payload["tables"], section: [row, *rows[1:]]}})
        found.append({**payload, "tables": {**payload["tables"], section: [[1], *rows]}})
    return found


def test_payload_out_of_shape_never_comes_to_a_record(layers: list[Layer], monkeypatch: pytest.MonkeyPatch) -> None:
    load(layers, cached=True)
    key = cache.key_of(cache.first_key() or "", layers[0], files_of(layers[0]))
    payload = cache.kept(layers[0], key)
    assert payload is not None
    monkeypatch.setattr(cache, "keep", lambda *_: None)
    for odd in spoilt_payloads(payload):
        given: dict[str, Any] = {"shipped": odd}
        monkeypatch.setattr(cache, "kept", lambda layer, _, given=given: given.get(layer.kind))
        for table in load(layers, cached=True).tables.values():
            for record in table.values():
                assert isinstance(record.id, str)


def test_cache_that_cannot_be_written_is_done_without(layers: list[Layer], monkeypatch: pytest.MonkeyPatch) -> None:
    Path("in-the-way").write_text("")
    monkeypatch.setenv("RINGPATH_CACHE", "in-the-way")
    assert everything(load(layers, cached=True)) == everything(load(layers))


def test_cache_is_for_its_owner_alone(layers: list[Layer], tmp_path: Path) -> None:
    load(layers, cached=True)
    assert {path.stat().st_mode & 0o777 for path in kept(tmp_path)} == {0o600}
    assert [path.suffix for path in kept(tmp_path)] == [".json", ".json"]


def test_cache_folder_is_told_by_the_environment(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("RINGPATH_CACHE", raising=False)
    monkeypatch.setenv("HOME", "/home/someone")
    monkeypatch.delenv("XDG_CACHE_HOME", raising=False)
    assert cache.folder() == "/home/someone/.cache/ringpath"
    monkeypatch.setenv("XDG_CACHE_HOME", "not/absolute")
    assert cache.folder() == "/home/someone/.cache/ringpath"
    monkeypatch.setenv("XDG_CACHE_HOME", "/var/cache/someone")
    assert cache.folder() == "/var/cache/someone/ringpath"
    monkeypatch.setenv("RINGPATH_CACHE", "/tmp/x")
    assert cache.folder() == "/tmp/x/ringpath"


def test_every_field_of_every_record_can_be_kept() -> None:
    types = {str(field.type) for cls in SECTIONS.values() for field in fields(cls)}
    assert types <= {*CODECS, "Basis", "Place"}
    assert {cls for cls in vars(records).values() if isinstance(cls, type) and "place" in get_type_hints(cls)} == set(
        SECTIONS.values()
    )


def test_warm_start_leaves_the_yaml_reader_alone(layers: list[Layer]) -> None:
    load(layers, cached=True)
    program = (
        "import json, sys; from engine.facts.files import Layer; from engine.facts.overlay import load;"
        "facts = load([Layer('shipped', 'kb'), Layer('gear', 'gear.yaml')], cached=True);"
        "print(json.dumps([sorted(sys.modules), len(facts.tables['mounts'])]))"
    )
    environment = {**os.environ, "PYTHONPATH": str(ROOT)}
    out = subprocess.run([sys.executable, "-c", program], env=environment, capture_output=True, text=True, check=True)
    modules, mounts = json.loads(out.stdout)
    assert mounts == 3
    unwanted = {
        "yaml",
        "engine.facts.loading",
        "engine.facts.schema",
        "grammar.values",
        "pathlib",
        "tempfile",
        "pickle",
    }
    assert not unwanted & set(modules)
