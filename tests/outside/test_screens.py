"""Whole screens of a talk at three widths, as a person sees them: every row, and where the cursor is.

`python -m tests.outside.test_screens` writes them anew; look through what has changed before it is kept.
"""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from tests.outside.terminal import Terminal

SCREENS = Path(__file__).parent / "screens"
SIZES = {40: 24, 80: 16, 200: 14}  # columns -> rows: few enough that a listed answer takes more than one page
LONG = "please tell me how I could possibly get my old and dusty M24 lens on the F-mount body that I own"
# what is typed, and the name of the screen that comes of it
STORY = (
    ("", "greeting"),
    ("\t", "examples-offered"),
    ("\x03", "menu-closed"),
    ("how do I get a QBM lens on z", "typing"),
    ("\t", "menu"),
    ("\t", "menu-taken"),
    ("\x03", "dropped"),
    ("what is a shim\r", "answer"),
    ("how do I get a QBM lens on a Z-mount body\r", "chains"),
    (" ", "chains-end"),
    ("at f/8?\r", "follow-up"),
    (" ", "follow-up-end"),
    ("what looks like M42\r", "first-page"),
    (" ", "next-page"),
    ("\x03", "stopped"),
    (f"{LONG}\r", "caret"),
    ("1\r", "guess-by-number"),
    ("can", "typed-at-a-page"),
    ("\x03", "dropped-again"),
    ("can an M42 lens reach infinty", "misspelt"),
    ("\t", "misspelt-menu"),
)


PATIENT = 25  # tenths of a second of silence after which a screen is written down: a busy machine pauses


def file_of(columns: int, at: int) -> Path:
    return SCREENS / str(columns) / f"{at + 1:02}-{STORY[at][1]}.txt"


@pytest.mark.parametrize("columns", SIZES)
def test_every_screen_of_a_talk_is_as_it_is_kept(columns: int, tmp_path: Path) -> None:
    terminal = Terminal(tmp_path, columns, SIZES[columns])
    try:
        for at, (keys, name) in enumerate(STORY):
            wanted = file_of(columns, at).read_text("utf-8")
            terminal.type(keys)
            assert terminal.settled(wanted) == wanted, f"{columns} columns: {name}"
    finally:
        terminal.close()


@pytest.fixture
def terminal(tmp_path: Path) -> Iterator[Terminal]:
    made = Terminal(tmp_path, 80, 24)
    made.read("nothing remembered")
    yield made
    made.close()


def test_the_line_survives_a_window_made_narrower_and_wider(terminal: Terminal) -> None:
    terminal.type("how do I get a QBM lens on a Z-mount body")
    terminal.read("Z-mount body")
    terminal.resize(40, 24)
    terminal.read("? how do I get a QBM lens on a Z-mount b\nody\n")
    terminal.settled()
    terminal.resize(120, 30)
    terminal.read("? how do I get a QBM lens on a Z-mount body\n")
    assert terminal.settled().splitlines()[29].startswith("nothing remembered")
    terminal.type("\r")
    terminal.read("1. QBM to M ring")


def test_a_page_is_as_high_as_the_window_has_become(terminal: Terminal) -> None:
    terminal.type("what looks like M42\r")
    terminal.read("more: space goes on, q stops (23/")
    terminal.resize(80, 6)
    terminal.type(" ")
    terminal.read("more: space goes on, q stops (28/")


@pytest.mark.parametrize("key", ["q", "\x03", "\x04", "\x1b"])
def test_a_long_answer_can_be_left_and_the_prompt_comes_back(terminal: Terminal, key: str) -> None:
    terminal.type("what looks like M42\r")
    terminal.read("more: ")
    terminal.type(key)
    assert "more: " not in terminal.settled()
    terminal.type("what is a shim\r")
    terminal.read("shim: ")


def test_what_is_typed_at_a_page_is_the_next_question(terminal: Terminal) -> None:
    terminal.type("what looks like M42\r")
    terminal.read("more: ")
    terminal.type("what is a shim\r")
    terminal.read("? what is a shim")
    terminal.read("shim: ")


def test_the_next_page_comes_with_space_enter_and_the_arrow_down(terminal: Terminal) -> None:
    for key in (" ", "\r", "\x1b[B"):
        terminal.type("what looks like M42\r")
        terminal.read("more: ")
        terminal.type(key)
        assert "resistance: forcing strips the softer part." in terminal.settled()
        terminal.type("start over\r")
        terminal.read("nothing remembered")


def styles(terminal: Terminal, words: str) -> set[tuple[str, bool, bool]]:
    """Colour, boldness and underline of the characters of `words`, where they stand first on the screen."""
    row = next(at for at, line in enumerate(terminal.screen.display) if words in line)
    column = terminal.screen.display[row].index(words)
    cells = [terminal.screen.buffer[row][at] for at in range(column, column + len(words))]
    return {(cell.fg, cell.bold, cell.underscore) for cell in cells}


def test_names_numbers_and_words_are_marked_and_unknown_words_are_not(terminal: Terminal) -> None:
    terminal.type("how do I get a 50 mm QBM wibble lens")
    terminal.read("wibble lens")
    terminal.settled()
    assert styles(terminal, "QBM") == {("cyan", True, False)}
    assert styles(terminal, "50 mm") == {("green", True, False)}
    assert styles(terminal, "get") == {("default", True, False)}
    assert styles(terminal, "wibble") == {("default", False, False)}


@pytest.mark.parametrize("how", ["variable", "option"])
def test_without_colour_nothing_typed_or_answered_is_marked(tmp_path: Path, how: str) -> None:
    variables = {"NO_COLOR": "1"} if how == "variable" else {}
    made = Terminal(tmp_path, 80, 24, *(["--no-color"] if how == "option" else []), **variables)
    made.read("nothing remembered")
    made.type("how do I get a 50 mm QBM lens on a Z-mount body\r")
    made.read("1. QBM to M ring")
    made.settled()
    plain = {("default", False, False)}
    assert {style for line in made.screen.display if line.strip() for style in styles(made, line.strip())} == plain
    made.close()


def write_anew() -> None:
    for columns, lines in SIZES.items():
        folder = SCREENS / str(columns)
        folder.mkdir(parents=True, exist_ok=True)
        for old in folder.glob("*.txt"):
            old.unlink()
        with tempfile.TemporaryDirectory() as home:
            terminal = Terminal(Path(home), columns, lines)
            for at, (keys, _) in enumerate(STORY):
                terminal.type(keys)
                file_of(columns, at).write_text(terminal.settled(patience=PATIENT), "utf-8", newline="\n")
            terminal.close()


if __name__ == "__main__":
    write_anew()
