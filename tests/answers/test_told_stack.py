"""A lens without a register of its own, measured from flange to image: how long its stack is, where infinity falls."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import close, flat, one


@pytest.fixture(scope="module")
def bench() -> Desk:
    return Desk()


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
