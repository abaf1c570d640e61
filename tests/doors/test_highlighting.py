"""Which words of a line are understood as they stand."""

from __future__ import annotations

from functools import cache

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.doors.highlighting import as_typed, parts_of
from grammar.words.lexicon import Lexicon
from tests.desks import desk_of


@cache
def lexicon() -> Lexicon:
    return as_typed(desk_of().lexicon)


def marked(text: str) -> list[tuple[str, str]]:
    return [(text[start:end], sort) for start, end, sort in parts_of(text, lexicon()) if sort]


@pytest.mark.parametrize(
    ("text", "parts"),
    [
        (
            "how do I get a 25 mm f/1.4 C-mount lens on my boat",
            [
                ("how do I", "word"), ("get", "word"), ("25 mm", "number"), ("f/1.4", "number"), ("C-mount", "name"),
                ("lens", "word"), ("on", "word"),
            ],
        ),
        ("C on E", [("C", "name"), ("on", "word"), ("E", "name")]),
        ("a wibble of 12", [("of", "word")]),
        ("what is a helicoid", [("what is a", "word"), ("helicoid", "word")]),
        ("wibble helicod", []),
        ("", []),
        ("   ", []),
    ],
)  # fmt: skip
def test_names_numbers_with_units_and_words_are_understood(text: str, parts: list[tuple[str, str]]) -> None:
    assert marked(text) == parts


@given(st.text(max_size=60))
def test_the_parts_are_the_whole_line(text: str) -> None:
    assert "".join(text[start:end] for start, end, _ in parts_of(text, lexicon())) == text


def test_marks_of_another_script_do_not_move_what_is_marked() -> None:
    assert marked("½ in ‒ ƒ/2 “E-mount”")[-1] == ("E-mount", "name")


def test_conditions_and_orders_of_ones_own_gear_are_understood() -> None:
    assert marked("which of my lenses vignette least, lightest first")[0] in (
        ("which of my", "word"),
        ("which of my lenses", "word"),
    )
    assert ("vignette", "word") in marked("which of my lenses vignette on E")
    assert ("lightest first", "word") not in marked("the lightest first")
