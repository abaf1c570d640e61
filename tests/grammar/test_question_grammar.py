"""The grammar of questions is small, unambiguous and soon built."""

from __future__ import annotations

import logging
import time
from pathlib import Path

import lark
import pytest

from grammar import parsing

GRAMMARS = ["question", "condition"]


@pytest.mark.parametrize("name", GRAMMARS)
def test_no_conflict_is_resolved_in_silence(name: str, caplog: pytest.LogCaptureFixture) -> None:
    text = (Path(parsing.__file__).parent / f"{name}.lark").read_text(encoding="utf-8")
    level = lark.logger.level
    lark.logger.setLevel(logging.DEBUG)
    lark.logger.addHandler(caplog.handler)
    try:
        lark.Lark(text, parser="lalr", lexer=parsing._Given, debug=True, strict=False)
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


@pytest.mark.parametrize("name", GRAMMARS)
def test_a_parser_is_soon_built(name: str) -> None:
    """Reference: 25 ms; a loaded machine is given four times as long."""
    times = []
    for _ in range(3):
        parsing.parser.cache_clear()
        start = time.perf_counter()
        parsing.parser(name)
        times.append(time.perf_counter() - start)
    assert min(times) < 0.1
