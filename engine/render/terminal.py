"""An answer as lines for a terminal: wrapped, safe to show, and readable without colour."""

from __future__ import annotations

from collections.abc import Iterator
from textwrap import wrap
from typing import Final

from engine.answers.answer import Answer, Line
from engine.base.plain import plain

WORDS: Final = {"danger": "DANGER: ", "caution": "Caution: ", "note": "Note: ", "ask": "? ", "fact": "- "}
COLOURS: Final = {"head": "1", "chain": "1;36", "danger": "1;31", "caution": "33", "ask": "1;35", "note": "2"}
NARROWEST: Final = 24
WIDEST: Final = 100  # longer lines are hard to read, however wide the window


def lines_of(answer: Answer, width: int = 80) -> Iterator[tuple[str, str]]:
    """(kind, line) pairs no wider than `width`; the reading comes first, so that a misreading shows."""
    width = max(NARROWEST, min(width, WIDEST))
    if answer.reading:
        for line in wrap(plain(f"> {answer.reading}", 2000), width, subsequent_indent="  "):
            yield "reading", line
    for row in answer.lines:
        yield from _wrapped(row, width)


def _wrapped(row: Line, width: int) -> Iterator[tuple[str, str]]:
    if row.kind == "verbatim":
        yield row.kind, plain(row.text, 4000)
        return
    indent = " " * (2 * min(row.depth, 6))
    lead = WORDS.get(row.kind, "")
    text = f"{indent}{lead}{plain(row.text, 4000)}"
    hanging = indent + " " * (2 if lead else 0)
    for line in wrap(text, width, subsequent_indent=hanging, break_long_words=True) or [""]:
        yield row.kind, line


def plain_text(answer: Answer, width: int = WIDEST) -> str:
    """The answer without its reading and without colour."""
    return "\n".join(line for kind, line in lines_of(answer, width) if kind != "reading")


def coloured(kind: str, line: str) -> str:
    code = COLOURS.get(kind)
    return f"\x1b[{code}m{line}\x1b[0m" if code else line


def shown(answer: Answer, width: int = 80, colour: bool = False) -> str:
    """The whole answer as it is printed."""
    return "\n".join(coloured(kind, line) if colour else line for kind, line in lines_of(answer, width))
