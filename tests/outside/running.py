"""The command as a user runs it: a process of its own, with its own home."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path
from typing import Any

from tests.outside.forked import forked

KEPT = ("PATH", "LANG", "LC_ALL", "SYSTEMROOT", "RINGPATH_CACHE")
ROOT = Path(__file__).resolve().parents[2]


def environment(home: Path) -> dict[str, str]:
    """An environment in which nothing of the user's own is seen; prepared facts are shared by all of this run."""
    kept = {name: value for name, value in os.environ.items() if name in KEPT}
    return kept | {"HOME": str(home), "TERM": "xterm-256color", "PYTHONPATH": str(ROOT), "PYTHONIOENCODING": "utf-8"}


def ringpath(
    home: Path, *words: str, said: str | None = None, cwd: Path | None = None, timeout: float = 60
) -> subprocess.CompletedProcess[str]:
    """The command in a child of the tests' process: what a fresh one loads is loaded already."""
    return forked(words, said, environment(home), cwd or home, timeout)


def started(
    home: Path, *words: str, said: str | None = None, cwd: Path | None = None, timeout: float = 60
) -> subprocess.CompletedProcess[str]:
    """The command as a shell starts it."""
    return subprocess.run(
        [sys.executable, "-m", "engine.doors.cli", *words],
        input=said, capture_output=True, text=True, encoding="utf-8", env=environment(home), cwd=cwd or home,
        timeout=timeout, check=False,
    )  # fmt: skip


def asked(home: Path, question: str, *options: str) -> dict[str, Any]:
    """The JSON of one question asked in a process of its own."""
    done = ringpath(home, "ask", "--json", *options, "--", question)
    assert "Traceback" not in done.stderr, done.stderr
    answer: dict[str, Any] = json.loads(done.stdout)
    answer["status"] = done.returncode
    return answer


def piped(home: Path, questions: list[str], *options: str) -> list[dict[str, Any]]:
    done = ringpath(home, "--json", *options, said="\n".join(questions) + "\n", timeout=170)
    assert "Traceback" not in done.stderr, done.stderr
    return [json.loads(line) for line in done.stdout.splitlines()]
