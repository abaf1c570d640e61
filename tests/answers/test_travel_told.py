"""A ring between two mounts of which it is told how far it moves is a helicoid, right for infinity when shut."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("text", "low", "high"),
    [
        (
            "close focus M-Z adapter with 6 mm of travel, 50mm lens on infinity: furthest thing in focus fully out?",
            0,
            6,
        ),
        ("LTM to E adapter with 4 mm travel, 35mm lens at infinity, all the way out. does it still see infinity", 0, 4),
    ],
)
def test_its_seat_goes_from_infinity_outwards_by_the_travel(asked, text, low, high):
    found = asked(text)
    error = found["chains"][0]["register_error_mm"]
    assert error["least"] == pytest.approx(low, abs=0.01)
    assert error["greatest"] == pytest.approx(high, abs=0.01)
    assert "Assumed: shut it is" in flat(found)
