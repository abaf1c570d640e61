"""Long answers a screenful at a time: the next page, or enough; what is typed instead goes to the prompt."""

from __future__ import annotations

import os
import re
import select
import sys
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager, suppress
from typing import Final

from engine.render.caret import columns_of

LEFT_FREE: Final = 3  # rows that the prompt takes: a blank one, its own, and the bottom line
_STYLE: Final = re.compile("\x1b\\[[0-9;]*m")
_ON: Final = frozenset([" ", "\r", "\n", "\x1b[B", "\x1bOB", "\x1b[6~"])  # space, enter, down, page down
_ENOUGH: Final = frozenset(["q", "Q", "\x03", "\x04", "\x1b", ""])  # q, ctrl-c, ctrl-d, escape, the end of input
_ESCAPED: Final = 0.05  # seconds within which the rest of a key follows its escape

Size = Callable[[], tuple[int, int]]


def paged(lines: Sequence[str], size: Size, key: Callable[[], str], write: Callable[[str], None]) -> str:
    """Write the lines, as many at a time as there is room for; gives what was typed instead of going on.

    `size` gives columns and rows, and is asked anew for each page: the window may have changed.
    """
    at = 0
    while True:
        columns, rows = size()
        rest = sum(_rows(line, columns) for line in lines[at:])
        if rows <= LEFT_FREE or rest <= rows - LEFT_FREE:
            write("".join(f"{line}\n" for line in lines[at:]))
            return ""
        # where the rest would just fill the window, the prompt below it would push its beginning out
        after = _page_end(lines, at, columns, rows - (1 if rest >= rows else LEFT_FREE))
        write("".join(f"{line}\n" for line in lines[at:after]))
        at = after
        if at == len(lines):
            return ""
        more = f"more: space goes on, q stops ({at}/{len(lines)})"[: max(columns - 1, 1)]
        write(more)
        typed = _answer(key)
        write(f"\r{' ' * len(more)}\r")
        if typed not in _ON:
            return "" if typed in _ENOUGH else typed


def _answer(key: Callable[[], str]) -> str:
    """The first key that means something here: going on, enough, or the first letter of the next question."""
    while True:
        try:
            typed = key()
        except KeyboardInterrupt:
            return "\x03"
        if typed in _ON or typed in _ENOUGH or typed.isprintable():
            return typed


def _page_end(lines: Sequence[str], at: int, columns: int, room: int) -> int:
    """The line after the last that fits; one at least, so that it always goes on."""
    used = 0
    for after in range(at, len(lines)):
        used += _rows(lines[after], columns)
        if used > room:
            return max(after, at + 1)
    return len(lines)


def _rows(line: str, columns: int) -> int:
    """Rows that a line takes; it may have been made for a wider window."""
    return max(1, -(-columns_of(_STYLE.sub("", line)) // max(columns, 1)))


def on_terminal(lines: Sequence[str]) -> str:
    """`paged` on the terminal itself; where its keys cannot be read one by one, all is written at once."""
    if os.name != "posix":
        sys.stdout.write("".join(f"{line}\n" for line in lines))
        sys.stdout.flush()
        return ""
    with _keys() as key:
        return paged(lines, _size, key, _write)


def _size() -> tuple[int, int]:
    try:
        size = os.get_terminal_size(sys.stdout.fileno())
    except (OSError, ValueError):
        return 80, 0
    return size.columns, size.lines


def _write(text: str) -> None:
    sys.stdout.write(text)
    sys.stdout.flush()


@contextmanager
def _keys() -> Iterator[Callable[[], str]]:
    """A reader of single keys. What was typed before stays to be read, and so does what follows."""
    import termios
    import tty

    descriptor = sys.stdin.fileno()
    before = termios.tcgetattr(descriptor)
    try:
        tty.setcbreak(descriptor, termios.TCSANOW)
        yield lambda: _key(descriptor)
    finally:
        with suppress(termios.error):
            termios.tcsetattr(descriptor, termios.TCSANOW, before)


def _key(descriptor: int) -> str:
    try:
        read = os.read(descriptor, 1)
    except OSError:  # the terminal has gone
        return ""
    if read == b"\x1b":
        while select.select([descriptor], [], [], _ESCAPED)[0] and len(read) < 8:
            read += os.read(descriptor, 1)
            if read[-1:] == b"~" or (len(read) > 2 and read[-1:].isalpha()):
                break
    elif read and read[0] >= 0xC0:  # the first byte of a letter of several
        read += os.read(descriptor, 1 + (read[0] >= 0xE0) + (read[0] >= 0xF0))
    return read.decode("utf-8", "replace")
