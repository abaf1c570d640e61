"""Builds the parsers and runs them: tokens in, a plain tree or the place where reading stopped out."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from functools import cache
from pathlib import Path
from typing import Any, Protocol

from lark import Lark, Token, Tree, UnexpectedToken
from lark.lexer import Lexer

from engine.base.compact import compact


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


class _Given(Lexer):
    """Hands over tokens that were made elsewhere."""

    def __init__(self, lexer_conf: object) -> None:
        pass

    def lex(self, lexer_state: Any, parser_state: Any = None) -> Iterator[Token]:
        for at, token in enumerate(lexer_state if isinstance(lexer_state, list) else lexer_state.text):
            yield Token(token.kind, "", at, 1, at + 1, 1, at + 2, at + 1)


@cache
def parser(grammar: str) -> Lark:
    """The parser of `grammar` ('question' or 'condition'), built once; its grammar stands beside this file."""
    text = (Path(__file__).parent / f"{grammar}.lark").read_text(encoding="utf-8")
    return Lark(text, parser="lalr", lexer=_Given, maybe_placeholders=False)


def parse(grammar: str, tokens: Sequence[Lexed]) -> Node | Misfit:
    """The tree of `tokens`, or where they leave the grammar."""
    try:
        tree: Any = parser(grammar).parse(list(tokens))
    except UnexpectedToken as error:
        at = len(tokens) if error.token.type == "$END" else (error.token.start_pos or 0)
        stopped: Any = error.interactive_parser
        return Misfit(at, frozenset(stopped.accepts() if stopped else ()))
    node: Node = _plain(tree, tokens)
    return node


def _plain(tree: Any, tokens: Sequence[Lexed]) -> Any:
    if isinstance(tree, Tree):
        return Node(str(tree.data), tuple(_plain(part, tokens) for part in tree.children))
    return tokens[tree.start_pos] if isinstance(tree, Token) and tree.start_pos is not None else tree
