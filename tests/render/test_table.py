"""A table is columns where they fit and a list where they do not; every cell is told either way."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.answers.parts.answer import Line
from engine.render.table import table_lines
from engine.render.terminal import lines_of
from tests.answers.test_which_own import GEAR
from tests.desks import desk_of

CELLS = st.text("abcdefgh %-?", min_size=1, max_size=20).map(str.strip).filter(bool)


@st.composite
def tables(draw: st.DrawFn) -> list[list[str]]:
    columns = draw(st.integers(2, 7))
    row = st.lists(CELLS, min_size=columns, max_size=columns)
    return draw(st.lists(row, min_size=2, max_size=5))


@given(tables(), st.sampled_from([40, 80, 200]))
def test_no_line_is_wider_than_the_window_and_no_cell_is_lost(table: list[list[str]], width: int) -> None:
    rows = [Line("columns" if n == 0 else "row", "\t".join(cells)) for n, cells in enumerate(table)]
    lines = [line for _, line in table_lines(rows, width)]
    assert max(map(len, lines)) <= width
    text = "".join(lines).replace(" ", "")
    for cells in table[1:]:
        assert all(cell.replace(" ", "") in text for cell in cells)


def test_columns_are_headed_and_a_list_names_the_heading_of_each_cell() -> None:
    rows = [Line("columns", "lens\tskiff\tdory"), Line("row", "avocet\tinfinity 62 %\tno way"),
            Line("row", "knot\tinfinity\tinfinity")]  # fmt: skip
    assert [line for _, line in table_lines(rows, 40)] == [
        "lens    skiff          dory",
        "avocet  infinity 62 %  no way",
        "knot    infinity       infinity",
    ]
    assert [line for _, line in table_lines(rows, 30)] == [
        "avocet:", "  - skiff: infinity 62 %", "  - dory: no way", "knot:", "  - all: infinity"
    ]  # fmt: skip


@pytest.mark.parametrize("width", [40, 80, 200])
def test_all_lenses_on_all_bodies_fit_the_window(width: int) -> None:
    answer = desk_of(GEAR).ask("all my lenses on all my bodies")
    lines = [line for _, line in lines_of(answer, width)]
    assert max(map(len, lines)) <= width
    wide = [line for line in lines if line.startswith("avocet")]
    assert ("infinity 36-85 %" in wide[0]) == (width >= 80)
    assert all(ord(char) < 128 for line in lines for char in line)
