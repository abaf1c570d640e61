"""Ways to come closer set against each other without a body; a lens reversed before another. Numbers by hand."""

from __future__ import annotations

from math import log2

import pytest

from tests.answers.picture import close, flat, numbers, one


@pytest.mark.parametrize(
    "text",
    [
        "13+21+31 tubes or my bellows that goes 35 to 140, on a 50 - which gets me closer",
        "13, 21 and 31mm tubes vs a 35-140 bellows on a 50mm lens, which gets closer",
    ],
)
def test_tubes_are_told_as_their_total_against_a_bellows(asked, text):
    found = asked(text)
    told = [row[0] for row in numbers(found, "magnification")]
    assert told[:3] == [close(65 / 50), close(35 / 50), close(140 / 50)]
    assert flat(found).index("ellows, 35 to 140 mm comes nearest") < 100


def test_a_size_wanted_tells_which_of_the_ways_is_enough(asked):
    found = asked("tubes or a 40-150 bellows for 2:1 with a 50?")
    text = flat(found)
    assert "takes 100 mm of extension" in text
    assert "bellows, 40 to 150 mm: enough" in text
    assert "tubes, 7 to 49 mm: 51 mm short" in text


def test_light_field_and_depth_of_a_lens_reversed_before_another(asked):
    found = asked("50mm f1.7 with a 28 reversed in front. what light do i lose and how wide a field on full frame")
    m = 50 / 28
    assert one(found, "magnification", "coupled") == close(m)
    assert one(found, "light_difference_stops", "coupled") == close(0)
    assert one(found, "field_width_mm", "coupled, 35mm-full-frame") == close(36 / m)
    assert one(found, "dof_mm", "coupled") == close(2 * 1.7 * 43.267 / 1442 / m**2)


def test_a_reversed_lens_that_opens_less_costs_light(asked):
    found = asked("135 f3.5 with a reversed 50 1.8 on the nose, does the light drop")
    counts = 135 / (50 / 1.8)
    assert one(found, "effective_f_number", "coupled") == close(counts)
    assert one(found, "light_difference_stops", "coupled") == close(2 * log2(counts / 3.5))


def test_bare_numbers_right_behind_a_tube_set_are_its_lengths(asked):
    found = asked("58mm, tube set 7 14 28, how close with all of them")
    assert close(49 / 58) in [row[0] for row in numbers(found, "magnification")]
