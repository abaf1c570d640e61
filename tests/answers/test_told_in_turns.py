"""A bare number told after an answer, in the sense that the answer asks for: a speed of the camera, a circle."""

from __future__ import annotations

from math import log2

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import flat, talk


@pytest.mark.parametrize("said", ["camera only goes down to 800 in log", "the cam base is 800 actually"])
def test_a_round_number_of_the_camera_is_its_speed(club: Desk, said: str) -> None:
    last = talk(club, "nd for full sun f2 1/50 s", said)[-1]
    low, high = numbers(record_of(last, club.knowledge), "nd_stops")[0]
    assert (low + high) / 2 == pytest.approx(15 - log2(2**2 * 50) + log2(8), abs=0.01)


def test_a_size_measured_clean_is_the_circle(club: Desk) -> None:
    last = talk(club, "16mm c lens on X cover?", "i measured 13 mm clean. largest 16:9?")[-1]
    wide = 13 * 16 / (16**2 + 9**2) ** 0.5
    assert numbers(record_of(last, club.knowledge), "crop_width_mm")[0] == (pytest.approx(wide, abs=0.02),) * 2


@pytest.mark.parametrize(
    ("first", "said", "view"),
    [
        ("50mm f1.8 OM lens on my e mount camera", "and will it be a 75 then", 50 * 1.527),
        ("35mm md on mft", "so a 70 then?", 70),
        ("28 om on x", "is that a 42", 28 * 1.527),
    ],
)
def test_a_length_that_the_lens_only_frames_like_is_no_other_lens(
    club: Desk, first: str, said: str, view: float
) -> None:
    last = talk(club, first, said)[-1]
    assert last.intent == "crop-equivalent"
    low, high = numbers(record_of(last, club.knowledge), "equivalent_focal_mm")[0]
    assert (low + high) / 2 == pytest.approx(view, rel=0.02)


def test_another_lens_is_still_another_lens(club: Desk) -> None:
    last = talk(club, "35mm md on mft", "and a 70?")[-1]
    assert last.question is not None
    assert last.question.lens is not None
    assert (last.intent, last.question.lens.focal_length_mm) == ("chain", 70)


def test_autofocus_asked_in_a_talk_goes_by_the_ring(club: Desk) -> None:
    last = talk(club, "50mm f1.8 OM lens on my e mount camera", "is autofocus going to work")[-1]
    assert flat(last).startswith("Autofocus: no.")


def test_a_slip_in_the_word_mount_leaves_the_letter_a_mount(club: Desk) -> None:
    last = talk(club, "25mm c lens on mft", "e-mont instead")[-1]
    assert last.question is not None
    assert last.question.body is not None
    assert last.question.body.ids[0] == "e-mount"


def test_why_it_does_not_cover_is_of_the_circle_and_not_of_infinity(club: Desk) -> None:
    last = talk(club, "25mm f1.4 c lens on mft", "and the corners?", "why does it not cover")[-1]
    assert "image circle 13 to 22 mm" in flat(last)
    assert "flat ring" not in flat(last)


def test_which_filter_asks_for_density_and_for_no_stop(club: Desk) -> None:
    last = talk(club, "25mm f1.4 c lens on mft", "sun at noon 25fps iso 200, filter?")[-1]
    assert flat(last).startswith("9.4 stops of ND to hold back")


def test_a_filter_of_no_told_thickness_is_no_piece_between_lens_and_body(club: Desk) -> None:
    with_it = talk(club, "m42 on E with a filter")[-1]
    assert "as you named them" not in flat(with_it)
    assert "reaches infinity" in flat(with_it)


def test_a_filter_told_before_leaves_the_body_told_after_it(club: Desk) -> None:
    last = talk(
        club, "25mm f1.4 c lens on mft", "sun at noon 25fps iso 200, filter?", "e-mont instead", "how sure are you"
    )[-1]
    assert "C to E cup" in flat(last)
    assert "MFT" not in flat(last)
