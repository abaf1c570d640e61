"""Tubes that are counted and told one by one, and an error that closing the iris hides."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    ("text", "tubes", "focal"),
    [
        ("i have 3 tubes 12 20 36 EF, 50mm EF lens, which for half life size", (12, 20, 36), "a 50 mm EF-mount lens"),
        ("three tubes, 7 14 28, M42 50mm on E, which for 1:1", (7, 14, 28), "a 50 mm M42 lens"),
        ("my 3 tubes: 12, 20 and 36, 50mm, 0.5x which", (12, 20, 36), "a 50 mm lens"),
    ],
)
def test_tubes_counted_and_told_are_so_many_and_no_lens(asked, text, tubes, focal):
    reading = asked(text)["reading"]
    assert focal in reading
    assert all(f"{length} mm" in reading for length in tubes)
    assert reading.count("extension tube") == len(tubes)


@pytest.mark.parametrize("text", ["does stopping down fix 0.1mm error", "will stopping down hide a 0.1 mm error"])
def test_an_error_alone_is_told_with_the_stops_that_hide_it(asked, text):
    found = asked(text)
    assert "it cures none" in flat(found)
    assert numbers(found, "infinity_from_f_number")[-1][0] == pytest.approx(3.33, abs=0.02)


def test_whether_a_stop_hides_it_is_yes_or_no(asked):
    found = flat(asked("does f8 hide 0.15 of error on a 50"))
    assert "No: at f/8 on Four Thirds" in found
    assert "Yes: at f/8 on APS-C" in found
