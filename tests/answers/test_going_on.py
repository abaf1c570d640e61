"""Talks that go on: rings at hand, an error left as it is, ends of a zone, distances told by their two ends."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


def seats(answer, name="ring_thickness_mm"):
    return [row.value.nominal for row in answer.quantities or () if row.name == name]


@pytest.mark.parametrize("turn", ["i already own M42 to K", "ive an m42>k bush", "got the m42-k already"])
def test_a_ring_at_hand_goes_between_the_lens_and_the_body_of_before(club, turn):
    _, found = talk(club, "50/1.4 m42 onto e mount, ring?", turn)
    assert [body.id for body in found.question.bodies] == ["e-mount"]
    assert "still to get: K to E ring, 27.46 mm" in flat(found)


def test_a_ring_owned_leads_to_the_body_named_after_it(club):
    (found,) = talk(club, "i already own FD to M, now I've swapped to a Z camera, do i just get one more")
    assert [body.id for body in found.question.bodies] == ["z-mount"]
    assert 11.8 in seats(found)


def test_a_lens_and_a_body_of_others_are_no_ring_of_the_pair(club):
    _, found = talk(club, "50/1.4 m42 onto e mount, ring?", "i have FD to Z")
    assert [lens.id for lens in found.question.lenses] == ["fd-mount"]


def test_a_capital_m_before_a_dash_is_a_mount_and_no_metre(club):
    (found,) = talk(club, "ltm 50 on L body, only have the 7.8 M-L ring")
    assert [piece.front for piece in found.question.adapters] == [("m-mount",)]


def test_what_comes_of_leaving_a_thin_ring_is_told_of_the_error_of_before(club):
    _, left, sheets = talk(
        club,
        "24mm lens: infinity lands on 1.5 m, how thick a shim",
        "does it matter if i leave it",
        "i only have 0.1 brass",
    )
    assert left.intent == "why"
    assert "Nothing is harmed" in flat(left)
    assert "forgiven" not in flat(left)
    assert seats(sheets, "layer_count") == [4]


def test_what_is_left_too_thick_is_forgiven_by_a_stop_on_the_frame_spoken_of(club):
    _, added, left, stop = talk(
        club, "35mm wont go past 6 m with this NX ring (apsc), how much too thick", "so adding shim helps?",
        "can i live with it", "from which stop",
    )  # fmt: skip
    assert flat(added).startswith("No,")
    assert "stop down" in flat(left)
    assert seats(left, "infinity_from_f_number") == [pytest.approx(10.5, abs=0.1)]
    assert "infinity from f/11" in flat(stop)


@pytest.mark.parametrize(
    "line",
    ["50mm, near limit 2 m far 5 m, which f", "near 2 far 5, 50mm, what aperture", "sharp from 2 to 5, 50 mm, which f"],
)  # fmt: skip
def test_two_ends_told_by_their_words_are_a_zone(club, line):
    (found,) = talk(club, line)
    assert found.question.said("zone") == "2000 mm to 5000 mm"


@pytest.mark.parametrize(
    "line", ["61 mm from shoulder to the window picture", "61 from the rear edge to the picture of the window"]
)
def test_a_length_from_a_lens_to_its_far_image_is_no_focal_length(club, line):
    _, found = talk(club, "brass lens on E, no mount at all, infinity?", line)
    assert found.question.said("flange_to_image") == "61 mm"
    assert found.question.lens.focal_length_mm is None
