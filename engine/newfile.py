"""A new file in a folder: written whole or not at all, under a safe name, and never over one that is there."""

from __future__ import annotations

import os
from contextlib import suppress
from pathlib import Path
from stat import S_ISREG
from typing import Final
from unicodedata import normalize

LONGEST: Final = 100  # characters of a name without its number and ending
MOST_NUMBERED: Final = 999
_KEPT: Final = frozenset("-_.")
# names that one system or another keeps for devices, whatever follows the first dot
_DEVICES: Final = frozenset(
    ["con", "prn", "aux", "nul", *(f"{port}{n}" for port in ("com", "lpt") for n in range(1, 10))]
)


def safe_stem(text: str, otherwise: str) -> str:
    """A file's name without its ending, made of letters, digits, '-', '_' and '.'; it names no folder, nothing hidden.

    `otherwise`: what it is called where nothing of `text` is left.
    """
    last = normalize("NFC", text).replace("\\", "/").rsplit("/", 1)[-1]
    kept = "".join(char if char.isalnum() or char in _KEPT else "-" for char in last)
    while "--" in kept or ".." in kept:
        kept = kept.replace("--", "-").replace("..", ".")
    kept = kept[:LONGEST].strip("-._") or otherwise
    return f"{kept.partition('.')[0]}-{kept}" if kept.partition(".")[0].casefold() in _DEVICES else kept


def write_new(folder: Path, stem: str, ending: str, text: str) -> str | OSError:
    """Write `text` under the first free name, `stem` or `stem-2` ...; gives the name, or why nothing was written.

    Where a file of such a name holds this very text already, that one is named and nothing is written.
    """
    data = text.encode()
    try:
        passing = _passing(folder, data)
    except OSError as error:
        return error
    try:
        for number in range(1, MOST_NUMBERED + 1):
            name = f"{stem}{f'-{number}' if number > 1 else ''}{ending}"
            if _holds(folder / name, data) or _put(passing, folder / name, data):
                return name
        return FileExistsError(17, f"{MOST_NUMBERED} drawings of that name are there already")
    except OSError as error:
        return error
    finally:
        with suppress(OSError):
            passing.unlink()


def _passing(folder: Path, data: bytes) -> Path:
    """The whole content on the disk under a passing name, from which it is put in its place."""
    path = folder / f".{os.getpid()}-{os.urandom(4).hex()}.new"
    try:
        with open(path, "xb") as file:
            file.write(data)
            file.flush()
            os.fsync(file.fileno())
    except OSError:
        with suppress(OSError):
            path.unlink()
        raise
    return path


def _put(passing: Path, path: Path, data: bytes) -> bool:
    """Give the content this name; False where something has it already."""
    try:
        os.link(passing, path)  # in one step, and refused where the name is taken
    except FileExistsError:
        return False
    except OSError:
        return _written(path, data)  # a file system without links
    return True


def _written(path: Path, data: bytes) -> bool:
    try:
        file = open(path, "xb")  # noqa: SIM115 - what is there already must not be removed below
    except FileExistsError:
        return False
    try:
        with file:
            file.write(data)
    except OSError:
        with suppress(OSError):
            path.unlink()
        raise
    return True


def _holds(path: Path, data: bytes) -> bool:
    """Whether a plain file of this name has this very content."""
    with suppress(OSError):
        state = os.lstat(path)
        if S_ISREG(state.st_mode) and state.st_size == len(data):
            return path.read_bytes() == data
    return False
