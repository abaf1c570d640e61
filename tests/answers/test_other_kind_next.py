"""Turns that ask another kind of question of the same gear, in few words: what they ask, and what is kept."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk

THREE = "om 50 1.8, k 28 and m42 135 to go on a Z, what do i buy"


def mounts(answer):
    return [lens.id for lens in answer.question.lenses]


def last(club, *turns):
    return talk(club, *turns)[-1]


@pytest.mark.parametrize(
    "turn",
    ["without the k", "without the k one", "not the 28 then", "sold the 28", "the k is gone", "drop k", "minus the 28"],
)
def test_the_lens_that_goes_from_a_plan_is_left_out_of_it(club, turn):
    assert mounts(last(club, THREE, turn)) == ["om-mount", "m42"]


def test_the_lens_that_goes_is_left_out_of_any_question(club):
    assert mounts(last(club, "om 50 and k 28 on Z, do they reach infinity", "without the k one")) == ["om-mount"]


@pytest.mark.parametrize("turn", ["hub with M instead, downside", "hub over M, drawbacks?", "or a hub of M, worth it"])
def test_the_mount_behind_a_hub_is_that_of_the_hub(club, turn):
    found = last(club, THREE, turn)
    assert mounts(found) == ["om-mount", "k-mount", "m42"]
    assert [piece.piece for piece in found.question.adapters] == ["hub"]


@pytest.mark.parametrize(
    "turn", ["in crop mode what does it frame like", "crop mode, equivalent?", "with crop mode, field of view"]
)
def test_the_crop_mode_of_a_full_frame_body_is_the_usual_smaller_frame(club, turn):
    assert "frames like 137 mm" in flat(last(club, "90mm f2 om on E full frame, nd in sun at 1/50", turn))


def test_so_does_a_crop_mode_told_at_once(club):
    assert "frames like 53 mm" in flat(last(club, "35mm om on E full frame in crop mode, equivalent"))


@pytest.mark.parametrize(
    "turn", ["if i shim it 0.5, still infinity?", "0.5 under it, infinity?", "with a 0.5 washer, infinity?"]
)
def test_so_much_put_under_a_lens_is_so_much_too_far(club, turn):
    found = last(club, "25mm f1.4 c on mft, does it cover", turn)
    assert "stops at 1.3 m" in flat(found)


@pytest.mark.parametrize("opening", ["nd at 1/50 sun", "is it safe", "equivalent?", "ibis number", "does it cover"])
def test_an_error_of_the_seat_told_after_anything_asks_of_the_seat(club, opening):
    found = last(club, f"28 f2.8 md on mft {opening}", "say it sits 0.5 mm too far out")
    assert found.intent == "focus-verdict"
    assert "stops at 1.62 m" in flat(found)


def test_an_error_told_behind_a_tube_is_added_to_it(club):
    near, deep = talk(club, "28 f2.8 md on mft with 1mm tube how close", "it sits .5 too close", "how deep")[1:]
    assert "0.5 mm of tube" in flat(near)
    assert "sharp at 1.62 m" in flat(near)
    assert "0.5 mm of extension" in flat(deep)


def test_a_stop_beside_a_distance_is_no_second_lens(club):
    found = last(club, "28 f2.8 md on mft dof at 2m f4")
    assert len(found.question.lenses) == 1
    assert found.question.f_number == 4


@pytest.mark.parametrize(
    ("turn", "intent"),
    [
        ("infinity with a 38.5 ring", "focus-verdict"),
        ("and with a 2x tc, equivalent", "crop-equivalent"),
        ("with a 25mm tube near limit", "macro-distance"),
        ("ok with a collar then", "hazard"),
    ],
)
def test_a_piece_named_after_a_danger_is_a_remedy_only_where_nothing_else_is_asked(club, turn, intent):
    assert last(club, "400mm f6.3 t2 lens of 2.8kg hanging on a Z body ok", turn).intent == intent
