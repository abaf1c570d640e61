"""How thick a ring is said to be: by a seller, in round numbers, and with the lens told behind it."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


@pytest.mark.parametrize(
    ("say", "ruling"),
    [
        ("the seller claims a Contarex lens on E needs 28 mm of ring. right?", "Yes: 28 mm"),
        ("they say 27.5 for OM on E, correct?", "No: right is 28 mm"),
        ("29.5 for K on Z, right?", "Yes, as it is rounded: right is 29.46 mm"),
    ],
)
def test_a_claim_is_judged_by_the_registers(club, say, ruling):
    (answer,) = talk(club, say)
    assert flat(answer).startswith(ruling)


def test_a_lens_behind_a_ring_that_has_its_length_is_no_other_ring(club):
    (answer,) = talk(club, "my M42-E ring is 27.6, 28mm infinity?")
    assert "A 28 mm M42 lens on an E-mount body: stops at 5.6" in flat(answer)


@pytest.mark.parametrize(
    ("say", "sharp"),
    [
        ("my 35 has infinity at the 10 m mark. what does 3 m mean then", "At its 3 m mark: it is now sharp at 4.23 m"),
        ("infinity comes at 12 m on the 50, so what's really sharp at the 4 m mark", "sharp at 5.9 m"),
        ("if infinity is at 7 on my 28 where is 2 m", "At its 2 m mark: it is now sharp at 2.7"),
    ],
)
def test_a_nearer_mark_is_told_on_the_seat_that_the_mark_of_infinity_tells(club, say, sharp):
    (answer,) = talk(club, say)
    assert sharp in flat(answer)


@pytest.mark.parametrize(
    ("say", "ev"), [("what EV is a street at night", "EV 6 to 8"), ("what EV is candlelight", "EV 3 to 5")]
)
def test_brightness_of_a_scene_is_told(club, say, ev):
    (answer,) = talk(club, say)
    assert ev in flat(answer)
