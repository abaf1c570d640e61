"""What is said and put right in the same breath counts for what it was put right to."""

from __future__ import annotations

import pytest

from grammar.words.breath import said_rightly
from tests.grammar.names import lexicon


def squeezed(text):
    return " ".join(said_rightly(text, lexicon()).split())


@pytest.mark.parametrize(("typed", "meant"), [
    ("AR 40mm on an EF.. sorry i mean on a RF body", "AR 40mm on an RF body"),
    ("m42 on E, no wait, on X body", "m42 on X body"),
    ("50mm OM lens on Z... I mean on L", "50mm OM lens on L"),
    ("fd lens to rf - scratch that, to mft", "fd lens to mft"),
    ("c mount lens on e mount oops i meant mft", "c mount lens on mft"),
    ("om 50, sorry om 35, on e", "om 35, on e"),
    ("k lens on x body. correction: z body", "k lens on z body"),
    ("exakta on rf, or rather on l", "exakta on l"),
    ("28 on aps-c - sorry, full frame - what does it frame like", "28 on full frame - what does it frame like"),
    ("sr lens on E body -- no, Z body, which ring", "sr lens on Z body, which ring"),
    ("nd for f2 at 1/50, sorry 1/100, full sun", "nd for f2 at 1/100, full sun"),
    ("35mm f2 i mean f2.8 in full sun 1/60 nd?", "35mm f2.8 in full sun 1/60 nd?"),
    ("om to rf ring 26.1mm, actually 26.2mm, infinity?", "om to rf ring 26.2mm, infinity?"),
    ("135 on 20mm tube, i mean 25mm tube, how close", "135 on 25mm tube, how close"),
    ("t2 lens on ef, ring is 10 not 11", "t2 lens on ef, ring is 10"),
    ("m42 lens (wait its a k lens) on e", "k lens) on e"),
    ("iso 400 i mean iso 800, f4, overcast", "iso 800, f4, overcast"),
])  # fmt: skip
def test_what_is_put_right_at_once_is_not_said(typed, meant):
    assert squeezed(typed) == meant
    assert len(said_rightly(typed, lexicon())) == len(typed)


@pytest.mark.parametrize("typed", [
    "which is better, E or rather Z, for om lenses", "c lens 16mm, no 5mm ring, on cs cam",
    "om 50 on e. sorry if this is dumb, does it reach infinity", "what do you mean by register", "i mean the 50 on e",
    "not the 50, i mean the 35 on e", "sorry, E body, om lens", "is 50 actually 75 on aps-c", "no, 26.2",
    "m42 to e ring, err whats it cost", "om and k lenses on e, i mean which rings",
    "does fd on ef need a correction lens, ef body",
])  # fmt: skip
def test_what_puts_nothing_right_stays_as_it_is(typed):
    assert said_rightly(typed, lexicon()) == typed
