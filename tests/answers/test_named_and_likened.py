"""What a thing is named by or likened to: a ring beside its lens, a stop beside a lens's own, pupils, densities."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, rows, talk


@pytest.mark.parametrize(
    "say",
    [
        "collapsible 5cm f3.5 39mm rangefinder screw, my LTM to X ring, works?",
        "35mm f2.8 39mm rangefinder screw lens, LTM to X ring, ok?",
    ],
)
def test_the_ring_of_a_lens_that_was_told_by_its_thread_is_no_other_lens(club, say):
    (answer,) = talk(club, say)
    assert "LTM lens on an X-mount body: reaches infinity" in flat(answer)


@pytest.mark.parametrize("say", ["so is my 50/1.4 an f2.8 on mft now", "is my 25/1.8 really an f3.6 on mft"])
def test_a_stop_with_an_article_of_its_own_is_not_that_of_the_lens(club, say):
    (answer,) = talk(club, say)
    assert flat(answer).startswith("No: f/1.")


def test_pupils_are_reckoned_with_however_they_are_written(club):
    (answer,) = talk(club, "retrofocus wide with pupil magnif 1.6, at f4 and 1:1 what is the working f-number")
    assert rows(answer, "effective_f_number") == {"m = 1, p = 1.6": pytest.approx(6.5, abs=0.01)}


def test_density_after_a_filter_is_of_that_filter(club):
    *_, answer = talk(club, "fixed f/2 lens, full sun, iso 100, 1/50, how much nd", "what is that as density")
    assert "density 2.21" in flat(answer)


def test_what_is_left_to_the_sensor_behind_a_rear(club):
    *_, answer = talk(club, "50 LTM on E", "it goes 22mm behind its flange when its in. what's left to the sensor")
    assert answer.intent == "hazard"
    assert rows(answer, "clearance_mm")["rear to sensor"] == pytest.approx(6.8, abs=0.01)


def test_a_mount_in_quotes_is_a_mount(club):
    (answer,) = talk(club, "'X to E adapter' would that take my mirrorless X lenses?")
    assert "0.3 mm too far out" in flat(answer)


def test_a_piece_spoken_of_again_is_no_further_one(club):
    (answer,) = talk(club, "28mm m42 tube + the 1 mm flat m42-E ring. is the tube too long for infinity?")
    assert "1.54 mm too far out" in flat(answer)


def test_inches_of_a_body_are_its_frame_and_no_other_lens(club):
    (answer,) = talk(club, "24mm on the 1 inch 1-mount thing equals?")
    assert pytest.approx(65.5, abs=0.2) in rows(answer, "equivalent_focal_mm").values()


def test_how_far_off_a_head_is_no_size_of_it(club):
    (answer,) = talk(club, "85 f2 at 2m head shot, full frame, whats sharp")
    assert pytest.approx(1968.7, rel=0.01) in rows(answer, "dof_near_mm").values()


@pytest.mark.parametrize(
    ("say", "hole_mm"),
    [
        ("paper disk to make a 100mm f2.8 projector lens f/11, hole size", 9.1),
        ("how wide a hole in a card, 50mm f/1.4 M42 lens f/8", 6.25),
    ],
)
def test_a_second_stop_behind_a_lens_is_that_at_which_it_is_used(club, say, hole_mm):
    (answer,) = talk(club, say)
    assert list(rows(answer, "hole_mm").values()) == [pytest.approx(hole_mm, abs=0.06)]


def test_depth_is_told_at_the_second_stop(club):
    (answer,) = talk(club, "50mm f/1.8 lens f/8 dof at 2 m aps-c")
    assert "50 mm f/8 at 2 m" in flat(answer)
    assert "f/1.8 at 2 m" not in flat(answer)


def test_native_of_an_exposure_is_its_speed(club):
    (answer,) = talk(club, "24p at 1/48, f2.8, native 800, full sun: how many stops of ND")
    assert pytest.approx(9.44, abs=0.01) in rows(answer, "nd_stops").values()


def test_one_kind_of_sheet_is_counted(club):
    (answer,) = talk(club, "need 0.3 and the shop only has 0.05 plastic shim. how many")
    assert list(rows(answer, "layer_count").values()) == [6]
