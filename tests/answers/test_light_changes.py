"""One exposure made into another, views wanted, glass stacked, bodies that stay black; the numbers worked by hand."""

from __future__ import annotations

from math import log2, sqrt

import pytest

from tests.answers.picture import close, flat, numbers


def first(found, name):
    """The first number of a name, which is what was asked for."""
    return numbers(found, name)[0][0]


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("meter read 1/250, then I put an ND8 on. shutter?", 8 / 250),
        ("metered 1/60 at f/4, now f/11, shutter?", (11 / 4) ** 2 / 60),
        ("1/1000 at f/2 iso 100, what at f/8 iso 400", 16 / 4 / 1000),
        ("put the 1.4x on, was 1/500 at f5.6. shutter?", 1.4**2 / 500),
        ("2 stops faster than 1/125", 1 / 500),
    ],
)
def test_a_metered_setting_is_made_into_another_without_a_scene(asked, text, seconds):
    found = asked(text)
    assert found["intent"] == "exposure-nd"
    assert first(found, "shutter_s") == close(seconds)
    assert "full sun" not in found["text"]


@pytest.mark.parametrize(
    ("text", "stops"),
    [
        ("camera says 1/2000 wide open, I want 1/50. how many stops nd", log2(2000 / 50)),
        ("metered f8 at 1/125. lens is stuck at f/2.8. keep the shutter, how much nd", 2 * log2(8 / 2.8)),
        ("meter gave iso 100 1/60, now iso 800, how strong an nd filter", 3),
        ("I get 1/8000 at f1.8 in sun, need 1/100. filter?", log2(80)),
        ("my nd was 5 stops with the plain ring, now a 0.64 reducer. how much nd", 5 - 2 * log2(0.64)),
        ("switched from .71 to .64 reducer, was using nd16. change?", 4 - 2 * log2(0.64 / 0.71)),
        ("nd64 plus nd4 together", 8),
        ("nd 0.9 with a 1.2 on top", 7),
        ("f/1.8 wide open in full sun, what ND", 15 - log2(1.8**2 * 50)),
        ("i am at 1/50 f4 iso 800 and its 3 stops over", 3),
    ],
)
def test_the_density_is_told_first(asked, text, stops):
    assert first(asked(text), "nd_stops") == close(stops)


def test_a_variable_filter_is_set_against_what_is_wanted(asked):
    found = asked("vnd nd2-nd32, need 6 stops, enough?")
    assert numbers(found, "nd_stops")[0] == close(1, 5)
    assert "1.0 stops lack" in flat(found)
    assert "within it" in flat(asked("vnd nd2-400, need 6 stops"))


def test_filters_owned_are_stacked_for_stops_that_are_told(asked):
    assert "stack ND16 and ND8: 7 stops" in flat(asked("need 7 stops, I have nd8 nd16 and nd2, which to stack"))


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("one third of a stop down from f/2.8", 2.8 * 2 ** (1 / 6)),
        ("two thirds over 5.6", 5.6 / 2 ** (1 / 3)),
        ("T3.1 with 75 percent transmission, which f-number", 3.1 * sqrt(0.75)),
    ],
)
def test_a_stop_beside_another_is_told(asked, text, value):
    assert first(asked(text), "f_number") == close(value, rel=2e-3)


@pytest.mark.parametrize(
    ("text", "focal", "stop"),
    [("300 f4 + 1.4tc?", 420, 5.6), ("135 2.8 + doubler", 270, 5.6), ("80/2.8 P6 thru a 0.7 reducer", 56, 1.96)],
)
def test_a_lens_behind_glass_is_told_first(asked, text, focal, stop):
    found = asked(text + " what does it become")
    assert f"{focal} mm f/{stop}" in found["text"].splitlines()[0]
    assert first(found, "focal_length_mm") == close(focal)


def test_a_crop_comes_on_top_of_the_format_but_is_not_counted_twice(asked):
    assert first(asked("25mm, mft, 4k crops another 1.3"), "crop_factor") == close(2 * 1.3, rel=2e-3)
    assert 75 <= first(asked("50mm on a body with 1.5x crop, equivalent"), "equivalent_focal_mm") <= 77


def test_the_lens_for_a_view_is_the_view_over_the_crop(asked):
    found = asked("what mm do i need on s16 to frame like 35 on full frame")
    assert first(found, "focal_length_mm") == close(35 / 2.97, rel=5e-3)
    found = asked("8mm lens on a 1/2 inch sensor, field of view like what on ff")
    assert "To frame like" not in found["text"]


def test_the_stabiliser_is_told_all_glass_together(asked):
    found = asked("stabiliser: 300mm + 1.4x + 2x stacked")
    assert found["intent"] == "gear-setting"
    assert first(found, "ibis_focal_mm") == close(840)


def test_a_black_picture_is_put_down_to_what_lens_or_body_has(asked):
    assert "electronic shutter" in flat(asked("XCD body, adapted K lens, every picture black"))
    assert "Set it to T" in flat(asked("leaf shutter lens on E, all frames black"))
    assert "Nothing is broken" in flat(asked("finder goes dark when I stop down, is the ring broken"))


@pytest.mark.parametrize(
    ("text", "focal", "diagonal"),
    [
        ("super 16 10mm lens equals what on full frame", 10, sqrt(12.52**2 + 7.41**2)),
        ("what is a 80mm 6x6 lens in full frame terms", 80, sqrt(56**2 + 56**2)),
        ("50mm lens on full frame, equivalent", 50, sqrt(36**2 + 24**2)),
        # a mount tells what it goes on, and a larger format's lens on full frame is adapted
        ("half frame 38mm on an E full frame body, equivalent", 38, sqrt(36**2 + 24**2)),
        ("80mm 6x6 lens on full frame, equivalent?", 80, sqrt(36**2 + 24**2)),
    ],
)
def test_a_lens_made_for_a_format_is_likened_to_full_frame_from_there(asked, text, focal, diagonal):
    found = first(asked(text), "equivalent_focal_mm")
    assert found == pytest.approx(focal * sqrt(36**2 + 24**2) / diagonal, rel=0.01)


def test_a_change_that_darkens_wants_no_density(asked):
    found = asked("1/60 at f/4 metered, want f/8, nd?")
    assert "No ND: f/4 to f/8 is 2 stops darker already." in found["text"]
    assert first(found, "shutter_s") == close(4 / 60)


@pytest.mark.parametrize(
    ("text", "seconds"),
    [
        ("bulb 4 min with nd1000, what was without", 240 / 2**10),
        ("30 s with an nd64, what is it without the filter?", 30 / 2**6),
        ("1/500 without filter, what with ND64", 2**6 / 500),
    ],
)
def test_a_filter_that_is_taken_off_makes_the_time_shorter(asked, text, seconds):
    low, high = numbers(asked(text), "shutter_s")[0]
    assert low == high == pytest.approx(seconds, rel=0.03)


@pytest.mark.parametrize(
    ("text", "time"),
    [
        ("10 minutes with nd1000, what was it without", 600 / 1000),
        ("2s with a 10 stop filter, what shutter without", 2 / 1024),
        ("2 minutes without filter, with nd8?", 960),
        ("1/1000 without filter, what shutter with ND64", 0.064),
    ],
)
def test_a_time_told_with_the_filter_is_the_shorter_without_it(asked, text, time):
    assert numbers(asked(text), "shutter_s")[0][0] == pytest.approx(time, rel=0.04)
