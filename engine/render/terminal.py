"""An answer as lines for a terminal: wrapped, safe to show, and readable without colour."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import takewhile
from textwrap import wrap
from typing import Final

from engine.answers.parts.answer import Answer, Line
from engine.base.plain import plain
from engine.render.caret import with_caret
from engine.render.table import TABLE, table_lines

WORDS: Final = {"danger": "DANGER: ", "caution": "Caution: ", "note": "Note: ", "ask": "? ", "fact": "- "}
COLOURS: Final = {"head": "1", "chain": "1;36", "danger": "1;31", "caution": "33", "ask": "1;35", "note": "2"}
NARROWEST: Final = 24
LONGEST_ASKED: Final = 160  # characters of a question that are shown again where there is no window
WIDEST: Final = 100  # longer lines are hard to read, however wide the window


def lines_of(answer: Answer, width: int = 80, asked_width: int = 0) -> Iterator[tuple[str, str]]:
    """(kind, line) pairs no wider than `width`; the reading comes first, so that a misreading shows.

    `asked_width`: how much is shown of a question that a caret points into, where that is not the width.
    """
    whole = asked_width or max(NARROWEST, width)
    widest = max(NARROWEST, width)
    width = max(NARROWEST, min(width, WIDEST))
    if answer.reading:
        for line in _lines(plain(f"> {answer.reading}", 2000), width, "  "):
            yield "reading", line
    rows = answer.lines
    for at, row in enumerate(rows):
        if row.kind in TABLE:
            if at == 0 or rows[at - 1].kind not in TABLE:
                yield from table_lines(list(takewhile(lambda one: one.kind in TABLE, rows[at:])), widest)
        elif row.kind == "verbatim" and at + 1 < len(rows) and rows[at + 1].kind == "caret":
            under = len(rows[at + 1].text) - 1
            yield from zip(("verbatim", "caret"), with_caret(plain(row.text, 4000), under, whole), strict=True)
        elif row.kind != "caret":
            yield from _wrapped(row, width)


def _wrapped(row: Line, width: int) -> Iterator[tuple[str, str]]:
    if row.kind == "verbatim":
        yield row.kind, plain(row.text, 4000)
        return
    indent = " " * (2 * min(row.depth, 6))
    lead = WORDS.get(row.kind, "")
    number, dot, _ = row.text.partition(". ")
    numbered = len(number + dot) if dot and number.isdecimal() else 0
    hanging = " " * (len(indent) + (2 if lead else numbered))
    for line in _lines(f"{indent}{lead}{plain(row.text, 4000)}", width, hanging):
        yield row.kind, line


def _lines(text: str, width: int, hanging: str) -> list[str]:
    """The text in lines; a name with a hyphen is not torn apart."""
    return wrap(text, width, subsequent_indent=hanging, break_on_hyphens=False) or [""]


def plain_text(answer: Answer, width: int = WIDEST) -> str:
    """The answer without its reading and without colour."""
    return "\n".join(line for kind, line in lines_of(answer, width, LONGEST_ASKED) if kind != "reading")


def coloured(kind: str, line: str) -> str:
    code = COLOURS.get(kind)
    return f"\x1b[{code}m{line}\x1b[0m" if code else line


def shown(answer: Answer, width: int = 80, colour: bool = False) -> str:
    """The whole answer as it is printed."""
    return "\n".join(coloured(kind, line) if colour else line for kind, line in lines_of(answer, width))
