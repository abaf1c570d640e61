"""The grammars are small, unambiguous and soon built, and their shipped tables do what lark's own parser does."""

from __future__ import annotations

import logging
import random
from collections.abc import Sequence
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import lark
import pytest

from grammar import parsing
from grammar.shifting import END, Misfit, Node


@pytest.mark.parametrize("name", parsing.GRAMMARS)
def test_no_conflict_is_resolved_in_silence(name: str, caplog: pytest.LogCaptureFixture) -> None:
    level = lark.logger.level
    lark.logger.setLevel(logging.DEBUG)
    lark.logger.addHandler(caplog.handler)
    try:
        parsing.lark_of(name, debug=True, strict=False)
    finally:
        lark.logger.setLevel(level)
        lark.logger.removeHandler(caplog.handler)
    assert "conflict" not in caplog.text.casefold()


def test_a_conflict_would_be_seen(caplog: pytest.LogCaptureFixture) -> None:
    lark.logger.setLevel(logging.DEBUG)
    lark.logger.addHandler(caplog.handler)
    try:
        lark.Lark('start: a\na: A | a a\nA: "a"', parser="lalr", debug=True)
        assert "conflict" in caplog.text.casefold()
    finally:
        lark.logger.setLevel(logging.CRITICAL)
        lark.logger.removeHandler(caplog.handler)


@pytest.mark.parametrize("name", parsing.GRAMMARS)
def test_the_shipped_tables_are_current(name: str) -> None:
    shipped = Path(parsing.shipped_path(name)).read_text("utf-8")
    assert shipped == f"{parsing.key_of(name)}\n{parsing.built(name)}", "run python -m grammar.parsing"


@pytest.mark.parametrize("shipped", [None, "", "0" * 64 + '\n{"rules": []}', "\xff"])
def test_tables_of_another_grammar_are_passed_over(
    shipped: str | None, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    good = parsing.tables_of.__wrapped__("question")
    if shipped is not None:
        (tmp_path / "question.tables").write_text(shipped, "latin-1")
    monkeypatch.setattr(parsing, "shipped_path", lambda name: str(tmp_path / f"{name}.tables"))
    assert parsing.tables_of.__wrapped__("question") == good


def tokens_of(kinds: Sequence[str]) -> list[Any]:
    return [SimpleNamespace(kind=kind) for kind in kinds]


def by_lark(parser: lark.Lark, tokens: list[Any]) -> Node | Misfit:
    """What lark itself makes of the tokens."""

    def plain(tree: Any) -> Any:
        if isinstance(tree, lark.Tree):
            return Node(str(tree.data), tuple(map(plain, tree.children)))
        return tokens[tree.start_pos]

    try:
        given: Any = list(tokens)
        node: Node = plain(parser.parse(given))
    except lark.UnexpectedToken as error:
        stopped: Any = error.interactive_parser
        at = len(tokens) if error.token.type == END else error.token.start_pos or 0
        return Misfit(at, frozenset(stopped.accepts()))
    return node


@pytest.mark.parametrize("name", parsing.GRAMMARS)
def test_any_row_of_tokens_is_read_as_lark_reads_it(name: str) -> None:
    """Rows that mostly go on as the grammar allows, and now and then do not."""
    parser, chance = parsing.lark_of(name), random.Random(11)
    kinds = sorted({kind for state in parsing.tables_of(name).states for kind in state if kind.isupper()} - {END})
    read = 0
    for _ in range(3000):
        row: list[str] = []
        while chance.random() < 0.9:
            stopped = parsing.parse(name, tokens_of([*row, "NO SUCH KIND"]))
            assert isinstance(stopped, Misfit)
            following = sorted(stopped.accepts - {END})
            # a row that may end mostly does, or hardly any would ever be whole
            if END in stopped.accepts and len(row) > 2 and chance.random() < 0.4:
                break
            row.append(chance.choice(kinds if not following or chance.random() < 0.05 else following))
        tokens = tokens_of(row)
        mine = parsing.parse(name, tokens)
        assert mine == by_lark(parser, tokens), row
        read += isinstance(mine, Node)
    assert read > 200
