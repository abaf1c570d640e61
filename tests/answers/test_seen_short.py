"""A lens that is seen not to reach the far is told to sit too far out, whatever its numbers say."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk

SHORT = "says that the lens sits too far out"


@pytest.mark.parametrize(
    "turn", ["it wont focus on the moon", "mine doesnt reach infinity though", "never gets to infinity"]
)
def test_that_it_does_not_is_taken_up(club, turn):
    assert SHORT in flat(talk(club, "M42 50 on E", turn)[-1])
    assert SHORT in flat(talk(club, f"M42 50 on E, {turn}")[0])


@pytest.mark.parametrize("question", ["M42 50 on E without losing infinity", "does a M42 50 on E not reach infinity?"])
def test_who_only_asks_is_not_told_so(club, question):
    assert SHORT not in flat(talk(club, question)[0])


def test_the_way_it_is_off_goes_by_what_was_seen(club):
    found = talk(club, "T2 500mm on EF", "it wont focus on the moon", "so too long or too short")[-1]
    assert flat(found).startswith("Too far out, since far things do not come sharp")


@pytest.mark.parametrize(("question", "stop", "focal"), [
    ("lens says 1:1.4/25 what does that mean", "f/1.4", "25 mm"),
    ("lens is engraved 1:2.8 f=35mm, meaning?", "f/2.8", "35 mm"),
])  # fmt: skip
def test_the_front_of_a_lens_is_read_out(club, question, stop, focal):
    told = flat(talk(club, question)[0])
    assert stop in told
    assert focal in told


@pytest.mark.parametrize("question", ["i think its exakta, what would prove it", "either FD or FL how can i see"])
def test_what_would_prove_a_mount_identifies_it(club, question):
    assert talk(club, question)[0].intent == "identify-mount"
