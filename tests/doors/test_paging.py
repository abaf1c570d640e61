"""Pages of a long answer, with keys and a window made up."""

from __future__ import annotations

from collections.abc import Iterator

from hypothesis import given
from hypothesis import strategies as st

from engine.doors.paging import LEFT_FREE, paged


class Window:
    """Takes down what is written; the keys are pressed one after the other, then the input ends."""

    def __init__(self, keys: list[str], columns: int = 80, rows: int = 10) -> None:
        self.keys: Iterator[str] = iter(keys)
        self.columns, self.rows = columns, rows
        self.pages: list[str] = [""]

    def size(self) -> tuple[int, int]:
        return self.columns, self.rows

    def key(self) -> str:
        return next(self.keys, "")

    def write(self, text: str) -> None:
        if text.startswith("more: "):
            self.pages.append("")
        elif not text.startswith("\r"):
            self.pages[-1] += text

    def shows(self, lines: list[str]) -> str:
        return paged(lines, self.size, self.key, self.write)


LINES = [f"line {n}" for n in range(1, 26)]


def test_what_fits_with_the_prompt_below_it_is_written_at_once() -> None:
    window = Window([])
    assert window.shows(LINES[:7]) == ""
    assert window.pages == ["".join(f"{line}\n" for line in LINES[:7])]


def test_one_line_more_is_two_pages() -> None:
    window = Window([" "], rows=8)
    assert window.shows(LINES[:9]) == ""
    assert [page.count("\n") for page in window.pages] == [7, 2]


def test_a_last_page_is_never_so_full_that_the_prompt_pushes_it_up() -> None:
    for count in range(1, 60):
        window = Window([" "] * 9)
        window.shows([str(n) for n in range(count)])
        assert window.pages[-1].count("\n") <= 10 - LEFT_FREE
        assert all(0 < page.count("\n") <= 9 for page in window.pages)


def test_each_page_leaves_a_row_for_what_goes_on() -> None:
    window = Window([" ", "\r", "\x1b[6~"])
    window.shows(LINES)
    assert [page.count("\n") for page in window.pages] == [9, 9, 7]


def test_enough_is_enough() -> None:
    for key in ("q", "Q", "\x03", "\x04", "\x1b", ""):
        window = Window([key, " "])
        assert window.shows(LINES) == ""
        assert "line 10" not in "".join(window.pages)


def test_a_letter_is_the_beginning_of_the_next_question() -> None:
    assert Window(["w"]).shows(LINES) == "w"
    assert Window(["é"]).shows(LINES) == "é"


def test_keys_that_mean_nothing_are_passed_over() -> None:
    window = Window(["\t", "\x1b[A", "\x1bx", " ", "q"])
    assert window.shows(LINES) == ""
    assert len(window.pages) == 3


def test_lines_wider_than_the_window_count_as_the_rows_they_take() -> None:
    window = Window([" "] * 9, columns=20, rows=6)
    window.shows(["x" * 50] * 3)
    assert [page.count("\n") for page in window.pages] == [1, 1, 1]


def test_colour_takes_no_columns() -> None:
    window = Window([], columns=20, rows=6)
    window.shows(["\x1b[1;31m" + "x" * 20 + "\x1b[0m"] * 3)
    assert len(window.pages) == 1


def test_a_window_too_low_for_pages_gets_all_at_once() -> None:
    window = Window([], rows=3)
    window.shows(LINES)
    assert len(window.pages) == 1


@given(st.lists(st.text("ab\x1b[m日 ", max_size=90), max_size=60), st.integers(8, 120), st.integers(0, 40))
def test_going_on_shows_every_line_once_and_in_order(lines: list[str], columns: int, rows: int) -> None:
    window = Window([" "] * 100, columns, rows)
    assert window.shows(lines) == ""
    assert "".join(window.pages) == "".join(f"{line}\n" for line in lines)
