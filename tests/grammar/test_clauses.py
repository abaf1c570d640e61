"""A text in its clauses: a phrase counts for the one that it stands in."""

from __future__ import annotations

from grammar.words.clauses import clauses_of
from grammar.words.mentioned import mentioned

PHRASES = {"parts-clauses": ("and|but|while",), "first": ("first|",), "off": ("too thin",)}


def test_signs_and_small_words_part_clauses_and_points_of_numbers_do_not() -> None:
    text = "The first is 11.9, the other 10.2 and both are too thin"
    clauses = clauses_of(text, mentioned(text, PHRASES))
    assert [one.text for one in clauses] == ["the first is 11.9", "the other 10.2 ", " both are too thin"]
    assert [one.mentions("first") for one in clauses] == [True, False, False]
    assert [(one.at, one.end) for one in clauses[2].places("off")] == [(10, 18)]


def test_what_stands_behind_the_text_is_of_no_clause() -> None:
    found = mentioned("the second, too thin", PHRASES)
    assert not any(one.mentions("off") for one in clauses_of("the second", found))
