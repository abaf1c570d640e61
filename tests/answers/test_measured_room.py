"""A lens of no known mount whose image was measured: which bodies it goes on, and what is left to fill."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.base.interval import Interval
from engine.talk import Talk
from tests.answers.talks import flat, talk
from tests.desks import desk_of

REGISTERS = {"e-mount": 18.0, "mft-mount": 19.25, "z-mount": 16.0, "m-mount": 27.8}


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def rooms(desk: Desk, said: str) -> dict[str, float]:
    """What is left to fill on each body, mm."""
    found = desk.ask(said, Talk())
    assert found.intent == "list-fits"
    rooms = [row for row in found.quantities or () if row.name == "ring_thickness_mm"]
    return {row.case: row.value.nominal for row in rooms if isinstance(row.value, Interval)}


@pytest.mark.parametrize(
    "said",
    [
        "75mm f1.3 lens without mount, image of far window is 38 mm behind the rim. which bodies can take it",
        "i have a 75mm lens, 38 mm from flange to image. what cameras could i put it on",
        "unknown lens, focus at 38 mm behind the shoulder, which cameras could take that",
    ],
)
def test_each_body_is_told_with_what_is_left_to_fill(desk: Desk, said: str) -> None:
    told = rooms(desk, said)
    for body, register in REGISTERS.items():
        assert told[body] == pytest.approx(38 - register, abs=0.01)


def test_a_body_too_deep_is_named_as_one_that_does_not(desk: Desk) -> None:
    answer = desk.ask("i have a 75mm lens, 38 mm from flange to image. what cameras could i put it on", Talk())
    assert "Not, save close up or sunk in: EF-mount" in flat(answer)
    assert "EF-mount:" not in flat(answer)


def test_the_kind_of_body_asked_for_is_told_alone(desk: Desk) -> None:
    said = "projector lens 85mm, image at 60 mm behind the shoulder. which mirrorless bodies?"
    assert {"e-mount", "z-mount"} <= rooms(desk, said).keys()
    assert "m-mount" not in rooms(desk, said)


def test_it_is_asked_after_the_mount_was_looked_for_and_then_of_one_body(club: Desk) -> None:
    first = ["75mm f1.3 lens, no mount at all", "the image of a far window is 38 mm behind the rear rim"]
    *_, bodies, one = talk(club, *first, "so which body can take it", "and on E with a helicoid")
    assert "on any body of a shorter register" in flat(bodies)
    assert "leaves 20 mm" in flat(one)


def test_a_list_of_mounts_by_their_register_stays_one(desk: Desk) -> None:
    assert "1 has a register of 38 mm" in flat(desk.ask("which mounts have a register of 38 mm", Talk()))
