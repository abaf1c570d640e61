"""'38 clear' behind a number is an opening, and no length of the lens or of the ring."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


@pytest.mark.parametrize(
    ("text", "bore"),
    [
        ("t2 tunnel is only 38 clear, full frame corners?", "38 mm"),
        ("adapter with only 30mm clear, full frame, corners ok?", "30 mm"),
        ("t2 ring is 36mm clear inside, full frame, corners?", "36 mm"),
        ("does a 58 mm lens clear the mirror of an F body", None),
    ],
)
def test_clear_behind_a_number_is_an_opening(text: str, bore: str | None) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.said("bore") == bore
