"""The questions asked, one a line, in a file that only its owner reads; what cannot be kept is not an error."""

from __future__ import annotations

import os
from pathlib import Path
from typing import Final

from engine.base.plain import plain

MOST_KEPT: Final = 5000
_LONGEST: Final = 2000


def asked_before(path: Path) -> list[str]:
    """The last questions of earlier talks, the oldest first. A file that has grown to twice that is cut to them."""
    try:
        lines = path.read_text("utf-8", "replace").splitlines()
    except OSError:
        return []
    if len(lines) > 2 * MOST_KEPT:
        _cut(path)
    return [plain(line, _LONGEST) for line in lines[-MOST_KEPT:]]


def keep(path: Path, typed: str) -> None:
    """Add what was typed, a question a line. A line is written at once, so that two talks do not mix theirs."""
    lines = [plain(line.strip(), _LONGEST) for line in typed.splitlines()]
    text = "".join(f"{line}\n" for line in lines if line)
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        descriptor = os.open(path, os.O_WRONLY | os.O_APPEND | os.O_CREAT, 0o600)
        try:
            os.write(descriptor, text.encode())
        finally:
            os.close(descriptor)
    except OSError:
        return


def _cut(path: Path) -> None:
    from engine.facts.safesave import save

    save(str(path), lambda data: (b"".join((data or b"").splitlines(keepends=True)[-MOST_KEPT:]), None))
