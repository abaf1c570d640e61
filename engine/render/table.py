"""Rows of cells as columns where they fit, else as a list: no meaning hangs on where on the line a cell is."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from textwrap import wrap
from typing import Final

from engine.answers.parts.answer import Line
from engine.base.plain import plain

TABLE: Final = frozenset({"columns", "row"})  # kinds of line whose text is cells with tabs between
GAP: Final = 2  # columns between cells
WIDEST_TEXT: Final = 100


def table_lines(rows: Sequence[Line], width: int) -> Iterator[tuple[str, str]]:
    """(kind, line) pairs: as columns within `width`, else each row under its first cell, a cell with its heading."""
    cells = [[plain(cell, 400) for cell in row.text.split("\t")] for row in rows]
    count = max(map(len, cells))
    cells = [row + [""] * (count - len(row)) for row in cells]
    widths = [max(len(row[n]) for row in cells) for n in range(count)]
    if sum(widths) + GAP * (count - 1) <= width:
        for row, texts in zip(rows, cells, strict=True):
            line = (" " * GAP).join(text.ljust(size) for text, size in zip(texts, widths, strict=True))
            yield ("head" if row.kind == "columns" else "fact"), line.rstrip()
        return
    heads = cells[0] if rows[0].kind == "columns" else [""] * count
    for row, texts in zip(rows, cells, strict=True):
        if row.kind != "columns":
            yield from _listed(heads, texts, min(width, WIDEST_TEXT))


def _listed(heads: Sequence[str], texts: Sequence[str], width: int) -> Iterator[tuple[str, str]]:
    """A row as a list; headings with one and the same cell are told together."""
    yield from (("head", line) for line in wrap(f"{texts[0]}:", width, break_on_hyphens=False))
    alike: dict[str, list[str]] = {}
    for head, text in zip(heads[1:], texts[1:], strict=True):
        if text:
            alike.setdefault(text, []).append(head)
    for text, those in alike.items():
        who = "all" if len(those) == len(heads) - 1 > 1 else ", ".join(those)
        line = f"  - {who}: {text}"
        for part in wrap(line, width, subsequent_indent="    ", break_on_hyphens=False):
            yield "fact", part
