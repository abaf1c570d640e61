"""Names of files in a question."""

from __future__ import annotations

import pytest

from grammar.questions import Question
from grammar.reader import read
from grammar.words.filenames import file_at
from tests.grammar.names import lexicon


@pytest.mark.parametrize(
    ("line", "name"),
    [
        ("friday.html", "friday.html"),
        ("friday.htm and more", "friday.htm"),
        ("../up/friday.HTML", "../up/friday.HTML"),
        ('"my friday cards.html"', "my friday cards.html"),
        ("herons.svg", "herons.svg"),
        (".html", None),
        ("friday.html.txt", None),
        ("friday", None),
        ("html", None),
    ],
)
def test_a_file_is_known_by_its_ending(line: str, name: str | None) -> None:
    found = file_at(line, 0)
    assert (found[0] if found else None) == name


@pytest.mark.parametrize(
    "text",
    [
        "card for an M42 lens on an E-mount body as friday.html",
        "save cards for an M42 lens on an E-mount body as friday.html",
        "friday.html: card for an M42 lens on an E-mount body",
    ],
)
def test_the_name_of_a_file_is_kept_and_takes_nothing_else_away(text: str) -> None:
    got = read(text, lexicon())
    assert isinstance(got, Question)
    assert (got.intent, got.said("file")) == ("card", "friday.html")
    assert [thing.id for thing in got.lenses] == ["m42"]
    assert [thing.id for thing in got.bodies] == ["e-mount"]


@pytest.mark.parametrize("stop", ["2.8", "1.4", "5.6", "11"])
def test_a_stop_before_in_is_not_cut_short(stop: str) -> None:
    got = read(f"how much nd at f/{stop} in full sun, 1/50", lexicon())
    assert isinstance(got, Question)
    assert got.f_number == float(stop)
    assert got.said("light") == "full-sun"
