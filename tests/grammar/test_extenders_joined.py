"""Extenders behind each other each have the factor told; a lens's own stop before one is none."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


@pytest.mark.parametrize(
    ("text", "factors"),
    [
        ("1.4 and 2x converters behind a 100/2", [1.4, 2.0]),
        ("a 1.4x and a 2x behind my 135/2", [1.4, 2.0]),
        ("both converters (1.4 and 2) on a 300/2.8", [1.4, 2.0]),
        ("85mm f/1.8 with 1.4 + 1.7 extenders", [1.4, 1.7]),
        ("85 1.4 and 2x converter", [2.0]),
        ("birder: 400 plus 1.4 converter on APS-C, and f5.6 turns into?", [1.4]),
        ("tele 400 + 1.7 converter on mft reach", [1.7]),
        ("200 plus 2 converter, f4 becomes?", [2.0]),
    ],
)
def test_each_extender_of_a_row(text: str, factors: list[float]) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert [one.factor for one in got.adapters] == factors
