"""Marks as people in a hurry type them: a comma for the decimal point, all in capitals, thanks at the end."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from grammar.words.atoms import smooth
from tests.grammar.names import lexicon


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("m42x0,75", "m42x0.75"),
        ("0,5x at f/4", "0.5x at f/4"),
        ("1,5 m to 3,5m", "1.5 m to 3.5m"),
        ("1,8 nd on", "1.8 nd on"),
        ("tubes 10,16,26mm", "tubes 10,16,26mm"),
        ("12,20 mm tubes", "12,20 mm tubes"),
        ("f/4, 2 m, mft", "f/4, 2 m, mft"),
        ("50,85 and 135", "50,85 and 135"),
    ],
)
def test_a_comma_is_a_decimal_point_only_where_it_parts_no_row(typed: str, meant: str) -> None:
    assert smooth(typed)[0] == meant


def test_capitals_throughout_are_no_names_and_a_few_are() -> None:
    assert smooth("WHAT DOES 1 M ON THE RING MEAN")[0] == "what does 1 m on the ring mean"
    assert smooth("50 M LENS")[0] == "50 M LENS"


def test_thanks_at_the_end_ask_nothing() -> None:
    plain, polite = (read(text, lexicon()) for text in ("5x f8 effective f-number", "5X F8 EFFECTIVE F-NUMBER THX"))
    assert isinstance(plain, Question)
    assert isinstance(polite, Question)
    assert (polite.intent, polite.values, polite.f_number) == (plain.intent, plain.values, plain.f_number)
