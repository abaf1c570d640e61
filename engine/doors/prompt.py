"""The prompt: type a question, read the answer; history across runs, ctrl-c drops a line, ctrl-d leaves."""

from __future__ import annotations

import os
from collections.abc import Iterable
from pathlib import Path

from prompt_toolkit import PromptSession
from prompt_toolkit.history import History

from engine.ask import Desk
from engine.base.plain import plain
from engine.doors.saying import asked, show
from engine.facts.gearplace import history_path
from engine.talk import Talk

MOST_KEPT = 5000
GREETING = "Which lens, on which body? Ask, or type 'help'. Ctrl-D leaves."


class PrivateHistory(History):
    """Questions asked, one a line in a file that only its owner reads; what cannot be kept is not an error."""

    def __init__(self, path: Path) -> None:
        super().__init__()
        self._path = path

    def load_history_strings(self) -> Iterable[str]:
        try:
            lines = self._path.read_text("utf-8", "replace").splitlines()
        except OSError:
            return []
        return list(reversed(lines[-MOST_KEPT:]))

    def store_string(self, string: str) -> None:
        line = plain(string.replace("\n", " "), 2000)
        try:
            self._path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
            descriptor = os.open(self._path, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)
            with os.fdopen(descriptor, "w", encoding="utf-8") as file:
                file.write(line + "\n")
        except OSError:
            return


def talk(desk: Desk, colour: bool) -> int:
    """Talk until the user leaves; gives 0."""
    session: PromptSession[str] = PromptSession(history=PrivateHistory(history_path()), enable_history_search=True)
    memory = Talk()
    print(GREETING, flush=True)
    while True:
        try:
            typed = session.prompt("? ")
        except KeyboardInterrupt:
            continue  # ctrl-c drops the line
        except EOFError:
            return 0
        for text in filter(None, (line.strip() for line in typed.splitlines())):
            try:
                answer = asked(desk, text, memory)
            except KeyboardInterrupt:
                print("dropped", flush=True)
                continue
            show(desk, answer, False, colour)
            print(flush=True)
            if answer.leaves:
                return 0
