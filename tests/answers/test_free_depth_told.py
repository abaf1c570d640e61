"""Whether a rear stays clear where its reach and what the body leaves free are told."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("rear of my 35 LTM sticks out 12 mm, E body has 9mm clear behind the flange, safe?", "7.8 mm are left"),
        ("my LTM 35 sticks 12 past the flange, E body has 9mm clear", "7.8 mm are left"),
        ("13.5 mm rear overhang, M lens, the Z is clear for 11 mm behind the mount", "9.3 mm are left"),
        ("shutter lies 13 mm behind my E flange, rear of the LTM 28 is 15.5, will it touch", "8.3 mm are left"),
        ("lens rear goes in 10mm, 8 mm of room in the MFT throat, C 12.5mm lens", "it reaches 3.72 mm too far in"),
        ("lens pokes 18 behind c flange, my MFT baffle is 15 behind the mount", "it reaches 4.72 mm too far in"),
        (
            "shutter is 12.6 mm behind the Z flange on my body, 21mm M lens sticks out 13.4 mm behind the adapter, ok?",
            "it reaches 0.8 mm too far in",
        ),
        (
            "rear of my M 21 pokes 13 out of the adapter, shutter at 12 behind the flange of the E body",
            "1 mm too far in",
        ),
    ],
)
def test_the_numbers_rule_where_both_are_told(asked, text, told):
    found = flat(asked(text))
    assert told in found
    assert ("Do not mount it" in found) is ("too far in" in told)


def test_a_reach_measured_with_the_ring_on_is_that_behind_the_body_s_flange(asked):
    assert "its rear stands 2 mm inside" in flat(asked("35 LTM, with the ring on the rear sticks out 2 mm, E body"))


def test_an_opening_told_without_a_rear_stays_one(asked):
    assert "38 mm bore" in asked("M42 to E ring, 38 mm clear, 50mm M42 lens on E, does it clip")["reading"]
