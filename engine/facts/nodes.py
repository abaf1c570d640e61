"""What stands in a YAML file before it means anything: texts, lists and mappings, with line and column from 1."""

from __future__ import annotations

from typing import NamedTuple

from engine.base.compact import compact


@compact(frozen=False)
class Text:
    text: str
    quoted: bool
    line: int
    column: int

    @property
    def empty(self) -> bool:
        """Whether nothing was written: an unquoted empty or `~`."""
        return not self.quoted and self.text in ("", "~")


@compact(frozen=False)
class Items:
    items: list[Node]
    line: int
    column: int


class Entry(NamedTuple):
    """A value and the place of its key."""

    line: int
    column: int
    value: Node


@compact(frozen=False)
class Fields:
    entries: dict[str, Entry]
    line: int
    column: int


Node = Text | Items | Fields


def told(node: Node) -> str:
    """What was written there, as a problem says it behind the name of the key."""
    match node:
        case Text():
            return "without a value" if node.empty else f"'{node.text}'"
        case Items():
            return "as a list"
        case Fields():
            return "as a mapping"
