"""Where a fact was written: file, line and column, counted from 1 as editors do."""

from __future__ import annotations

from engine.base.compact import compact


@compact(order=True)
class Place:
    file: str
    line: int
    column: int

    def __str__(self) -> str:
        return f"{self.file}:{self.line}:{self.column}"


NOWHERE = Place("", 0, 0)
