"""A new file: whole, under a safe name, and never over one that is there."""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from engine import newfile
from engine.newfile import LONGEST, safe_stem, write_new


@pytest.mark.parametrize(
    ("typed", "stem"),
    [
        ("herons", "herons"),
        ("../../herons", "herons"),
        ("/etc/herons", "herons"),
        ("C:\\gear\\herons", "herons"),
        ("..", "picture"),
        (".herons", "herons"),
        ("a\nb\x1b[31m", "a-b-31m"),
        ("the herons & terns", "the-herons-terns"),
        ("con", "con-con"),
        ("", "picture"),
        ("水鳥", "水鳥"),
    ],
)
def test_a_name_is_made_safe(typed: str, stem: str) -> None:
    assert safe_stem(typed, "picture") == stem


@settings(deadline=None)
@given(st.text(max_size=200))
def test_whatever_is_typed_names_a_file_of_the_folder(typed: str) -> None:
    stem = safe_stem(typed, "picture")
    assert 0 < len(stem) <= LONGEST + 10
    assert stem[0] not in ".-_"
    assert os.path.basename(stem) == stem
    assert stem.isprintable()
    assert ".." not in stem


def test_what_is_there_is_never_written_over(tmp_path: Path) -> None:
    (tmp_path / "a.svg").write_text("somebody's own")
    assert write_new(tmp_path, "a", ".svg", "new") == "a-2.svg"
    assert write_new(tmp_path, "a", ".svg", "newer") == "a-3.svg"
    assert (tmp_path / "a.svg").read_text() == "somebody's own"
    assert (tmp_path / "a-2.svg").read_text() == "new"


def test_the_same_again_is_not_written_twice(tmp_path: Path) -> None:
    assert write_new(tmp_path, "a", ".svg", "one") == write_new(tmp_path, "a", ".svg", "one") == "a.svg"
    assert [path.name for path in tmp_path.iterdir()] == ["a.svg"]


def test_links_and_folders_of_that_name_are_left_alone(tmp_path: Path) -> None:
    (tmp_path / "far.txt").write_text("far")
    (tmp_path / "a.svg").symlink_to(tmp_path / "far.txt")
    (tmp_path / "a-2.svg").symlink_to(tmp_path / "nowhere.txt")
    (tmp_path / "a-3.svg").mkdir()
    assert write_new(tmp_path, "a", ".svg", "far") == "a-4.svg"
    assert (tmp_path / "far.txt").read_text() == "far"
    assert not (tmp_path / "nowhere.txt").exists()


def test_where_nothing_can_be_written_the_reason_is_given_and_nothing_left(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("")
    assert isinstance(write_new(tmp_path / "file", "a", ".svg", "one"), OSError)
    assert isinstance(write_new(tmp_path / "missing", "a", ".svg", "one"), OSError)
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


def test_a_full_disk_leaves_nothing_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(descriptor: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(newfile.os, "fsync", full)
    assert isinstance(write_new(tmp_path, "a", ".svg", "one"), OSError)
    assert list(tmp_path.iterdir()) == []


def test_without_links_it_is_still_never_over_another(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def none(*_: object) -> None:
        raise OSError(95, "Operation not supported")

    monkeypatch.setattr(newfile.os, "link", none)
    (tmp_path / "a.svg").write_text("there")
    assert write_new(tmp_path, "a", ".svg", "new") == "a-2.svg"
    assert (tmp_path / "a.svg").read_text() == "there"
    assert sorted(path.name for path in tmp_path.iterdir()) == ["a-2.svg", "a.svg"]
