"""The command in a process of its own that begins with everything loaded: a child of the tests' process."""

from __future__ import annotations

import gc
import os
import signal
import subprocess
import sys
import tempfile
import time
import traceback
from collections.abc import Mapping, Sequence
from functools import cache
from pathlib import Path
from typing import BinaryIO

from tests.desks import desk_of

POLL_S = 0.003


def forked(
    words: Sequence[str], said: str | None, env: Mapping[str, str], cwd: Path, timeout: float
) -> subprocess.CompletedProcess[str]:
    """As `subprocess.run` has it; a command that does not end in `timeout` s is killed and TimeoutExpired raised."""
    _ready()
    with tempfile.TemporaryFile() as given, tempfile.TemporaryFile() as out, tempfile.TemporaryFile() as err:
        given.write((said or "").encode())
        given.seek(0)
        child = os.fork()
        if not child:
            _run(words, env, cwd, (given, out, err))
        status = _ended(child, time.monotonic() + timeout, words, timeout)
        return subprocess.CompletedProcess(list(words), status, _text(out), _text(err))


@cache
def _ready() -> None:
    """What a command loads first is loaded before it is begun, once for all: modules, facts, words."""
    import engine.doors.cli
    import engine.doors.saying
    import engine.teach  # noqa: F401

    desk = desk_of()
    desk.ask("how do I get a 25 mm f/1.4 C-mount lens on an E-mount body")


def _run(words: Sequence[str], env: Mapping[str, str], cwd: Path, files: Sequence[BinaryIO]) -> None:
    """What the child does; it never returns."""
    status = 1
    try:
        signal.signal(signal.SIGINT, signal.default_int_handler)
        gc.callbacks.clear()  # of what the tests use: a ctrl-c must reach the command and not one of these
        for descriptor, file in enumerate(files):
            os.dup2(file.fileno(), descriptor)
        sys.stdin, sys.stdout, sys.stderr = (os.fdopen(at, mode, encoding="utf-8") for at, mode in enumerate("rww"))
        os.chdir(cwd)
        os.environ.clear()
        os.environ.update(env)
        sys.argv = ["ringpath", *words]
        from engine.doors.cli import main

        status = main()
    except SystemExit as ends:
        status = ends.code if isinstance(ends.code, int) else 0 if ends.code is None else 1
    except BaseException:
        traceback.print_exc()
    finally:
        for stream in (sys.stdout, sys.stderr):
            stream.flush()
        os._exit(status)


def _ended(child: int, until: float, words: Sequence[str], timeout: float) -> int:
    while True:
        ended, status = os.waitpid(child, os.WNOHANG)
        if ended:
            return os.waitstatus_to_exitcode(status)
        if time.monotonic() > until:
            os.kill(child, signal.SIGKILL)
            os.waitpid(child, 0)
            raise subprocess.TimeoutExpired(list(words), timeout)
        time.sleep(POLL_S)


def _text(file: BinaryIO) -> str:
    file.seek(0)
    return file.read().decode().replace("\r\n", "\n")
