"""What ails a lens in the middle of a talk, which of two it is, and who is to blame: asked of what was spoken of."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    "turn",
    ["same lens, stuck wide open", "aperture does nothing", "the blades wont move", "the aperture isnt closing either"],
)
def test_an_iris_that_does_nothing_is_given_its_reason(club, turn):
    _, found, on = talk(club, "m42 135 on Z", turn, "so what do i do")
    assert "a pin or lever closes the blades" in flat(found)
    assert "nothing to put right" not in flat(on)


@pytest.mark.parametrize("turn", [
    "will the aperture ring still do something on that", "does the aperture ring still work", "can i still stop down",
])  # fmt: skip
def test_the_ring_of_the_iris_is_no_adapter(club, turn):
    found = talk(club, "M42 50mm on my E body with a 27.5mm ring", turn)[-1]
    assert flat(found).startswith(("Yes, the iris works", "iris: by the ring on the lens"))
    assert found.question.adapters[0].thickness_mm == (27.5, 27.5)


@pytest.mark.parametrize(("first", "turn"), [
    ("what is the difference between C and CS", "and which one is my lens, no label"),
    ("m42 or t2, are they the same", "which one have i got then"),
    ("QBM vs SR", "how would i know what i have"),
])  # fmt: skip
def test_which_of_two_it_is_is_measured(club, first, turn):
    found = talk(club, first, turn)[-1]
    assert found.intent == "identify-mount"
    assert any("flange_to_image" in line.wants for line in found.lines)


@pytest.mark.parametrize(
    "turn", ["could be the lens tho, how do i tell", "or the camera", "is it the ring or the lens"]
)
def test_who_is_to_blame_is_found_with_a_second_lens(club, turn):
    found = talk(club, "my M42 28 stops at 8m on this E ring", turn)[-1]
    assert "Put a second lens on the same ring" in flat(found)


def test_a_register_asked_by_the_way_leaves_the_lens_whatever_its_length(club):
    *_, on = talk(club, "B4 zoom on super35 E-mount body", "whats the register of T2", "so which ring do i buy")
    assert on.question.lenses[0].ids == ("b4",)
