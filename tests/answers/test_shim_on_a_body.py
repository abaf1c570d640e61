"""A shim that is told as a part of what stands there, and an end told of one of two rings."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


def off(answer, sign):
    return [row.value.nominal for row in answer.quantities or () if row.name == "shim_mm"], sign in flat(answer)


@pytest.mark.parametrize(
    ("say", "off_mm"),
    [
        ("how do I get a 50 mm M42 lens on an E-mount body with a 0.5 mm shim", 0.5),
        ("35mm m42 on E with a 0.2 mm shim", 0.2),
        ("m42 ring on Z with a 0.3mm shim, 28mm lens: infinity?", 0.3),
        ("25mm f/1.4 c-mount on mft with a 0.1 mm paper shim, how far does it get", 0.1),
    ],
)
def test_shim_on_the_body_is_so_much_more_between(club, say, off_mm):
    (answer,) = talk(club, say)
    assert f"{off_mm:g} mm too far out" in flat(answer)
    assert f"your {off_mm:g} mm shim" in flat(answer)


def test_a_shim_to_cure_it_with_is_not_there_yet(club):
    (answer,) = talk(club, "my c-mount 25 goes past infinity on mft, do i cure it with a 0.2mm shim")
    assert answer.intent == "shim-calibration"
    assert "too far out" not in flat(answer)


@pytest.mark.parametrize(
    ("say", "shim_mm"),
    [
        ("the 35mm lens stops at 12 m on ring A, ring B goes past infinity. by how much is ring A out", 0.102),
        ("with my first ring the 50 stops at 30 m, with the second it focuses past infinity. ring too thick?", 0.083),
        ("50mm stops at 20 m on the older ring and runs past infinity on the silver one. what shim", 0.125),
    ],
)
def test_the_other_ring_going_past_makes_no_mark_of_where_this_one_ends(club, say, shim_mm):
    (answer,) = talk(club, say)
    told, takes_off = off(answer, "too far out")
    assert [abs(one) for one in told] == [pytest.approx(shim_mm, rel=0.03)]
    assert takes_off


@pytest.mark.parametrize(
    ("say", "hole_mm"),
    [
        ("75mm f/2, I'd like f/5.6 by a disc: how wide the hole", 13.4),
        ("disc for f/8 on a 50mm f/1.4, how big must the hole be", 6.25),
    ],
)
def test_hole_of_a_stop_to_cut(club, say, hole_mm):
    (answer,) = talk(club, say)
    assert [row.value.nominal for row in answer.quantities if row.name == "hole_mm"] == [
        pytest.approx(hole_mm, abs=0.06)
    ]


@pytest.mark.parametrize(
    ("say", "told"),
    [
        ("my OM-E ring is 1.5mm longer than it ought to be, 50mm. how far does it reach", "1.5 mm too thick"),
        ("the C to MFT ring is 0.2 mm shorter than spec, 25mm lens. infinity?", "0.2 mm too deep"),
        ("K to Z ring 0.3mm shorter than the drawing, 35mm, infinity?", "0.3 mm too thin"),
    ],
)
def test_longer_than_it_should_be_is_an_error_and_no_length(club, say, told):
    (answer,) = talk(club, say)
    assert told in flat(answer)


def test_what_serves_as_a_mount_names_none(club):
    (answer,) = talk(club, "can i use a body cap as a mount for a 50 enlarger lens on E")
    assert "A-mount" not in flat(answer)
