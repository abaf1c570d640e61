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
    """An LALR(1) parser. `states`: what each does at a symbol, the state to go to or, below 0, the rule that ends.

    The first state is the one to begin in. `rules`: name and number of symbols; -1 is the first of them. A rule whose
    name begins with '_' leaves no node of its own.
    """

    states: Sequence[dict[str, int]]
    rules: Sequence[tuple[str, int]]


def read_by(tables: Tables, tokens: Sequence[Lexed]) -> Node | Misfit:
    """The tree of `tokens`, or where they leave the grammar."""
    states, rules = tables.states, tables.rules
    stack: list[int] = [0]
    parts: list[Any] = []  # one fewer than the stack
    for at, kind in enumerate((*(token.kind for token in tokens), END)):
        todo = states[stack[-1]].get(kind)
        while todo is not None and todo < 0:
            name, size = rules[-1 - todo]
            cut = len(stack) - size
            parts[cut - 1 :] = [_ended(name, parts[cut - 1 :])]
            stack[cut:] = [states[stack[cut - 1]][name]]
            todo = states[stack[-1]].get(kind)
        if todo is None:
            terminals = filter(str.isupper, states[stack[-1]])
            return Misfit(at, frozenset(one for one in terminals if _takes(tables, stack, one)))
        if kind != END:
            stack.append(todo)
            parts.append(tokens[at])
    tree: Node = parts[0]
    return tree


def _ended(name: str, parts: list[Any]) -> Node | list[Any]:
    """The node of a rule; a list where its parts are to be those of the rule around it."""
    flat: list[Any] = []
    for part in parts:
        if type(part) is not list:
            flat.append(part)
        elif flat:
            flat += part
        else:
            flat = part  # nobody else has it, and a long row is grown in place
    return flat if name.startswith("_") else Node(name, tuple(flat))


def _takes(tables: Tables, stack: list[int], kind: str) -> bool:
    """Whether a token of this kind may come next; that a state knows it is not enough."""
    stack = stack.copy()
    while (todo := tables.states[stack[-1]].get(kind)) is not None:
        if todo >= 0:
            return True
        name, size = tables.rules[-1 - todo]
        cut = len(stack) - size
        stack[cut:] = [tables.states[stack[cut - 1]][name]]
    return False
