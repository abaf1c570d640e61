"""Whatever is typed, reading gives a question or one helpful line, and never raises."""

from __future__ import annotations

from hypothesis import given, settings
from hypothesis import strategies as st

from grammar.echo.echo import canonical
from grammar.kinds import INTENTS
from grammar.questions import Question, Unread
from grammar.reader import read
from tests.examples import examples
from tests.grammar.names import lexicon, words

PHRASES = sorted({phrase for means, says in words() if not means.startswith("intent") for phrase in says})
NUMBERS = ["25mm", "f/1.4", "50/1.8", "17-31", "0.71x", "2x", "1:1", "1/50", "iso 800", "$40", "3 m", '1/2"', "M42x1",
           "#2", "1.5", "50", "26 tpi", "24p", "nd8", "1/4 turn", "+2", "-5", "f/0", "0.1", "5/8-32", "6x6", "16mm",
           "T2.2"]  # fmt: skip
NAMES = [
    "M42",
    "C",
    "CS",
    "E",
    "e-mount",
    "mft",
    "fd",
    "K",
    "s16",
    "full frame",
    "aps-c",
    "a",
    "110",
    "EF-M",
    "m39",
    "F",
]
MARKS = [
    ",",
    "?",
    ".",
    "+",
    "-",
    "->",
    "/",
    "=",
    "(",
    ")",
    "and",
    "on",
    "to",
    "with",
    "vs",
    "at",
    "for",
    "--",
    "\u2192",
]


def check(got: Question | Unread, text: str) -> None:
    if isinstance(got, Question):
        assert got.intent in INTENTS
        assert canonical(got, lexicon().name_for)
        return
    assert got.expected
    assert "\n" not in got.expected
    assert 1 <= got.column <= len(text) + 1


@settings(max_examples=examples(120), deadline=None)
@given(st.text(max_size=120))
def test_any_text_is_read_or_refused(text: str) -> None:
    check(read(text, lexicon()), text)


@settings(max_examples=examples(120), deadline=None)
@given(st.lists(st.sampled_from(PHRASES + NUMBERS * 12 + NAMES * 20 + MARKS * 20), max_size=14), st.booleans())
def test_any_row_of_known_words_is_read_or_refused(parts: list[str], follow: bool) -> None:
    before = read("a 25mm C lens on MFT with a 5mm tube, infinity?", lexicon())
    text = " ".join(parts)
    check(read(text, lexicon(), before if follow and isinstance(before, Question) else None), text)


def test_full_width_letters_are_read_as_plain_ones() -> None:
    got = read("ｍ４２ ｏｎ Ｅ-mount", lexicon())
    assert isinstance(got, Question)
    assert (got.lens and got.lens.id, got.body and got.body.id) == ("m42", "e-mount")


def test_control_characters_are_spaces() -> None:
    got = read("get\x00M42\x1bon\x07E-mount\r\n", lexicon())
    assert isinstance(got, Question)
    assert (got.lens and got.lens.id, got.body and got.body.id) == ("m42", "e-mount")


def test_more_than_two_thousand_characters_are_refused_in_one_line() -> None:
    got = read("M42 on E " * 300, lexicon())
    assert isinstance(got, Unread)
    assert "2000 characters" in got.expected


def test_nothing_is_answered_with_what_could_be_asked() -> None:
    for text in ("", "   ", "\n\t"):
        got = read(text, lexicon())
        assert isinstance(got, Unread)
        assert "can I put" in got.expected
