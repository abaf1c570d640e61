"""A small letter that opens a question before the numbers of a lens is its mount; a plate of some length is a piece."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from tests.grammar.names import lexicon


@pytest.mark.parametrize(
    ("text", "mount"),
    [("k 135/2.5, my E adapter measures 27.60", "k-mount"), ("f 35/2 on e, ring came 28.6", "f-mount")],
)
def test_the_first_letter_before_a_lens_is_its_mount(text: str, mount: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert got.lens is not None
    assert got.lens.ids[0] == mount


def test_an_article_is_none() -> None:
    got = read("a 50/1.8 on E", lexicon())
    assert isinstance(got, Question)
    assert got.lens is not None
    assert not got.lens.ids


def test_what_a_lens_goes_through_is_a_piece_where_its_length_is_told() -> None:
    got = read("OM 50 on an F body thru a home made 0.5 mm plate. infinity?", lexicon())
    assert isinstance(got, Question)
    assert [piece.thickness_mm for piece in got.adapters] == [(0.5, 0.5)]
