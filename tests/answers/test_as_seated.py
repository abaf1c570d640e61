"""A ring that seats the lens otherwise than it should is never said to reach infinity; what it takes is the lens's."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


@pytest.mark.parametrize(
    ("said", "error_mm"),
    [
        ("12mm CS lens off a security cam in a C to E cup adapter, everything is a blur beyond my nose", 5.0),
        ("a zero thickness M42 bush in my OM film body, level with its flange. infinity with a 50/1.8?", 0.54),
        ("printed my own C to MFT ring but its flush with the bayonet flange. 16mm lens, can it do infinity", 1.724),
        ("botched my C>E cup, the seat came out 0.3 above the E flange not below. 8.5mm lens. infinity?", 0.774),
        ("2mm C ring behind my 25mm c lens on MFT. infinity?", 2.0),
        ("ltm to M ring mics at 1.15 not 1.00. lens 35/2 on a digital M. infinity?", 0.15),
    ],
)  # fmt: skip
def test_it_sits_so_far_out(desk: Desk, said: str, error_mm: float) -> None:
    chains = desk.ask(said).chains or ()
    error = chains[0].listed.judged.trace.value("register_error_mm").shortest
    assert error.nominal == pytest.approx(error_mm, abs=0.01)
    assert chains[0].listed.judged.verdict != "infinity"


def test_a_cup_that_is_right_still_reaches_it(desk: Desk) -> None:
    (first, *_) = desk.ask("C lens in a C to E cup adapter, infinity?").chains or ()
    assert first.listed.judged.verdict == "infinity"
