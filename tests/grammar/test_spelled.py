"""Numbers in words become figures; words that only sound like numbers stay as they are."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from grammar.words.atoms import smooth
from tests.grammar.names import lexicon


@pytest.mark.parametrize(
    ("said", "meant"),
    [
        ("sixteen mm", "16 mm"),
        ("twentyfive metres", "25 metres"),
        ("a hundred and five mm", "105 mm"),
        ("my one thirty five", "my 135"),
        ("2 and a half mm", "2.5 mm"),
        ("two and a quarter inch", "2.25 inch"),
        ("a metre and a half", "1.5 metre"),
        ("three eighths of a turn", "3/8 turn"),
        ("quarter life size", "1/4 life size"),
        ("two thirds inch chip", "2/3 inch chip"),
        ("one point four", "1.4"),
        ("point seven one", "0.71"),
        ("at a fiftieth", "at 1/50"),
        ("iso eight hundred", "iso 800"),
        ("a 50 f one eight", "a 50 f 1.8"),
        ("turned it back by three eighths", "turned it back by 3/8 turn"),
        ("half a tenth over", "0.05 mm over"),
        ("nd thirty two", "nd32"),
    ],
)
def test_a_number_in_words_is_written_in_figures(said: str, meant: str) -> None:
    assert lexicon().words.spelled.in_figures(*smooth(said))[0] == meant


@pytest.mark.parametrize("said", ["micro four thirds", "two M lenses", "the second one", "a third of the way", "one"])
def test_words_that_are_no_quantity_stay(said: str) -> None:
    assert lexicon().words.spelled.in_figures(*smooth(said))[0] == said


def test_columns_stay_those_of_the_text_as_typed() -> None:
    line, columns = lexicon().words.spelled.in_figures(*smooth("a sixteen mm lens"))
    assert [columns[line.index(word)] for word in ("16", "mm", "lens")] == [3, 11, 14]


def test_a_focal_length_in_words_is_one() -> None:
    question = read("sixteen mm C lens on E, ok at infinity", lexicon())
    assert isinstance(question, Question)
    assert [lens.focal_length_mm for lens in question.lenses] == [16]
