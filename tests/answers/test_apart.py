"""Pieces set against each other on one pair, and the best way told beside an answer on something else of the pair."""

from __future__ import annotations

from math import log2

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
