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
