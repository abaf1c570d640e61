"""A picture enlarged in the edit, told in per cent, what punch-in is needed, and what fits the frame so far away."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    "text",
    [
        "my 35 on APS-C then punched in 150 %",
        "35mm on APS-C scaled to 150 % on the timeline, equivalent?",
        "35 on APS-C, 150 % punch in, what is that in ff",
    ],
)
def test_a_picture_enlarged_in_per_cent_is_a_crop_on_top(asked, text):
    assert numbers(asked(text), "equivalent_focal_mm")[0][0] == pytest.approx(80.1, abs=0.6)


def test_the_punch_in_that_is_needed_is_that_of_the_largest_clean_crop(asked):
    assert "punch in to 136 %" in flat(asked("what punch in do i need for a 12.5mm 1 inch lens on MFT"))


def test_what_a_filter_lets_through_is_no_crop(asked):
    assert "crop" not in asked("filter lets 80 % through, f/2, 1/50, full sun, timeline at 25 fps, nd?")["reading"]


@pytest.mark.parametrize(
    ("text", "high_m"),
    [
        ("how tall is a building i can fit at 30 m with a 28 on ff", 25.7),
        ("how high a wall do i get at 5 m with 24 on aps-c", 3.2),
    ],
)
def test_how_tall_a_thing_fits_is_the_height_of_the_field(asked, text, high_m):
    assert numbers(asked(text), "field_height_mm")[0][0] == pytest.approx(high_m * 1000, rel=0.02)
