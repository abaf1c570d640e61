"""New files: names that stay inside the folder, nothing written over, the whole file or none."""

from __future__ import annotations

import os
import threading
from pathlib import Path
from unicodedata import category

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.base.newfile import LONGEST_BYTES, safe_name, save_new
from engine.base.problem import Problem


@pytest.mark.parametrize(
    ("wanted", "name"),
    [
        ("friday.html", "friday.html"),
        ("friday", "friday.html"),
        ("friday.svg", "friday.html"),
        ("card avocet on skiff", "card-avocet-on-skiff.html"),
        ("../../etc/passwd", "passwd.html"),
        ("/etc/cron.d/job.html", "job.html"),
        ("..\\up.html", "up.html"),
        ("..", "untitled.html"),
        ("", "untitled.html"),
        (".hidden", "hidden.html"),
        ("a\x00b\x1b[31m\nc\u202e.html", "a-b-[31m-c.html"),
        ("-rf.html", "rf.html"),
        ("CON", "CON-.html"),
        ("25 mm f1.4", "25-mm-f1.4.html"),
        ("été.html", "été.html"),
    ],
)
def test_a_name_is_made_safe_and_stays_readable(wanted: str, name: str) -> None:
    assert safe_name(wanted, ".html") == name


@given(st.text(max_size=400))
def test_no_name_leaves_the_folder_or_hides(wanted: str) -> None:
    name = safe_name(wanted, ".html")
    assert name.endswith(".html")
    assert len(name) > len(".html")
    assert not name.startswith((".", "-"))
    assert not any(char in name for char in "/\\\0")
    assert not any(category(char).startswith(("C", "Z")) for char in name)
    assert len(name.encode()) <= LONGEST_BYTES
    assert safe_name(name, ".html") == name


def test_what_is_there_is_never_written_over(tmp_path: Path) -> None:
    saved = [save_new(tmp_path, "friday", ".html", f"text {n}") for n in range(3)]
    assert [path.name for path in saved if isinstance(path, Path)] == ["friday.html", "friday-2.html", "friday-3.html"]
    assert [path.read_text() for path in saved if isinstance(path, Path)] == ["text 0", "text 1", "text 2"]
    assert sorted(path.name for path in tmp_path.iterdir()) == ["friday-2.html", "friday-3.html", "friday.html"]


def test_a_link_that_leads_nowhere_is_not_followed(tmp_path: Path) -> None:
    folder, outside = tmp_path / "here", tmp_path / "elsewhere.html"
    folder.mkdir()
    (folder / "friday.html").symlink_to(outside)
    saved = save_new(folder, "friday", ".html", "text")
    assert isinstance(saved, Path)
    assert saved.name == "friday-2.html"
    assert not outside.exists()


def test_without_second_names_the_file_is_still_new_and_whole(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def refused(*_: object, **__: object) -> None:
        raise PermissionError(1, "Operation not permitted")

    monkeypatch.setattr(os, "link", refused)
    first, second = (save_new(tmp_path, "friday", ".html", text) for text in ("one", "two"))
    assert isinstance(first, Path)
    assert isinstance(second, Path)
    assert (first.read_text(), second.read_text()) == ("one", "two")
    assert len(list(tmp_path.iterdir())) == 2


def test_a_folder_that_is_not_there_is_one_problem_and_leaves_nothing(tmp_path: Path) -> None:
    found = save_new(tmp_path / "nowhere", "friday", ".html", "text")
    assert isinstance(found, Problem)
    assert "\n" not in str(found)
    assert not list(tmp_path.iterdir())


def test_a_full_disk_leaves_nothing_behind(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    def full(_: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(os, "fsync", full)
    found = save_new(tmp_path, "friday", ".html", "text")
    assert isinstance(found, Problem)
    assert "no space left" in found.found
    assert not list(tmp_path.iterdir())


def test_many_at_once_each_get_a_file_of_their_own(tmp_path: Path) -> None:
    texts = [f"{n} " * 5000 for n in range(16)]
    saved: list[Path | Problem] = []
    threads = [
        threading.Thread(target=lambda text=text: saved.append(save_new(tmp_path, "friday", ".html", text)))
        for text in texts
    ]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    files = [path for path in saved if isinstance(path, Path)]
    assert len(set(files)) == len(texts)
    assert sorted(path.read_text() for path in files) == sorted(texts)
    assert len(list(tmp_path.iterdir())) == len(texts)
