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


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("25mm f4 1/50 iso 800 full sun, i have a 6 stop and a 3 stop nd", "stack ND 1.8 and ND 0.9: 9 stops"),
        ("f4 1/50 iso 100 full sun, got 2, 4 and 6 stop filters", "take ND 1.8: 6 stops"),
        ("f4 1/50 iso 100 full sun, have ND8 and a 3 stop", "stack ND8 and ND 0.9: 6 stops"),
    ],
)
def test_filters_told_in_stops_are_stacked_as_those_by_their_marks(asked, text, told):
    assert told in flat(asked(text))


def test_a_number_far_from_the_t_stop_is_no_stop_of_that_lens(talked):
    found = talked("10, 25 and 75 C on MFT", "T2.2 on the 25, what f is that for depth")
    assert "f/25" not in found["text"] + found["reading"]
    assert "T2.2 is about f/1.97" in flat(found)


def test_the_barrel_of_a_lens_told_by_its_number_is_the_second_number(talked):
    found = talked("10, 25 and 75 C on MFT", "barrel of the 75 is 41")
    assert found["reading"].endswith("75 mm C-mount lens on a Micro Four Thirds body, 41 mm barrel")


@pytest.mark.parametrize(
    ("text", "stops"),
    [
        ("a 1.2 and a 0.6 filter stacked = how many stops", 6),
        ("0.9 plus 0.3 filters together, stops?", 4),
        ("0.3, 0.6 and 0.9 filters all on, how many stops", 6),
        ("a 0.6 filter and a 1.2 filter in the matte box, stops total?", 6),
        ("a 1.8 filter on a 0.6 one, total stops", 8),
        ("1.2 filter = how many stops", 4),
    ],
)
def test_what_filters_are_marked_with_is_their_density(asked, text, stops):
    found = asked(text)
    assert (pytest.approx(stops, abs=0.02),) * 2 in numbers(found, "nd_stops")
    assert "lens" not in found["reading"]


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (
            "I have a 6 and a 3 stop, full sun, f/2.8, 1/50, iso 800, how do I split it",
            "stack ND 1.8 and ND 0.9: 9 stops",
        ),
        ("NDs: 3 stop, 6 stop. f/2 at 1/50 iso 400 full sun, which", "stack ND 1.8 and ND 0.9: 9 stops"),
        ("filters in the bag: 0.9, 1.8. full sun f/2.8 1/50 iso 100", "take ND 1.8: 6 stops"),
        ("my nds are 2, 4 and 8, overcast, f/2 1/50 iso 800", "stack ND8, ND4 and ND2: 6 stops"),
        ("I got ND 3 and ND 6 stops, sun, f/2.8, 1/50, iso 200", "behind ND 1.8: right at ISO 77"),
    ],
)
def test_filters_at_hand_told_in_a_row_are_those_to_stack(asked, text, told):
    assert told in flat(asked(text))


def test_lenses_in_a_row_are_no_filters(asked):
    found = flat(asked("i have a 50 and a 35, f/2.8, 1/50, iso 100, full sun, how much nd"))
    assert "nearest filter: ND 1.8" in found


def test_no_stop_is_told_that_no_lens_has(asked):
    found = flat(asked("full sun, f/4, 1/50, iso 100. have a 10 stop and 6 stop. which one"))
    assert "behind ND 1.8: right at" in found
    assert "f/0.1" not in found
