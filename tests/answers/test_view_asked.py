"""What a lens sees: across at a distance, how far back for a thing, the normal lens of a frame, glass and crop."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


def _first(found, name):
    low, high = numbers(found, name)[0]
    return (low + high) / 2


@pytest.mark.parametrize(
    ("text", "focal", "away", "width"),
    [
        ("how wide at 5m with 75mm on apsc", 75, 5000, 23.5),
        ("what do i see across at 3m, 25mm c lens on mft", 25, 3000, 17.3),
        ("width of scene at 8m, 12.5mm, 1/2.3", 12.5, 8000, 6.17),
    ],
)
def test_the_field_at_a_distance(asked, text, focal, away, width):
    found = asked(text)
    assert _first(found, "field_width_mm") == pytest.approx(width * (away - 2 * focal) / focal, rel=0.02)


@pytest.mark.parametrize(
    ("text", "focal", "magnified"),
    [
        ("fill the frame with a person 1.8 m tall, 85mm apsc, distance", 85, 15.6 / 1800),
        ("how far back to get a 3m wide car in, 50mm on apsc", 50, 23.6 / 3000),
        ("how far away must i be with a 25mm on s16 to see 4 m across", 25, 12.52 / 4000),
    ],
)
def test_how_far_back_for_a_thing_told_so_wide_or_tall(asked, text, focal, magnified):
    found = asked(text)
    wanted = focal * (2 + 1 / magnified + magnified)
    assert _first(found, "focus_from_sensor_mm") == pytest.approx(wanted, rel=0.02)


def test_a_distance_beside_a_thing_is_no_size_of_it(asked):
    assert asked("dof for a person at 2 m, 50mm f2 on mft")["intent"] == "depth-of-field"


def test_the_normal_lens_of_a_frame_goes_by_its_diagonal(asked):
    found = asked("normal lens for s16?")
    assert _first(found, "focal_length_mm") == pytest.approx(1.16 * 14.54, rel=0.01)
    assert "A normal lens on Super 16" in flat(found)


def test_glass_and_crop_together_are_multiplied(asked):
    found = asked("0.71 and 1.5 crop together")
    assert pytest.approx(min(low for low, _ in numbers(found, "crop_factor")), rel=0.01) == 0.71 * 1.527
