"""A real terminal: typed into through a pty, read off an emulated screen."""

from __future__ import annotations

import signal
import sys
import time
from pathlib import Path

import pexpect
import pyte

from tests.outside.running import ROOT, environment


class Terminal:
    """A screen of the given size with ringpath on it."""

    def __init__(self, home: Path, columns: int, lines: int = 40, *options: str, **variables: str) -> None:
        self.screen = pyte.HistoryScreen(columns, lines, history=2000)
        self.stream = pyte.ByteStream(self.screen)
        self.child = pexpect.spawn(
            sys.executable, ["-m", "engine.doors.cli", *options], dimensions=(lines, columns), cwd=str(ROOT),
            env=environment(home) | variables, timeout=20,
        )  # fmt: skip
        # prompt_toolkit asks where the cursor is
        self.screen.write_process_input = self.child.send  # type: ignore[method-assign]

    def read(self, until: str, seconds: float = 20) -> str:
        """The screen and what has left it, once `until` stands there."""
        end = time.monotonic() + seconds
        while until not in self.text:
            if not self._fed() or time.monotonic() > end:
                raise AssertionError(f"{until!r} is not on the screen:\n{self.text}")
        return self.text

    def settled(self, wanted: str = "", seconds: float = 20, patience: int = 8) -> str:
        """The whole screen: once it is as `wanted`, or else when nothing more has come for so many tenths of a second.

        A screen on which nothing stands yet has not settled: the command is still starting.
        """
        end, still, patience = time.monotonic() + seconds, 0, 100 if wanted else patience
        while self.whole != wanted and still < patience and time.monotonic() < end:
            before = self.whole
            if not self._fed():
                break
            still = still + 1 if self.whole == before and self.text.strip() else 0
        return self.whole

    def _fed(self) -> bool:
        """Take in what has been written within a tenth of a second; whether there may be more."""
        try:
            self.stream.feed(self.child.read_nonblocking(65536, timeout=0.1))
        except pexpect.TIMEOUT:
            return True
        except pexpect.EOF:
            return False
        return True

    @property
    def whole(self) -> str:
        """Every row of the screen as it stands, and where the cursor is (row and column from 1)."""
        rows = [row.rstrip() for row in self.screen.display]
        return "\n".join([*rows, f"cursor {self.screen.cursor.y + 1}:{self.screen.cursor.x + 1}"]) + "\n"

    @property
    def text(self) -> str:
        past = ["".join(cell.data for _, cell in sorted(line.items())).rstrip() for line in self.screen.history.top]
        return "\n".join([*past, *(line.rstrip() for line in self.screen.display)])

    def type(self, words: str) -> None:
        self.child.send(words)

    def resize(self, columns: int, lines: int) -> None:
        self.screen.resize(lines, columns)
        self.child.setwinsize(lines, columns)

    def close(self) -> None:
        """Leave it, however busy the machine is."""
        self.child.kill(signal.SIGKILL)
        self.child.wait()
        self.child.close()

    def ended(self) -> int | None:
        end = time.monotonic() + 10
        while self.child.isalive() and time.monotonic() < end:
            if not self._fed():
                time.sleep(0.02)
        status: int | None = self.child.exitstatus
        return status
