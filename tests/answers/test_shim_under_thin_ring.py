"""A ring that is off with a shim under it, and one told to be over or under, judged by what they come to."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("text", "error_mm"),
    [
        ("i put 50/1.8 M42 on X; 0.15 shim in, ring 0.05 too thin - is it fine", 0.1),
        ("i put 50/1.8 M42 on X; 0.15 shim in, ring 0.2 too thin - is it fine", -0.05),
        ("0.15 shim in, ring 0.05 too thin for FD 85 1.2 on my Z. what do i see at infinity", 0.1),
        ("ring 0.3 under for 50/1.8 M42 on G 44x33. does it reach infinity", -0.3),
        ("the ring 0.2 over for K 200/4 on my Z. how far can i focus", 0.2),
    ],
)
def test_the_seat_is_off_by_what_both_come_to(asked, text, error_mm):
    error = asked(text)["chains"][0]["register_error_mm"]
    assert error["least"] == pytest.approx(error_mm, abs=0.005)


def test_a_thin_ring_told_for_a_lens_is_no_ring_of_that_thickness(asked):
    found = flat(asked("ring 0.3 under for 50/1.8 M42 on G 44x33. how do i fix that"))
    assert "18.46 mm more" not in found


def test_no_stop_is_so_wide_as_a_sheet_is_thick(asked):
    assert "f/0.15" not in asked("QBM 50 on F. 0.15 shim in, ring 0.2 too thin. is it fine")["reading"]


@pytest.mark.parametrize("text", ["shim", "washer", "spacer", "foil"])
def test_the_word_for_a_sheet_alone_is_answered(asked, text):
    assert asked(text)["text"]
