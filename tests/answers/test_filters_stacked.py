"""Filters alike that are counted, and what several are taken to make together."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("text", "stops"),
    [
        ("two ND8 on top of each other, stops?", 6),
        ("pair of nd64, stops?", 12),
        ("3 nd4s stacked, what nd is that", 6),
        ("ND4 and another ND4 screwed on", 4),
    ],
)
def test_filters_alike_count_as_often_as_there_are(asked, text, stops):
    assert numbers(asked(text), "nd_stops")[0] == (stops, stops)


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("does nd16 on nd4 make ND20", "No, not ND20: together 6 stops"),
        ("is ND8 plus ND16 the same as ND128", "Yes, together 7 stops"),
    ],
)
def test_what_filters_are_taken_to_make_is_no_further_filter(asked, text, told):
    assert told in flat(asked(text))


def test_filters_told_once_stand_once(asked):
    assert numbers(asked("nd8 and nd64 together"), "nd_stops")[0] == (9, 9)
    assert "Yes, all the same" in flat(asked("is nd8 the same as 0.9 nd"))
