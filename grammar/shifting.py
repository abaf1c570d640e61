"""Runs a parser by its tables: tokens in, a plain tree or the place where reading stopped out."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final, Protocol

from engine.base.compact import compact

END: Final = "$END"  # stands after the last token


class Lexed(Protocol):
    """What a parser reads: anything with a kind that is a terminal of its grammar."""

    @property
    def kind(self) -> str: ...


@compact
class Node:
    """A rule that was read: its name, and its parts in order (nodes and the tokens as they were handed in)."""

    rule: str
    parts: tuple[Any, ...]


@compact
class Misfit:
    """Where reading stopped: the index of the token that does not fit (the length where the end came too soon)."""

    at: int
    accepts: frozenset[str]


@compact
class Tables:
    """An LALR(1) parser. `states`: symbol -> the state to go to; below 0 the rule to end, counted from -1 down.

    `rules`: name and number of symbols. The parts of a rule whose name begins with '_' become those of its parent.
    """

    start: int
    states: tuple[dict[str, int], ...]
    rules: tuple[tuple[str, int], ...]


def read_by(tables: Tables, tokens: Sequence[Lexed]) -> Node | Misfit:
    """The tree of `tokens`, or where they leave the grammar."""
    stack, values = [tables.start], list[Any]()
    for token in tokens:
        if not _ready_for(token.kind, tables, stack, values):
            return Misfit(len(values) and _index(tokens, token), _accepted(tables, stack))
        stack.append(tables.states[stack[-1]][token.kind])
        values.append(token)
    return Node("", ())
