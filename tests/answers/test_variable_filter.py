"""A variable filter of which only the strongest is told: its weakest is not known, and no filter of nought is named."""

from __future__ import annotations

from engine.ask import Desk
from tests.answers.talks import flat


def test_its_weakest_is_said_to_be_unknown(club: Desk) -> None:
    assert flat(club.ask("variable nd up to 5 stops")) == "Variable, up to 5 stops (ND 1.5): its weakest is not told."


def test_a_third_of_a_stop_that_lacks_asks_for_no_filter(club: Desk) -> None:
    text = flat(club.ask("variable nd goes to 5 stops, i need 5.3"))
    assert "0.3 stops lack; close the iris by as much" in text
    assert "ND 0" not in text


def test_whole_stops_that_lack_are_a_filter(club: Desk) -> None:
    assert "3.6 stops lack; stack a fixed one, ND 1.2 (ND16)" in flat(
        club.ask("variable nd maxes out at 5 stops need 8.6")
    )
