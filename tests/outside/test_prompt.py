"""The prompt on a real terminal."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from pathlib import Path

import pexpect
import pytest

from tests.outside.running import ROOT, environment
from tests.outside.terminal import Terminal


@pytest.fixture
def terminal(tmp_path: Path) -> Iterator[Terminal]:
    made = Terminal(tmp_path, 100)
    made.read("nothing remembered")
    yield made
    made.close()


def test_a_question_and_its_follow_up_are_answered(terminal: Terminal) -> None:
    terminal.type("how do I get a 50mm f/2 M42 lens on an F-mount body without glass\r")
    terminal.read("stops at")
    terminal.type("why not infinity?\r")
    terminal.read("too far from the sensor")
    terminal.type("and on an E-mount body?\r")
    assert "reaches infinity" in terminal.read("reaches infinity")


def test_control_c_drops_the_line_and_control_d_leaves(terminal: Terminal) -> None:
    terminal.type("half a question")
    terminal.read("half a question")
    terminal.type("\x03")
    terminal.type("what is a helicoid\r")
    terminal.read("helicoid:")
    terminal.type("\x04")
    assert terminal.ended() == 0
    assert "Traceback" not in terminal.text


def test_the_last_question_is_recalled_in_the_next_run(terminal: Terminal, tmp_path: Path) -> None:
    terminal.type("what is a shim\r")
    terminal.read("shim:")
    terminal.type("\x04")
    assert terminal.ended() == 0
    later = Terminal(tmp_path, 100)
    later.read("nothing remembered")
    later.type("\x1b[A")
    later.read("what is a shim")
    later.type("\r")
    later.read("shim:")
    later.type("quit\r")
    assert later.ended() == 0
    kept = tmp_path / ".local" / "state" / "ringpath" / "history"
    assert kept.read_text("utf-8").splitlines() == ["what is a shim", "quit"]
    assert kept.stat().st_mode & 0o077 == 0


def test_several_pasted_lines_are_several_questions(terminal: Terminal) -> None:
    terminal.type("\x1b[200~what is a flange\nwhat is a throat\x1b[201~")
    terminal.type("\r")
    terminal.read("flange:")
    terminal.read("throat:")


def test_a_dumb_terminal_gets_plain_lines(tmp_path: Path) -> None:
    child = pexpect.spawn(
        sys.executable, ["-m", "engine.doors.cli"], cwd=str(ROOT), env=environment(tmp_path) | {"TERM": "dumb"},
        timeout=20, encoding="utf-8",
    )  # fmt: skip
    child.expect("Ask a question")
    child.sendline("what is a shim")
    child.expect("shim:")
    assert "\x1b" not in child.before + child.after
    child.sendline("quit")
    child.expect(pexpect.EOF)
    child.close()
    assert child.exitstatus == 0
