"""A helicoid named by its range alone, crops told before a mount, what a lens is engraved with beside what is asked."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, rows, talk


def test_a_range_after_a_helicoid_is_its_range_with_rings_beside_it(club):
    *_, answer = talk(
        club,
        "60/4 enlarger lens on Z, i want a helicoid",
        "measured 54",
        "i have the 25-55 and a 2mm ring behind it, infinity?",
    )
    assert rows(answer, "helicoid_setting_mm")["infinity"] == pytest.approx(36, abs=0.05)


def test_where_a_lens_left_at_infinity_comes_to_with_the_helicoid_out(club):
    (answer,) = talk(
        club, "50mm m42 on E, helicoid 12-17 before the 27.46 ring, lens at infinity. from where to where?"
    )
    assert rows(answer, "near_from_sensor_mm")["helicoid fully out"] == pytest.approx(268, rel=0.06)


@pytest.mark.parametrize(
    ("say", "focal_mm"),
    [("58/2 m42 on 1.6 ef crop, same view as?", 94), ("35 M42 on 1.5 e crop equals what", 53.5)],
)
def test_crop_before_the_mount_is_a_crop_and_no_ring(club, say, focal_mm):
    (answer,) = talk(club, say)
    assert any(one == pytest.approx(focal_mm, rel=0.02) for one in rows(answer, "equivalent_focal_mm").values())
    assert "thick" not in (answer.reading or "")


@pytest.mark.parametrize(
    ("say", "focal_mm"),
    [
        ("105mm normal lens of a 6x9 folder = which focal on full frame", 45.0),
        ("80mm lens from a 6x6, what focal is that on full frame", 43.7),
    ],
)
def test_lens_of_a_larger_camera_is_likened_by_its_own_frame(club, say, focal_mm):
    (answer,) = talk(club, say)
    assert pytest.approx(focal_mm, rel=0.01) in rows(answer, "equivalent_focal_mm").values()
    assert answer.lines[0].text.startswith("On 6x")


def test_what_it_is_engraved_with_leaves_what_else_is_asked(club):
    *_, answer = talk(
        club,
        "how do I get a 12 mm f/1.4 C-mount lens on an E-mount body",
        'it is engraved 1/2". aps-c sensor, how much gets lit',
    )
    assert answer.intent == "coverage"
    assert all(0.13 < one < 0.18 for one in rows(answer, "lit_share").values())


@pytest.mark.parametrize(
    ("say", "tube_mm"),
    [
        ("far window is sharp at 78mm behind the board. i want to 3d print a tube for EF, how long in total", 34),
        ("infinity at 65mm behind the flange, tube for Z, how long", 49),
    ],
)
def test_tube_for_a_mount_seats_the_lens_on_it(club, say, tube_mm):
    (answer,) = talk(club, say)
    assert pytest.approx(tube_mm, abs=0.01) in rows(answer, "stack_mm").values()


def test_stop_behind_a_focal_length_is_no_pitch(club):
    (answer,) = talk(club, "cctv lens 16mm 1.4, thread is an inch with 32 per inch. which mount")
    assert "C, CS" in flat(answer)
    assert "x1.4" not in flat(answer)


@pytest.mark.parametrize("stop", ['"f8"', "f8", "“f8”"])
def test_quotes_about_a_word_change_nothing(club, stop):
    (answer,) = talk(club, f"f4 lens on mft is {stop}, so do i need two stops more light??")
    assert flat(answer).startswith("No: f/4 exposes as f/4")


@pytest.mark.parametrize(
    "say",
    [
        "50mm with the 0.2 shim left out: what does the 10 ft mark mean now",
        "what does 10 ft mean after a 0.2 shim went missing on a 50",
        "someone removed the 0.2 washer, 50mm, what is really sharp at the 10 ft mark",
    ],
)
def test_a_shim_that_is_gone_leaves_the_lens_so_much_too_close(club, say):
    (answer,) = talk(club, say)
    assert "it is now sharp at 13 ft" in flat(answer)


def test_which_ones_counts_nothing(club):
    (answer,) = talk(club, "ok which one's thicker the M42-X or the M42-E ring and by how much")
    assert "27.46 mm against 27.76 mm" in flat(answer)


def test_film_told_behind_a_lens_is_no_other_lens(club):
    (answer,) = talk(club, "it says 1:2.8/80, 645, on my E full frame body, covered?")
    assert "made for 6x4.5" in (answer.reading or "")
