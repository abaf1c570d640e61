"""A body told with its mount behind the word, and how a mount is known from another, asked in a talk."""

from __future__ import annotations

from tests.answers.picture import flat


def test_a_mount_right_behind_the_word_for_a_body_is_the_body_s(asked):
    for first in ("body E", "auklet body E"):
        reading = asked(f"i found a lens, 1/2.8 50mm, screw at the back about 42mm. {first}")["reading"]
        assert reading.startswith("identify the mount for a 50 mm lens on an E-mount body")


def test_the_found_lens_then_goes_on_that_body(talked):
    found = talked(
        "i found a lens, 1/2.8 50mm, screw at the back about 42mm. body E", "ten threads are 10 mm", "ok so m42. ring?"
    )
    assert "50 mm M42 lens on an E-mount body" in found["reading"]


def test_how_it_is_known_from_its_twin_puts_no_other_lens_there(talked):
    for first, turn, told in (
        ("25mm C lens on MFT", "how do i know its not CS", "C or CS"),
        ("50mm M42 lens on E", "how do i know its m42 and not t2", "Pitch 1.0, ten crests in 10 mm, is M42"),
    ):
        found = talked(first, turn)
        assert found["reading"].startswith("identify the mount")
        assert told in flat(found)


def test_a_register_measured_is_that_of_the_lens_spoken_of(talked):
    found = talked("85mm projector lens on RF, how do i mount it", "register measured 70")
    assert "70 mm flange to image" in found["reading"]
    assert "leaves 50 mm" in flat(found)


def test_the_barrel_told_behind_a_projector_lens_is_the_second_length(asked):
    assert "85 mm projector lens" in asked("projector lens 85mm barrel 62.5mm, RF body, what do i do")["reading"]


def test_a_whole_stop_engraved_before_the_focal_length_is_no_size(asked):
    assert "50 mm f/2 M42 lens" in asked("1:2 50mm M42 on E")["reading"]
    assert "magnification 0.5:1" in asked("50mm M42 on E at 1:2, extension?")["reading"]
