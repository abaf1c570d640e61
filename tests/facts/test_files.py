"""Which files of a layer are read, and which are refused."""

import os
from pathlib import Path

import pytest

from engine.facts.files import LARGEST, Layer, files_of, shipped_layer, shown_path


def told(layer: Layer) -> list[str]:
    return [str(file.problem) for file in files_of(layer) if file.problem]


def test_only_yaml_files_are_read_by_name_in_every_folder(tmp_path: Path) -> None:
    for name in ("b.yaml", "a.yaml", "deep/er/c.yaml", "notes.txt", "d.yml", ".hidden.yaml", ".git/e.yaml"):
        path = tmp_path / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text("")
    assert [file.inside for file in files_of(Layer("extra", str(tmp_path)))] == ["a.yaml", "b.yaml", "deep/er/c.yaml"]


def test_link_out_of_the_folder_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    facts = tmp_path / "facts"
    facts.mkdir()
    (tmp_path / "secret.yaml").write_text("sources: {}")
    (facts / "a.yaml").symlink_to(tmp_path / "secret.yaml")
    (facts / "b").symlink_to(tmp_path)
    assert told(Layer("extra", "facts")) == [
        "facts/a.yaml:1:1: found a link out of the folder, expected facts that lie in the folder itself",
        "facts/b:1:1: found a link out of the folder, expected facts that lie in the folder itself",
    ]


def test_too_large_a_file_is_refused_unread(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    (tmp_path / "gear.yaml").write_bytes(b"#" * (LARGEST + 1))
    assert told(Layer("gear", "gear.yaml")) == ["gear.yaml:1:1: found a larger file, expected at most 4 MB in a file"]


def test_missing_gear_is_a_problem_only_where_it_was_asked_for(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    assert files_of(Layer("gear", "gear.yaml", needed=False)) == ()
    assert told(Layer("gear", "gear.yaml")) == [
        "gear.yaml:1:1: found no such file or directory, expected a file or folder of facts"
    ]


@pytest.mark.skipif(not hasattr(os, "mkfifo"), reason="no named pipes here")
def test_named_pipe_is_refused_without_waiting(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    os.mkfifo("gear.yaml")
    assert told(Layer("gear", "gear.yaml")) == [
        "gear.yaml:1:1: found no plain file, expected a file or folder of facts"
    ]


def test_path_is_shown_from_the_current_folder_or_as_given(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "in").mkdir()
    monkeypatch.chdir(tmp_path / "in")
    assert shown_path(str(tmp_path / "in" / "gear.yaml")) == "gear.yaml"
    assert shown_path("../gear.yaml") == "../gear.yaml"
    assert shown_path(str(tmp_path / "gear.yaml")) == str(tmp_path / "gear.yaml")


def test_shipped_facts_lie_beside_the_program() -> None:
    assert (Path(shipped_layer().path) / "__init__.py").exists()
