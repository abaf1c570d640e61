"""What is told by a size alone: a camera by its register, a ring by a caliper, an error without its direction."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, numbers


def middles(record, quantity):
    return [(least + most) / 2 for least, most in numbers(record, quantity)]


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("flange to chip on my old video cam is 17.75, 12mm C lens on it. too far?", 0.224),
        ("25mm C mount lens, camera register is 17.3, infinity?", -0.226),
    ],
)
def test_a_camera_told_by_its_register_alone_has_the_mount_of_its_lens(asked, text, error):
    assert pytest.approx(error, abs=0.005) in middles(asked(text), "register_error_mm")


@pytest.mark.parametrize(
    ("text", "ring"),
    [
        ("homemade body with a register of 30, OM 50, which ring", 16.0),
        ("M42 lens on a camera with register 20, ring?", 25.46),
    ],
)
def test_a_lens_of_a_known_mount_needs_the_rest_of_its_register(asked, text, ring):
    assert close(ring) in middles(asked(text), "ring_thickness_mm")


@pytest.mark.parametrize("text", [
    "50mm M39 lens off an old SLR, the 45.2 kind, and a bare bush 39 to 42, on an M42 body. infinity ok?",
    "50mm M39 lens off an old SLR with a 39-42 bush on M42, infinity?",
])  # fmt: skip
def test_of_one_name_a_lens_has_the_register_that_is_told_or_that_of_cameras_not_of_housings(asked, text):
    error = asked(text)["chains"][0]["register_error_mm"]
    assert (error["least"] + error["greatest"]) / 2 == pytest.approx(0.26, abs=0.005)


@pytest.mark.parametrize(
    "text",
    [
        "caliper shows 26.10 on my om-X ring, 28mm lens, how far does it see",
        "26.10 on the calipers for an om to X ring, 28mm. infinity?",
        "i measure 26.10 for the om->X ring, 28mm on it. ok?",
    ],
)
def test_what_a_caliper_says_is_the_thickness_of_the_ring(asked, text):
    record = asked(text)
    assert "26.1 mm" in record["reading"]
    assert "thread" not in record["reading"]


@pytest.mark.parametrize(
    ("text", "magnification"),
    [
        ("12 20 and 36 all together on a 200/4, magnification?", 0.34),
        ("my 85 1.8 with 10 and 16, how big", 26 / 85),
        ("all three, 13 21 31, behind a 50: magnification", 1.3),
    ],
)
def test_numbers_in_a_row_put_to_a_lens_are_tubes(asked, text, magnification):
    assert pytest.approx(magnification, rel=0.01) in middles(asked(text), "magnification")


def test_lenses_in_a_row_on_a_body_stay_lenses(asked):
    assert "50 mm lens and an 85 mm lens" in asked("50 and 85 on MFT how close do they focus")["reading"]


@pytest.mark.parametrize(
    ("text", "turns"),
    [
        ("how many revolutions for 4 mm on an M42x0.75 thread", 4 / 0.75),
        ("with a 0.5 pitch how many rotations is 3 mm", 6.0),
    ],
)
def test_turns_go_by_many_names(asked, text, turns):
    assert pytest.approx(turns, rel=0.01) in middles(asked(text), "thread_turns")


def test_an_error_without_a_direction_is_told_both_ways(asked):
    record = asked("does a 0.1 error matter on a 28")
    assert pytest.approx(7900, rel=0.02) in middles(record, "far_from_sensor_mm")
    assert pytest.approx(7900, rel=0.02) in middles(record, "scale_mark_mm")
    assert "nothing is lost" in record["text"].replace("\n", " ")


def test_a_close_up_lens_on_a_zoom_goes_by_its_power_alone(asked):
    record = asked("+4 close-up lens on a 70-200 zoom at infinity, how far is the subject")
    assert middles(record, "working_distance_mm") == [250.0]


def test_a_stop_behind_a_frame_is_likened_to_one_behind_another(asked):
    record = asked("mft f2.8 zoom = ff 5.6 ?? for what")
    assert record["intent"] == "crop-equivalent"
    assert close(5.6) in middles(record, "equivalent_f_number")


def test_everything_to_one_mount_first_makes_it_a_hub(asked):
    counts = middles(asked("K F and M42 lenses, E and L bodies. single rings or all to M first"), "adapter_count")
    assert close(6.0) in counts
    assert close(5.0) in counts


def test_a_helicoid_set_to_one_length_seats_the_lens(talked):
    record = talked("50mm m42 on E with 17-31 helicoid and 1 mm plate. infinity?", "and fully out at 31?")
    error = record["chains"][0]["register_error_mm"]
    assert (error["least"] + error["greatest"]) / 2 == pytest.approx(4.54, abs=0.05)


def test_another_tube_told_by_a_stand_in_leaves_the_lens(talked):
    record = talked("100mm lens with a 36mm tube, magnification", "and with the 20mm one instead?")
    assert pytest.approx(0.2, rel=0.01) in middles(record, "magnification")


def test_a_ring_made_for_one_body_is_not_on_another(talked):
    record = talked("fd 28 on EF", "the ring i found is 10mm thick. how far can it see", "and on my friends Z?")
    assert record["chains"][0]["verdict"] == "infinity"


def test_tape_under_a_ring_that_is_too_thick_makes_it_worse(talked):
    record = talked("24mm on a ring never gets sharper than 2.5 m. how much off", "cant i put tape under it instead")
    assert "worse" in record["text"]


def test_an_iris_that_does_nothing_on_the_chain_is_told_what_works_it(talked):
    record = talked("m42 50 on L, which ring", "blades never move, theres a little pin at the back")
    assert record["intent"] == "why"
    assert "a lip must press the pin" in " ".join(record["text"].split())


def test_two_frames_are_set_against_each_other_by_size(talked):
    record = talked("44x33 or full frame, which is larger")
    assert record["intent"] == "compare"
    assert "is the larger of the two, 1.27 times" in " ".join(record["text"].split())
