"""A new file in a folder: its name made safe, numbered where it is taken, whole as soon as it is there."""

from __future__ import annotations

import os
import re
from contextlib import suppress
from pathlib import Path
from stat import S_ISREG
from typing import Final
from unicodedata import category, normalize

from engine.base.place import Place
from engine.base.problem import Problem

LONGEST_BYTES: Final = 120  # of a name with its ending: file systems stop at 255, and some shells look bad sooner
MOST_TRIES: Final = 1000
_UNNAMED: Final = "untitled"
# parts of a path, and what some file systems or shells refuse or take for something else
_REFUSED: Final = re.compile(r"""[<>:"|?*'`$&;!%\\/\s]+""")
_SPOKEN_FOR: Final = frozenset(
    ["con", "prn", "aux", "nul", *(f"com{n}" for n in range(1, 10)), *(f"lpt{n}" for n in range(1, 10))]
)


def safe_name(wanted: str, ending: str) -> str:
    """`wanted` as a name inside a folder, with this ending: no path, no control character, no hidden file.

    `ending`: with its dot. Of a path the last part counts; a known ending of another kind is put right.
    """
    last = re.split(r"[\\/]", normalize("NFC", wanted).strip())[-1]
    stem, dot, tail = last.rpartition(".")
    if dot and tail.isalnum() and tail.isascii() and not tail.isdecimal() and len(tail) <= 4:
        last = stem
    kept = "".join(char if category(char)[0] not in "CZ" else " " for char in last)
    clean = _REFUSED.sub("-", kept.strip()).strip("-. ")
    while len(f"{clean}{ending}".encode()) > LONGEST_BYTES:
        clean = clean[:-1].rstrip("-. ")
    if clean.split(".")[0].casefold() in _SPOKEN_FOR:
        clean = f"{clean}-"
    return f"{clean or _UNNAMED}{ending}"


def save_new(folder: Path, wanted: str, ending: str, text: str, again: bool = True) -> Path | Problem:
    """The file that `text` was written to, in UTF-8; a problem in one line where none could be.

    `again`: written anew even where a file of that name holds this very text; else that one is given.

    A name that is taken is numbered: nothing that is there is ever written over. Whoever looks sees the whole file or
    none.
    """
    name = safe_name(wanted, ending)
    stem, data = name.removesuffix(ending), text.encode("utf-8")
    passing = folder / f".{os.urandom(8).hex()}.part"  # of this writer alone, whoever else saves here
    try:
        try:
            _write(passing, data)
            for n in range(1, MOST_TRIES + 1):
                target = folder / (name if n == 1 else f"{stem}-{n}{ending}")
                if (not again and _holds(target, data)) or _put(passing, target):
                    return target
        finally:
            with suppress(FileNotFoundError):
                passing.unlink()
    except OSError as error:
        where = Place(os.path.join(os.fspath(folder), name), 1, 1)
        return Problem(where, (error.strerror or "an error").lower(), "a folder that can be written")
    return Problem(Place(name, 1, 1), f"{MOST_TRIES} files of that name", "another name")


def _holds(target: Path, data: bytes) -> bool:
    """Whether a plain file of this name has this very content."""
    with suppress(OSError):
        state = os.lstat(target)
        if S_ISREG(state.st_mode) and state.st_size == len(data):
            return target.read_bytes() == data
    return False


def _write(passing: Path, data: bytes) -> None:
    with open(os.open(passing, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666), "wb") as file:
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _put(passing: Path, target: Path) -> bool:
    """Give the written file its name; False where that one is taken."""
    try:
        os.link(passing, target)
    except FileExistsError:
        return False
    except OSError:
        # no second names on this file system: take the name first, then put the file in its place
        try:
            os.close(os.open(target, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666))
        except FileExistsError:
            return False
        os.replace(passing, target)
    return True
