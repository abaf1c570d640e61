"""How thick a ring is said to be: by a seller, in round numbers, and with the lens told behind it."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    ("say", "ruling"),
    [
        ("the seller claims a Contarex lens on E needs 28 mm of ring. right?", "Yes: 28 mm"),
        ("they say 27.5 for OM on E, correct?", "No: right is 28 mm"),
        ("29.5 for K on Z, right?", "Yes: 29.46 mm"),
    ],
)
def test_a_claim_is_judged_by_the_registers(club, say, ruling):
    (answer,) = talk(club, say)
    assert flat(answer).startswith(ruling)


@pytest.mark.parametrize(("told", "verdict"), [("27.5", "borderline"), ("27.53", "stops at"), ("27.6", "stops at")])
def test_what_is_told_to_a_tenth_is_known_no_closer(club, told, verdict):
    (answer,) = talk(club, f"{told} mm ring, M42 50mm 1.4 on E, infinity?")
    assert verdict in flat(answer)


def test_a_lens_behind_a_ring_that_has_its_length_is_no_other_ring(club):
    (answer,) = talk(club, "my M42-E ring is 27.6, 28mm infinity?")
    assert "A 28 mm M42 lens on an E-mount body: stops at 5.6" in flat(answer)
