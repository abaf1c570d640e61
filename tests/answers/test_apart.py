"""Pieces set against each other on one pair, and the best way told beside an answer on something else of the pair."""

from __future__ import annotations

from math import log2

import pytest

from tests.answers.picture import close, flat, one


def test_a_plain_ring_and_a_reducer_are_each_told_by_their_own_way(asked):
    found = asked("FD on mft: dumb ring or the .71 booster?")
    plain, reducer = found["chains"]
    assert (plain["glass"], reducer["glass"]) == (False, True)
    assert one(found, "light_difference_stops", "0.71x") == close(-2 * log2(0.71))


def test_two_reducers_are_told_apart_by_what_they_make_of_the_lens(asked):
    found = asked("0.64 vs 0.71 reducer EF-mft with a 50 1.8, which")
    assert [one(found, "focal_length_mm", f"{factor}x") for factor in (0.64, 0.71)] == [close(32), close(35.5)]
    assert one(found, "f_number", "0.64x") == close(1.8 * 0.64)


def test_how_the_lens_goes_on_stands_beside_a_question_on_a_setting(asked):
    found = asked("which stabilisation focal length do I set for a 50mm F-mount lens on an E-mount body")
    assert found["intent"] == "gear-setting"
    assert found["chains"][0]["verdict"] == "infinity"
    assert "F-mount: F to E ring" in flat(found) or "On that body: 50 mm F-mount: F to E ring" in flat(found)


def test_the_thin_ring_of_the_body_is_no_bar_to_the_helicoid_that_was_named(asked):
    found = asked("36-90 helicoid on the thin mft ring, 100mm m42 lens in front, does it keep infinity")
    assert found["chains"][0]["verdict"] == "macro-only"
    assert any(piece["kind"] == "helicoid" for piece in found["chains"][0]["pieces"])


@pytest.mark.parametrize(
    ("text", "seen"),
    [
        ("how do I tell an R lens from an RF lens", ("R-mount (SLR 47): bayonet", "RF-mount: bayonet; register 20 mm")),
        (
            "R mount lens for sale: R as in film SLR or as in RF? how do i know",
            ("R-mount (SLR 47): bayonet", "RF-mount: bayonet; register 20 mm"),
        ),
        ("is this F or FD? how do i tell", ("F-mount: bayonet; register 46.5 mm", "FD-mount: breech lock")),
    ],
)
def test_mounts_to_be_told_apart_are_all_told_with_what_is_seen_of_them(asked, text, seen):
    found = asked(text)
    assert found["intent"] == "identify-mount"
    assert all(one in flat(found) for one in seen)
    assert "aperture ring on the lens" in flat(found)


def test_an_enlarger_lens_is_set_against_a_reversed_one(asked):
    assert flat(asked("reversed 28 or enlarger 50 on bellows for 2x, what is sharper")).startswith(
        "enlarger lens or reversed lens"
    )


def test_frames_that_are_lit_whole_are_apart_by_how_narrow_the_smaller_sees(asked):
    text = flat(asked("FF or APS-C for old FD lenses, Z mount"))
    assert text.startswith("Both are lit whole. APS-C takes the middle of what full frame shows: 1.53 times narrower")
    assert "a 50 mm frames like 76 mm there" in text
