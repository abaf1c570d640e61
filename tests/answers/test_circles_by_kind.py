"""The circle of a lens that is told by what it was made for, beside the kind of lens it is."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.talk import Talk
from tests.answers.talks import flat


@pytest.mark.parametrize("asked", ["28mm projector lens from super 8, does it light a 1 inch sensor",
                                   "8mm projector lens 25mm cover mft?"])  # fmt: skip
def test_a_projector_lens_for_narrow_film_is_no_slide_projector_s(club: Desk, asked: str) -> None:
    assert "does not cover" in flat(club.ask(asked))


def test_a_slide_projector_s_lens_covers_what_a_slide_does(club: Desk) -> None:
    assert "covers full frame: image circle 43 to 60 mm" in flat(club.ask("slide projector 85 covers ff"))


def test_medium_format_said_of_a_lens_tells_its_circle(club: Desk) -> None:
    assert "covers full frame: image circle 70 to 115 mm" in flat(
        club.ask("medium format 80 on full frame, any vignette possible")
    )


@pytest.mark.parametrize("asked", ["4x microscope objective on ff, only middle bright?",
                                   "RMS objective on full frame, does it cover"])  # fmt: skip
def test_a_microscope_objective_lights_its_own_field(club: Desk, asked: str) -> None:
    assert "does not cover full frame: image circle 18 to 22 mm" in flat(club.ask(asked))


def test_the_film_of_what_a_lens_comes_from_tells_its_circle(club: Desk) -> None:
    got = flat(club.ask("projector optic 50mm f1.2 from a 16mm machine, mft covered"))
    assert "may or may not cover Four Thirds, that depends on the lens: image circle 12 to 25 mm" in got


def test_a_length_behind_a_shape_after_coverage_is_the_circle(club: Desk) -> None:
    talk = Talk()
    club.ask("2/3 inch c lens, 1 inch sensor, covered?", talk)
    assert "Largest clean 16:9 crop 9.6 x 5.4 mm" in flat(club.ask("what 16:9 is left, say 11mm", talk))


def test_what_an_opening_does_to_the_corners_is_told_without_the_lens_s_numbers(club: Desk) -> None:
    got = flat(club.ask("t2 tunnel is only 38 clear, telescope on full frame, does that choke the corners"))
    assert "The 38 mm opening is narrower than the diagonal of full frame" in got
    assert "darkens the corners hangs on the lens" in got


@pytest.mark.parametrize("asked", ["old lens from a movie camera, does it cover aps-c",
                                   "my grandpas cine camera lens on full frame, covered?",
                                   "does a camcorder lens fill mft"])  # fmt: skip
def test_a_lens_off_a_small_camera_is_not_taken_for_one_of_full_frame(club: Desk, asked: str) -> None:
    got = flat(club.ask(asked))
    assert "made for full frame" not in got
    assert "does not cover" in got


def test_a_cine_lens_may_be_of_any_film(club: Desk) -> None:
    got = flat(club.ask("does a cine lens cover aps-c"))
    assert "not by lens made for Regular 8" in got
    assert "covered by lens made for Super 35" in got


@pytest.mark.parametrize(
    ("first", "circle"),
    [
        ("I found a 16mm C lens, 1 inch tv type, and have an MFT camera. what do I need", "16 to 18 mm"),
        ("a 25mm D lens, regular 8, and an MFT body. which ring", "9 to 16 mm"),
    ],
)
def test_the_format_behind_a_lens_is_its_own_and_not_the_frame_of_the_body(club: Desk, first: str, circle: str) -> None:
    memory = Talk()
    club.ask(first, memory)
    found = flat(club.ask("does it fill the frame", memory))
    assert f"does not cover Four Thirds: image circle {circle}" in found


def test_the_size_of_a_sensor_behind_a_lens_is_that_of_the_body(club: Desk) -> None:
    found = club.ask("25mm C lens, 1 inch sensor in my CX body, how do i mount it")
    assert found.question is not None
    assert found.question.lenses[0].format is None
