"""Light by night: named by its lamps, or by the night alone, and whether it is enough."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("text", "light"),
    [
        ("f/1.4 iso 1600 1/50 with street lights", "dim street (EV 2 to 5)"),
        ("25/1.4 at night, iso 3200, 1/50, street lamps, how much nd", "dim street (EV 2 to 5)"),
        ("night, 50/1.8, iso 6400 1/60, how much nd", "bright street (EV 6 to 8)"),
    ],
)
def test_lamps_tell_the_light_and_the_night_where_nothing_else_does(asked, text, light):
    found = flat(asked(text))
    assert light in found
    assert "full sun" not in found


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("25/1.4, iso 3200, 1/50, street lamps, bright enough?", "Yes, light enough: "),
        ("f/2 1/30 iso 800 candle, enough light?", "In the brighter part of that light, yes: "),
        ("f/5.6 1/50 iso 800 lit room, bright enough?", "No, not light enough: "),
    ],
)
def test_whether_a_light_is_enough_is_said_first(asked, text, told):
    assert flat(asked(text)).startswith(told)
