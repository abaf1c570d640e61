"""A lens that was tried on its ring and ends at a distance: no all-clear, by whatever words and in whatever order."""

from __future__ import annotations

from pathlib import Path

import pytest

from engine.ask import Desk
from tests.answers.talks import flat, talk
from tests.desks import desk_of

_LOCKER = Path(__file__).parents[1] / "data" / "cards-gear.yaml"
_CS = "12 mm c lens on cs cam, i have the 5 mm ring in"


@pytest.mark.parametrize(
    "tried",
    ["it only focuses at 20 cm", "only sharp at 20 cm", "focuses only at 20 cm", "only gets sharp at about 20 cm"],
)
def test_what_only_focuses_at_a_distance_ends_there(club: Desk, tried: str) -> None:
    (answer,) = talk(club, f"{_CS}, {tried}")
    assert "stops at 20 cm" in flat(answer)
    assert "0.82 mm too far out" in flat(answer)


def test_a_ring_of_the_right_length_is_said_not_to_be_the_cause_as_told(club: Desk) -> None:
    (answer,) = talk(club, f"{_CS}, it only focuses at 20 cm")
    assert "A ring of 5 mm would seat it right" in flat(answer)
    (longer,) = talk(club, "35mm m42 lens on L with a ring 26 mm, everything past 3 m is soft")
    assert "would leave it 0.54 mm too far out" in flat(longer)


def test_a_ring_as_long_as_its_limit_tells_is_not_doubted(club: Desk) -> None:
    (answer,) = talk(club, "35mm m42 lens on L with a ring 25.88 mm, everything past 3 m is soft")
    assert "stops at 3 m" in flat(answer)
    assert "by caliper" not in flat(answer)


def test_how_far_off_something_is_is_no_ring(club: Desk) -> None:
    (answer,) = talk(club, "m42 to L ring 25.6 mm, everything past 3 m is soft with a 35")
    assert answer.question is not None
    assert [one.thickness_mm for one in answer.question.adapters] == [(25.6, 25.6)]
    assert answer.question.distance_mm == 3000.0


@pytest.mark.parametrize("body", ["E", "L", "RF"])
def test_without_a_focal_length_it_is_asked_for_and_no_infinity_promised(club: Desk, body: str) -> None:
    first, told, why = talk(club, f"m42 lens on {body} with a ring, nothing sharp past 5 m", "50mm", "why")
    assert "does not reach infinity" in flat(first)
    assert "focal length" in flat(first)
    assert not first.chains
    assert "stops at 5 m" in flat(told)
    assert "0.51 mm too far from the sensor" in flat(why)


@pytest.mark.parametrize("tried", ["it only gets sharp at 1 m", "stops at 1 m", "everything past 1 m is soft"])
def test_the_reason_and_the_remedy_are_of_the_seat_that_was_tried(club: Desk, tried: str) -> None:
    *_, why, mend = talk(club, "50mm m42 on e mount", tried, "why", "how do i fix it")
    assert "2.79 mm too far from the sensor" in flat(why)
    assert "Nothing lowers it" not in flat(why)
    assert "take 2.79 mm off the seat" in flat(mend)


def test_an_own_lens_that_ends_short_is_judged_by_its_own_focal_length() -> None:
    own = desk_of(_LOCKER)
    _, tried, why = talk(own, "knot on the skiff", "everything past 2 m is soft", "why")
    assert "1.32 mm too far out" in flat(tried)
    assert "1.32 mm too far from the sensor" in flat(why)
    assert "reaches infinity, certain" not in flat(why)
