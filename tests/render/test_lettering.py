"""Lettering: widths, cutting, wrapping, and labels that share a line."""

from __future__ import annotations

from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from engine.render.lettering import cut, spread, text_width, wrapped

LENGTHS = st.floats(-200, 200)


def test_a_text_is_as_wide_as_its_letters() -> None:
    assert text_width("mm", 10) == text_width("m", 10) * 2
    assert text_width("il", 3) < text_width("MW", 3)
    assert text_width("a", 3, bold=True) > text_width("a", 3)


def test_a_letter_of_any_script_counts_as_wide() -> None:
    assert text_width("鏡", 10) >= 10


@settings(derandomize=True, deadline=None)
@given(st.text(max_size=120), st.floats(8, 80))
def test_what_is_cut_or_wrapped_is_never_wider_than_its_room(text: str, room: float) -> None:
    assert text_width(cut(text, room, 3.0), 3.0) <= room
    lines = wrapped(text, room, 3.0, 3)
    assert len(lines) <= 3
    assert all(text_width(line, 3.0) <= room for line in lines)


def test_a_text_that_fits_is_left_alone() -> None:
    assert cut("the avocet", 40, 3.0) == "the avocet"
    assert wrapped("M42 to E ring", 60, 3.0, 2) == ("M42 to E ring",)


@settings(derandomize=True, deadline=None)
@given(st.lists(st.tuples(LENGTHS, st.floats(0.5, 12)), max_size=15), LENGTHS, st.floats(0, 300))
def test_labels_keep_their_order_and_never_touch(rows: list[tuple[float, float]], least: float, room: float) -> None:
    wanted, sizes = [row[0] for row in rows], [row[1] for row in rows]
    centres = spread(wanted, sizes, 1.0, least, least + room)
    order = sorted(range(len(rows)), key=lambda n: wanted[n])
    for one, other in pairwise(order):
        assert centres[other] - centres[one] >= (sizes[one] + sizes[other]) / 2 + 1.0 - 1e-6
    if rows:
        assert centres[order[0]] - sizes[order[0]] / 2 >= least - 1e-6
    if rows and sum(sizes) + len(rows) - 1 <= room:
        assert centres[order[-1]] + sizes[order[-1]] / 2 <= least + room + 1e-6


def test_a_label_with_room_stays_where_it_is_wanted() -> None:
    assert spread([50.0, 10.0], [4.0, 4.0], 1.0, 0.0, 100.0) == [50.0, 10.0]
