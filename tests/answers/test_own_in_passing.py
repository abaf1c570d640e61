"""One's own lenses and bodies named side by side, and all of them asked about in other words."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.answers.talks import talk
from tests.desks import desk_in


@pytest.mark.parametrize(
    "text",
    [
        "avocet skiff card f/4", "card for avocet on skiff f/4", "avocet skiff card at f/4",
        "card avocet on the skiff f4",
        "pocket card: avocet, skiff, f/4",
    ],
)  # fmt: skip
def test_a_stop_beside_things_of_ones_own_is_the_one_set(desk, text):
    question = desk.ask(text).question
    assert question.intent == "card"
    assert [lens.id for lens in question.lenses] == ["avocet"]
    assert [body.id for body in question.bodies] == ["skiff"]
    assert question.f_number == 4


def test_a_mount_behind_a_lens_of_ones_own_is_that_of_the_body(desk):
    question = desk.ask("draw the avocet mft").question
    assert [lens.id for lens in question.lenses] == ["avocet"]
    assert [body.id for body in question.bodies] == ["mft-mount"]


@pytest.mark.parametrize(
    "text",
    [
        "which of my glass lights the skiff", "of all my glass, which cover the skiff", "my lenses that fill the skiff",
        "out of my lenses which cover the skiff without dark corners", "wich lens of mine covers skiff",
    ],
)  # fmt: skip
def test_all_of_ones_own_lenses_by_what_they_light(desk, text):
    answer = desk.ask(text)
    assert answer.intent == "which-own"
    assert [demand.quantity for demand in answer.question.sought.any_of[0]] == ["lit_share"]
    assert [body.id for body in answer.question.bodies] == ["skiff"]


def test_ones_own_lenses_may_be_told_by_their_mounts(desk):
    (group,) = desk.ask("which of my c mounts reach infinity on the skiff").question.sought.any_of
    assert {(demand.quantity, demand.word) for demand in group} == {("verdict", "infinity"), ("lens_mount", "c")}


def test_a_length_on_full_frame_is_no_equivalent(desk):
    (group,) = desk.ask("which of my lenses focus closer than 40 cm on full frame").question.sought.any_of
    assert [(demand.quantity, demand.number) for demand in group] == [("near_from_sensor_mm", 400)]


def test_all_my_glass_is_all_of_it_and_my_glass_is_not(desk):
    assert desk.ask("compare all my glass on the skiff").question.sought is not None
    assert desk.ask("all my glass on the skiff").intent == "all-on-all"
    assert desk.ask("reg of my lens is 44.9 by paper, what ring on L").question.sought is None


def test_what_goes_on_after_a_drawing_is_drawn(club):
    _, frame, tube = talk(club, "draw a 50mm f/1.8 M42 lens on an E-mount body", "and the frame", "with a 10 mm tube")
    assert (frame.intent, frame.question.topic) == ("draw", "frame")
    assert tube.intent != "draw"


def test_a_ring_that_tilts_is_said_to_be_drawn_straight(tmp_path):
    text = "draw a 50mm f/1.8 M42 lens on an E-mount body with {} in section"
    for ring, said in (("a tilt ring", True), ("a ring", False)):
        desk_in(tmp_path).ask(text.format(ring))
        (drawn,) = Path(tmp_path).glob("*.svg")
        assert ("drawn straight" in " ".join(drawn.read_text(encoding="utf-8").split())) is said
        drawn.unlink()
