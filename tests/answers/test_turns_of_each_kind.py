"""A turn that plainly asks something else than before is answered as what it asks, whatever was asked before."""

from __future__ import annotations

import pytest

from tests.answers.talks import talk

BEFORE = [
    "does a 35mm FD 2.8 cover the APS-C E body",
    "25/1.4 C lens on MFT, will it hit anything",
    "135/2.8 OM on X, depth of field at f4 and 5 m",
]


@pytest.mark.parametrize("before", BEFORE)
@pytest.mark.parametrize(
    ("turn", "asked"),
    [
        ("how can i tell which mount it has", "identify-mount"),
        ("what do you think of this lens", "out-of-scope"),
        ("is it a good lens", "out-of-scope"),
        ("which nd at f2 25 fps overcast", "exposure-nd"),
        ("what magnification with a 20 mm tube", "macro-distance"),
        ("looks like what other mount", "look-alike"),
        ("where does the number come from", "why"),
        ("explain please", "why"),
        ("what if i make one myself, what size", "diy-dimension"),
    ],
)
def test_what_is_plainly_asked_is_answered(club, before, turn, asked):
    _, answer = talk(club, before, turn)
    assert answer.intent == asked


def test_a_word_alone_that_asks_for_more_is_no_term(club):
    _, answer = talk(club, BEFORE[0], "explain")
    assert answer.intent == "why"
