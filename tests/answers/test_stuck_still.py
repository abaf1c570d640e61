"""What is stuck stays what is talked of until it comes free."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(("first", "turns", "told"), [
    ("adapter stuck on the camera body", ("theres a pin i can see", "can i pry it with a screwdriver"),
     "ring stuck on the body"),
    ("the lens wont come off my M42 ring", ("can i hit it",), "threaded lens stuck"),
    ("6x6 lens stuck half on", ("it moves a bit if i press the button", "turn harder?"), "must all be cocked"),
])  # fmt: skip
def test_what_is_tried_on_it_is_about_it(club, first, turns, told):
    answers = talk(club, first, *turns)[1:]
    assert all(told in flat(found) for found in answers)


def test_once_it_is_off_the_rest_is_another_matter(club):
    found = talk(club, "the lens wont come off my M42 ring", "ok its off, threads feel gritty, safe?")[-1]
    assert flat(found).startswith("Not before it is clean.")


def test_a_fluid_on_it_is_ruled_on_as_a_fluid(club):
    assert "Fluids creep" in flat(talk(club, "the lens wont come off my M42 ring", "wd40?")[-1])
