"""Drawings as a user gets them: saved in the current folder by the command, a pipe and a scenario."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest

from tests.outside.running import asked, piped, ringpath
from tests.render.paper import faults

GEAR = Path(__file__).resolve().parents[1] / "render" / "gear.yaml"


def saved(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.iterdir() if path.name != ".cache")


@pytest.fixture
def home(tmp_path: Path) -> Path:
    (tmp_path / "home").mkdir()
    return tmp_path / "home"


@pytest.fixture
def here(tmp_path: Path) -> Path:
    (tmp_path / "here").mkdir()
    return tmp_path / "here"


def test_one_question_saves_all_that_can_be_drawn_and_says_where(home: Path, here: Path) -> None:
    done = ringpath(home, "--gear", str(GEAR), "ask", "draw the avocet on the skiff with what I own", cwd=here)
    names = [f"avocet-on-skiff-{kind}.svg" for kind in ("distances", "frame", "section")]
    assert (done.returncode, done.stderr) == (0, "")
    assert saved(here) == names
    for name in names:
        assert name in done.stdout
        assert faults((here / name).read_text("utf-8")) == []


def test_a_pipe_is_one_talk_and_its_record_names_kinds_and_paths(home: Path, here: Path) -> None:
    questions = ["can the avocet reach infinity on the skiff", "draw the frame", "save it as herons.svg", "why?"]
    done = ringpath(home, "--json", "--gear", str(GEAR), said="\n".join(questions), cwd=here)
    rows = [json.loads(line) for line in done.stdout.splitlines()]
    assert [row["intent"] for row in rows] == ["focus-verdict", "draw", "draw", "why"]
    assert rows[1]["drawings"] == [{"kind": "frame", "path": "avocet-on-skiff-frame.svg", "chain": 1}]
    assert [row["kind"] for row in rows[2]["drawings"]] == ["section", "frame", "distances"]
    for row in (*rows[1]["drawings"], *rows[2]["drawings"]):
        assert (here / row["path"]).is_file()
    assert rows[1]["quantities"]["used_width_mm"]["least"] == 23.6
    assert "drawings" not in rows[0]


def test_a_file_that_is_there_is_kept_and_the_new_one_numbered(home: Path, here: Path) -> None:
    (here / "terns.svg").write_text("mine")
    done = ringpath(home, "ask", "draw the frame of a 25mm C-mount lens on m43 as terns.svg", cwd=here)
    assert "terns-2.svg" in done.stdout
    assert (here / "terns.svg").read_text() == "mine"


@pytest.mark.parametrize("name", ["../terns.svg", "/tmp/../terns.svg", "~/terns.svg", "..\\terns.svg", ".terns.svg"])
def test_no_name_leads_out_of_the_folder(home: Path, here: Path, name: str) -> None:
    before = saved(here.parent)
    done = ringpath(home, "ask", f"draw the frame of a 25mm C-mount lens on m43 as {name}", cwd=here)
    assert done.returncode == 0, done.stdout
    assert saved(here) == ["terns.svg"]
    assert saved(here.parent) == before


def test_control_characters_reach_neither_the_name_nor_the_screen(home: Path, here: Path) -> None:
    done = ringpath(home, "ask", "draw the frame of a 25mm C-mount lens on m43 as te\x1brns\x07.svg", cwd=here)
    assert done.returncode == 0
    assert all(name.isprintable() for name in saved(here))
    assert "\x1b" not in done.stdout
    assert "\x07" not in done.stdout


def test_where_nothing_may_be_written_one_line_says_so(home: Path, here: Path) -> None:
    if os.geteuid() == 0:
        # root may write anywhere; a folder that is gone refuses everybody
        code = f"cd {here} && rmdir {here} && exec"
    else:
        here.chmod(0o555)
        code = f"cd {here} && exec"
    import subprocess
    import sys

    from tests.outside.running import environment

    words = "draw the frame of a 25mm C-mount lens on m43"
    done = subprocess.run(
        ["sh", "-c", f'{code} {sys.executable} -m engine.doors.cli ask "{words}"'],
        capture_output=True, text=True, env=environment(home), timeout=60, check=False,
    )  # fmt: skip
    assert done.returncode == 1
    assert "Traceback" not in done.stderr
    lines = [line for line in done.stdout.splitlines() if "Not saved" in line]
    assert len(lines) == 1


def test_a_question_that_lacks_the_body_asks_for_it_and_draws_nothing(home: Path, here: Path) -> None:
    done = ringpath(home, "--json", "ask", "draw a 25mm C-mount lens", cwd=here)
    answer = json.loads(done.stdout)
    assert done.returncode == 1
    assert "On which body?" in answer["text"]
    assert answer["drawings"] == []
    assert saved(here) == []


def test_help_and_other_questions_write_nothing(home: Path, here: Path) -> None:
    ringpath(home, said="help\nhow do I get a C lens on m43\n", cwd=here)
    assert saved(here) == []
    assert asked(home, "what is a helicoid")["status"] == 0
    assert piped(home, ["draw it"])[0]["intent"] is None
