"""A caret stands under its word, however narrow the window."""

from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from engine.render.caret import columns_of, with_caret

ASKED = "please tell me how I could get my old M24 lens on the F-mount body that I own"


def test_a_line_that_fits_is_not_cut() -> None:
    assert with_caret("a M24 lens", 2, 24) == ("a M24 lens", "  ^")


def test_a_longer_line_is_cut_around_the_word() -> None:
    line, caret = with_caret(ASKED, ASKED.index("M24"), 40)
    assert line == "...ould get my old M24 lens on the F-..."
    assert caret == " " * line.index("M24") + "^"


def test_the_end_of_a_line_may_be_pointed_at() -> None:
    line, caret = with_caret(ASKED, len(ASKED), 40)
    assert line.endswith("body that I own")
    assert len(caret) == len(line) + 1


def test_wide_letters_take_two_columns() -> None:
    assert with_caret("レンズ M24", 4, 40) == ("レンズ M24", "       ^")


@given(st.text("abc de\u65e5e\u0301 ", max_size=120), st.integers(0, 120), st.integers(24, 130))
def test_the_caret_is_under_its_letter_and_the_line_fits(text: str, at: int, width: int) -> None:
    at = min(at, len(text))
    line, caret = with_caret(text, at, width)
    assert columns_of(line) <= width
    before, under = caret[:-1], text[at : at + 1]
    starts = [one for one in range(len(line) + 1) if columns_of(line[:one]) == len(before)]
    assert any(line[one : one + 1] == under for one in starts)
