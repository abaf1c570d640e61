"""A file changed whole or not at all: one writer at a time, from what is there by then, the new put in its place."""

from __future__ import annotations

import os
import sys
import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from stat import S_IMODE, S_ISREG
from typing import Final, TypeVar

from engine.base.place import Place
from engine.base.problem import Problem
from engine.facts.files import LARGEST, shown_path

T = TypeVar("T")
Change = Callable[[bytes | None], tuple[bytes, T] | Problem]

PATIENCE_S: Final = 10.0  # how long another writer is waited for; one edit takes some hundredths of a second
_PAUSE_S: Final = 0.005
_TRIES: Final = 5  # against an editor that saves the file in the same moment and knows nothing of our lock
_PRIVATE: Final = 0o600
_State = tuple[int, int, int]


def save(path: str, change: Change[T]) -> T | Problem:
    """What `change` gives with the new content, once that is on the disk; a problem where nothing was written.

    `change` is handed the bytes that are there under the lock (None: no file) and may be asked again when they have
    changed meanwhile. A link is followed and stays a link; the file keeps its mode, a new one is its owner's alone.
    """
    shown = shown_path(path)
    real = os.path.realpath(path)
    folder, name = os.path.split(real)
    try:
        os.makedirs(folder, mode=0o700, exist_ok=True)
        with _locked(os.path.join(folder, f".{name}.lock")) as held:
            if not held:
                expected = f"to be let in within {PATIENCE_S:.0f} s"
                return Problem(Place(shown, 1, 1), "a file that another program is writing", expected)
            return _changed(real, os.path.join(folder, f".{name}.new"), shown, change)
    except OSError as error:
        return Problem(Place(shown, 1, 1), (error.strerror or "an error").lower(), "a file that can be written")


def _changed(real: str, passing: str, shown: str, change: Change[T]) -> T | Problem:
    with suppress(FileNotFoundError):
        os.unlink(passing)  # of a writer that was ended halfway: under the lock it can be nobody else's
    for _ in range(_TRIES):
        if os.path.lexists(real) and not S_ISREG(os.stat(real).st_mode):
            return Problem(Place(shown, 1, 1), "no plain file", "a file that can be written")
        if os.path.exists(real) and not os.access(real, os.W_OK):
            return Problem(Place(shown, 1, 1), "a file that may not be written", "leave to write it")
        state, mode, data = _read(real)
        outcome = change(data)
        if isinstance(outcome, Problem):
            return outcome
        new, result = outcome
        if new == data:
            return result
        try:
            _write(passing, new, mode)
            if _state(real) == state:
                os.replace(passing, real)
                _settle(os.path.dirname(real))
                return result
        finally:
            with suppress(FileNotFoundError):
                os.unlink(passing)
    return Problem(Place(shown, 1, 1), "a file that another program keeps changing", "a file that rests")


def _read(real: str) -> tuple[_State | None, int, bytes | None]:
    try:
        with open(real, "rb") as file:
            state = os.fstat(file.fileno())
            data = file.read(LARGEST + 1)
    except FileNotFoundError:
        return None, _PRIVATE, None
    return _mark(state), S_IMODE(state.st_mode), data


def _state(real: str) -> _State | None:
    try:
        return _mark(os.stat(real))
    except FileNotFoundError:
        return None


def _mark(state: os.stat_result) -> _State:
    return state.st_ino, state.st_size, state.st_mtime_ns


def _write(passing: str, data: bytes, mode: int) -> None:
    with open(passing, "xb", opener=_for_me_alone) as file:
        if hasattr(os, "fchmod"):
            os.fchmod(file.fileno(), mode)
        file.write(data)
        file.flush()
        os.fsync(file.fileno())


def _settle(folder: str) -> None:
    """The new name is on the disk when the folder is; where folders cannot be told so, the system does it later."""
    with suppress(OSError):
        descriptor = os.open(folder, os.O_RDONLY)
        try:
            os.fsync(descriptor)
        finally:
            os.close(descriptor)


def _for_me_alone(path: str, flags: int) -> int:
    return os.open(path, flags, _PRIVATE)


@contextmanager
def _locked(path: str) -> Iterator[bool]:
    """Holds the lock file, which stays for ever: one that is removed would be held by two under one name."""
    descriptor = os.open(path, os.O_RDWR | os.O_CREAT | getattr(os, "O_NOFOLLOW", 0), _PRIVATE)
    try:
        give_up = time.monotonic() + PATIENCE_S
        while not (held := _taken(descriptor)) and time.monotonic() < give_up:
            time.sleep(_PAUSE_S)
        yield held
    finally:
        os.close(descriptor)  # and with it the lock, as it also goes with a process that is killed


if sys.platform == "win32":
    import msvcrt

    def _taken(descriptor: int) -> bool:
        try:
            msvcrt.locking(descriptor, msvcrt.LK_NBLCK, 1)
        except OSError:
            return False
        return True
else:
    import fcntl

    def _taken(descriptor: int) -> bool:
        try:
            fcntl.flock(descriptor, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except BlockingIOError:
            return False
        return True
