"""Circles, frames and shapes as they are told in passing, and what a lens is made for beside what it goes on."""

from __future__ import annotations

from math import hypot

import pytest

from tests.answers.picture import flat, numbers, one
from tests.answers.talks import flat as said
from tests.answers.talks import talk


def _only(found, name):
    return {round((low + high) / 2, 2) for low, high in numbers(found, name)}


@pytest.mark.parametrize(
    "told",
    [
        "it throws 22 mm", "disc 22mm across", "a 22 mm dia image circle", "Ø22mm image circle", "IC 22mm",
        "covers 22mm",
        "circle = 22", "a circle about 22 mm wide", "lights a 22 mm disc", "22 mm coverage",
    ],
)  # fmt: skip
def test_a_circle_is_told_in_many_ways(asked, told):
    found = asked(f"75mm f/1.8 c mount, {told}, how much of aps-c is lit")
    assert found["intent"] == "coverage"
    assert _only(found, "image_circle_mm") == {22.0}
    assert 35 not in _only(found, "image_circle_mm")


@pytest.mark.parametrize("told", ["36mm x 24mm", "a sensor of 36 x 24", "36 x 24 mm"])
def test_the_sides_of_a_sensor_are_no_lenses(asked, told):
    found = asked(f"24 mm circle on {told}, corners?")
    assert one(found, "format_diagonal_mm") == pytest.approx(hypot(36, 24), rel=0.01)
    assert "36 mm lens" not in found["reading"]


def test_a_word_for_a_small_sensor_goes_by_the_crop_beside_it(asked):
    assert one(asked("22 mm circle on crop sensor 1.6"), "format_diagonal_mm") == pytest.approx(26.82, abs=0.01)
    assert one(asked("22 mm circle on crop sensor 1.5"), "format_diagonal_mm") == pytest.approx(28.35, abs=0.01)


@pytest.mark.parametrize(
    ("text", "circle", "diagonal"),
    [
        ("lens for super 8 on mft, vignetting?", 8, 21.64),
        ("how much of mft does a 12mm lens, 1/2 inch coverage light", 8.5, 21.64),
        ("an old 1 inch 12mm lens super 35 coverage", 17, 31.11),
        ("a 1/2.3 inch sensor: 13mm d mount, dark corners?", 7, 7.67),
        ("will a 2/3 inch lens be enough for 44x33 medium format", 11.5, 54.78),
        ("does a 50mm lens made for MFT cover an aps-c e mount body", 21.64, 28.35),
    ],
)
def test_what_a_lens_is_made_for_is_not_what_it_goes_on(asked, text, circle, diagonal):
    found = asked(text)
    assert found["intent"] == "coverage"
    low, high = numbers(found, "image_circle_mm")[0]
    assert low - 0.5 <= circle <= high + 0.5
    assert _only(found, "format_diagonal_mm") == {diagonal}


def test_of_two_formats_told_of_one_lens_it_surely_lights_the_smaller(asked):
    found = asked("super16 zoom, 16mm era, does it light super 16 crop on mft")
    assert numbers(found, "image_circle_mm")[0] == pytest.approx((12.7, 14.5), abs=0.1)
    assert "made for Super 16 or 16 mm film" in found["reading"]


@pytest.mark.parametrize("shape", ["2.39", "2.39:1", "scope 2.39"])
def test_a_shape_told_bare_is_no_magnification_and_no_price(asked, shape):
    found = asked(f"an aps-c sensor with image circle of 18mm: max {shape} frame")
    assert one(found, "crop_width_mm") == pytest.approx(18 * 2.39 / hypot(2.39, 1), rel=0.01)


def test_two_to_one_is_a_shape_where_light_is_asked_about(asked):
    assert one(asked("22mm circle, mft, biggest 2:1"), "crop_height_mm") < 13
    assert one(asked("macro at 2:1 with a 50 and tubes on mft"), "magnification") == pytest.approx(2)


def test_a_mode_told_beside_a_body_is_what_counts(asked):
    found = asked("22 mm circle, full frame body in aps-c mode, 24 megapixels, pixels left")
    assert _only(found, "format_diagonal_mm") == {28.35}
    clean = 22 * 3 / hypot(3, 2)
    assert one(found, "pixels_across") == pytest.approx(6000 * clean / 36, rel=0.01)  # of all the sensor
    both = asked("22 mm circle: full frame or aps-c crop")
    assert {28.35, 43.27} <= _only(both, "format_diagonal_mm")


def test_a_mode_of_unknown_size_is_asked_for(asked):
    assert "tell its factor" in flat(asked("35mm lens on the 4K crop of mft, angle of view"))
    assert "tell its factor" not in flat(asked("35mm lens on the 4K crop of mft, crop 1.25x, angle of view"))


def test_a_frame_may_be_told_by_its_diagonal(asked):
    assert one(asked("crop factor for a 14.6mm diagonal"), "crop_factor") == pytest.approx(43.267 / 14.6, rel=0.01)


def test_what_no_usual_lens_lights_is_asked_for(asked):
    found = asked("does a 210 cover 8x10")
    assert not numbers(found, "lit_share")
    assert "made for?" in flat(found)


def test_cameras_told_by_their_format_are_what_the_lens_is_for(asked):
    found = asked("25mm for 1 inch tv cameras, does it cover mft")
    assert "made for 1 in tube" in flat(found)
    assert one(found, "format_diagonal_mm") == pytest.approx(21.64, abs=0.01)


@pytest.mark.parametrize(
    "turn", ["its made for 1/2 inch, our sensor 2/3. problem?", "made for 1/2 inch, sensor 1 inch. does it cover"]
)
def test_what_it_is_made_for_is_the_frame_of_the_lens_spoken_of(club, turn):
    _, found = talk(club, "8mm C lens on a CS camera", turn)
    assert [lens.format for lens in found.question.lenses] == ["v12"]
    assert "image circle 8 to 9 mm" in said(found)
    assert "does not cover" in said(found)


@pytest.mark.parametrize(
    "say",
    [
        "the image circle is for 1/2 inch and the chip is 2/3 inch",
        'lens circle is 1/2", camera is 2/3"',
        "the circle of my lens is for 1/2 inch, does it cover a 2/3 inch sensor",
    ],
)
def test_a_circle_for_a_size_of_sensor_is_that_of_such_lenses(asked, say):
    found = asked(say)
    assert found["intent"] == "coverage"
    assert {low for low, _ in numbers(found, "image_circle_mm")} == {8.0}
    assert one(found, "format_diagonal_mm") == pytest.approx(11, rel=0.01)


def test_advice_on_the_mount_stands_behind_what_was_reckoned(asked):
    text = flat(asked("my 8 mm cctv lens has a circle for 1/3 inch, does it cover a 1/2 inch chip"))
    assert text.index("does not cover 1/2 in") < text.index("C thread")
