"""Bare numbers that are prices, by a price told beside them."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from grammar.words.lexicon import Lexicon
from tests.desks import desk_of


def lexicon() -> Lexicon:
    return desk_of().lexicon


@pytest.mark.parametrize(
    "text",
    [
        "is the 12 dollar EF to E ring ok or do i need the 60 one",
        "EF to E ring, 12 or 60 bucks, which one do i buy",
    ],
)
def test_a_number_beside_a_price_is_one_too(text: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.said("price") == "12, 60"
    assert all(lens.focal_length_mm is None for lens in got.lenses)


def test_without_a_price_the_number_is_that_of_the_lens() -> None:
    got = read("M42 to E ring for the 35 or for the 50 one", lexicon())
    assert isinstance(got, Question)
    assert got.said("price") is None


def test_an_article_before_a_word_makes_no_other_name() -> None:
    got = read("what does a focal reducer do", lexicon())
    assert isinstance(got, Question)
    assert [thing.id for thing in got.things] == ["focal-reducer"]
