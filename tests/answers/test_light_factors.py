"""Factors and spelled stops of filters, and an exposure factor told as it came out."""

from __future__ import annotations

from math import log2

import pytest

from tests.answers.picture import close, flat, numbers


@pytest.mark.parametrize(
    ("text", "factor"),
    [
        ("my filter says 200x. stops?", 200),
        ("filter is marked 16x, how many stops", 16),
        ("ND filter rated 64x how many stops", 64),
    ],
)
def test_what_a_filter_is_marked_is_its_factor(talked, text, factor):
    assert close(log2(factor)) in [row[0] for row in numbers(talked(text), "nd_stops")]


@pytest.mark.parametrize(
    ("text", "factor"),
    [("bellows factor came out 2.6, how many stops to open up", 2.6), ("filter factor 2.8 in stops", 2.8)],
)
def test_an_exposure_factor_in_stops(talked, text, factor):
    found = talked(text)
    assert close(log2(factor)) in [row[0] for row in numbers(found, "light_difference_stops")]
    assert numbers(found, "nd_stops") == []


def test_stops_in_words_before_a_filter(talked):
    assert "1/640 s becomes 1/160 s" in flat(talked("a two stop nd, 1/640 originally, new shutter?"))
    assert "1/320 s becomes 1/40 s" in flat(talked("three-stop nd, started from 1/320, what speed do i dial"))


def test_a_mark_between_two_stops_of_the_iris_ring(talked):
    assert "Halfway between f/8 and f/11" in flat(talked("aperture ring has a dot between 8 & 11, what value is that"))


def test_one_layer_of_a_sheet_is_told_though_a_number_is_guessed(talked):
    found = talked("cutting a spacer from a soda tin with scissors, is one layer 0.1 or more?")
    assert [row[:2] for row in numbers(found, "shim_mm")] == [(0.09, 0.11)]


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("i go from 1:infinity to 1.5x on bellows, how many stops do i add", 1.5),
        ("on bellows at 2x how many stops do i lose", 2),
        ("1.5x on tubes, stops lost?", 1.5),
        ("i go from infinity to life size, how many stops", 1),
        ("i rack out to 1.2x, how many stops of light go", 1.2),
    ],
)
def test_how_large_a_bellows_draws_is_no_factor_of_the_light(talked, text, size):
    assert close(2 * log2(1 + size)) in [row[0] for row in numbers(talked(text), "light_difference_stops")]


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("from 1:10 to 1:1, how many stops more", (0.1, 1)),
        ("going from 0.5x to 2x on bellows, how much more light", (0.5, 2)),
    ],
)
def test_between_two_sizes_the_light_differs_by_what_each_loses(talked, text, sizes):
    apart = 2 * log2((1 + sizes[1]) / (1 + sizes[0]))
    found = talked(text)
    assert numbers(found, "light_difference_stops")[0][0] == close(apart)
    assert flat(found).startswith("From")


@pytest.mark.parametrize(
    "then", ["with the .71 reducer behind it what is the lens now", "what does a 0.71 reducer make of the lens"]
)
def test_what_glass_makes_of_the_lens_is_no_new_filter(talked, then):
    found = talked("f/2.8 25p iso 100 full sun which nd", then)
    assert found["intent"] == "crop-equivalent"
    assert "f/2.8 becomes f/1.99" in flat(found)
