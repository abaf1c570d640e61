"""Questions kept from one talk to the next."""

from __future__ import annotations

from pathlib import Path

from engine.doors.history import MOST_KEPT, asked_before, keep


def test_what_is_kept_comes_back_in_order_and_only_its_owner_reads_it(tmp_path: Path) -> None:
    path = tmp_path / "new" / "history"
    keep(path, "what is a shim")
    keep(path, "C on E\nwhy?\n\n")
    assert asked_before(path) == ["what is a shim", "C on E", "why?"]
    assert path.stat().st_mode & 0o077 == 0
    assert path.parent.stat().st_mode & 0o077 == 0


def test_control_characters_neither_go_in_nor_come_out(tmp_path: Path) -> None:
    path = tmp_path / "history"
    keep(path, "what\x1b[31m is\u202e it")
    assert path.read_text("utf-8") == "what?[31m is? it\n"
    path.write_text("bad\x1b[2Jline\n", "utf-8")
    assert asked_before(path) == ["bad?[2Jline"]


def test_a_long_history_is_cut_to_its_end(tmp_path: Path) -> None:
    path = tmp_path / "history"
    path.write_text("".join(f"{n}\n" for n in range(2 * MOST_KEPT + 1)), "utf-8")
    assert asked_before(path)[-1] == str(2 * MOST_KEPT)
    assert len(path.read_text("utf-8").splitlines()) == MOST_KEPT


def test_a_place_that_cannot_be_written_is_no_error(tmp_path: Path) -> None:
    (tmp_path / "file").write_text("", "utf-8")
    keep(tmp_path / "file" / "history", "what is a shim")
    assert asked_before(tmp_path / "file" / "history") == []
    assert asked_before(tmp_path) == []
