"""A lens without a register of its own, measured from flange to image: how long its stack is, where infinity falls."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import close, flat, one
from tests.desks import desk_of


@pytest.fixture(scope="module")
def bench() -> Desk:
    return desk_of()


def _last(bench, *turns):
    memory = Talk()
    return [record_of(bench.ask(turn, memory), bench.knowledge) for turn in turns][-1]


def test_the_stack_is_flange_to_image_less_the_register_of_the_body(bench):
    found = _last(bench, "80mm enlarger lens on my G (44x33)", "85 to the wall")
    assert one(found, "stack_mm", "shoulder to body flange") == close(85 - 26.7)


def test_infinity_on_a_helicoid_with_rings_beside_it(bench):
    asked = "75 enlarging lens, image 72mm behind its shoulder. lipped 39-42 ring (1) + 25-55 m42 helicoid + flat 1mm"
    found = _last(bench, f"{asked} plate on Z. infinity?")
    assert one(found, "helicoid_setting_mm", "infinity") == close(72 - 16 - 2)
    assert found["chains"][0]["verdict"] == "infinity"


def test_rings_in_all_stand_on_for_the_close_end(bench):
    turns = ("80mm enlarger lens on my G (44x33)", "85 to the wall", "36-90 helicoid plus 2mm of thin rings, infinity?")
    assert one(_last(bench, *turns), "helicoid_setting_mm", "infinity") == close(85 - 26.7 - 2)
    assert "2 mm of rings" in flat(_last(bench, *turns, "and closest?"))


def test_a_helicoid_that_is_too_short_is_told_by_how_much(bench):
    found = _last(
        bench, "projector lens, 62 from rim to the image, on E with a 17-31 m42 helicoid and 1mm plate. infinity?"
    )
    assert "12 mm too short" in flat(found)
    assert found["chains"][0]["verdict"] == "unusable"


@pytest.mark.parametrize(
    ("asked", "off"),
    [
        ("depth mic from m42 seat thru ring to the sensor plane reads 45.60", 0.14),
        ("om mount face to sensor with the om-x ring on, gauged 46.15. 28/2.8 lens. how bad", 0.15),
    ],
)
def test_a_depth_gauged_from_the_seat_to_the_sensor_tells_the_error(bench, asked, off):
    found = _last(bench, asked)
    if "chains" in found:  # judged as the ring that it makes, where it is asked how far the lens then reaches
        assert found["chains"][0]["register_error_mm"]["least"] == close(off)
    else:
        assert one(found, "register_error_mm", "of the ring") == close(off)


def test_a_gauged_depth_on_a_known_body_is_judged_as_the_ring_it_makes(bench):
    found = _last(bench, "md lens flange to sensor with adapter on e is 43.4, does infinity work with a 24")
    assert found["chains"][0]["verdict"] == "infinity"
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(-0.1)


def test_whether_an_error_matters_is_said_first(bench):
    found = _last(bench, "500mm f8 mirror on T2, ring is .15 too thick. full frame. does it matter")
    assert flat(found).partition("Hardly")[1]
    assert one(found, "infinity_allowance_mm", "f/8, full frame") == close(0.24, rel=0.02)
    assert found["chains"][0]["verdict"] == "infinity"


def test_a_ring_told_by_its_mounts_counts_beside_a_helicoid(talked):
    found = talked(
        "80mm enlarger lens 39 thread on a Z body", "74.5 from the shoulder",
        "i own an M42 to Z ring and a 25-55 helicoid. where do i set it for infinity",
    )  # fmt: skip
    assert "too short for infinity" not in flat(found)
    assert "Infinity at 29.04 mm" in flat(found)
