"""What is told of a thing behind it, or in another clause, is that thing's: its mount, its camera, its body."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.talk import Talk
from grammar.questions import Question
from tests.desks import desk_of


@pytest.fixture(scope="module")
def desk() -> Desk:
    return desk_of()


def pair(question: Question | None) -> tuple[str, str]:
    assert question is not None
    lens, body = (thing.ids[0] if thing is not None and thing.ids else "" for thing in (question.lens, question.body))
    return lens, body


@pytest.mark.parametrize(
    ("said", "lens", "body"),
    [
        ("tele 135mm, preset, T2. goes ~1 turn into the ring M42-E", "t2", "e-mount"),
        ("my body is Z, the other end is T thread as on telescopes, what goes between", "t2", "z-mount"),
        ("the lens is C, camera is MFT, infinity?", "c", "mft-mount"),
        ("the lens is M39 but from an SLR, i have an LTM-E ring", "m39-zenit", "e-mount"),
        ("Is there some adapter for putting AR glass on a digital reflex with EF mount?", "ar-mount", "ef-mount"),
        ("Will a camera with C-mount accept those little M12 board lenses?", "s", "c"),
        ("135 T2 preset into my ring M42/E", "t2", "e-mount"),
        ("an M42 50 with an M42/EF one", "m42", "ef-mount"),
        ("EF. lens out of a slide projector, 85mm 2.8, smooth barrel 42.5 dia, unthreaded", "", "ef-mount"),
    ],
)
def test_lens_and_body_are_those_meant(desk: Desk, said: str, lens: str, body: str) -> None:
    assert pair(desk.ask(said).question) == (lens, body)


def test_of_bodies_side_by_side_each_is_one(desk: Desk) -> None:
    question = desk.ask("For C mount lenses, is an E camera with APS-C or an MFT one the better choice?").question
    assert question is not None
    assert [thing.ids[0] for thing in question.bodies] == ["e-mount", "mft-mount"]


def test_the_length_behind_the_comma_is_that_of_the_piece(desk: Desk) -> None:
    question = desk.ask("the spacer, the 2.5mm one, to go with an M48 ring. can't I just leave it out?").question
    assert question is not None
    assert [thing.thickness_mm for thing in question.adapters if thing.thickness_mm] == [(2.5, 2.5)]


@pytest.mark.parametrize(
    ("said", "stop"),
    [("outside w/ 1.2 glass from a projector, native iso is 800, shooting 25p", 1.2),
     ("Turning an adapter myself. It is for a 1.8/10 on super 16, how exact has it to be?", 1.8)],
)  # fmt: skip
def test_the_opening_is_the_lens_s(desk: Desk, said: str, stop: float) -> None:
    question = desk.ask(said).question
    assert question is not None
    assert question.lens is not None
    assert question.lens.f_number == stop


def test_breech_lock_lenses_of_a_format_are_taken_for_the_mount_with_the_most_rings(desk: Desk) -> None:
    answer = desk.ask(
        "Full frame EF camera. I own two breech-lock lenses from a 6x6 system and would love to tilt them"
    )
    assert pair(answer.question) == ("p6-mount", "ef-mount")
    assert any("Taken for P6" in line.text for line in answer.lines)


def test_a_lens_flipped_onto_the_filter_thread_of_another_is_coupled_with_it(desk: Desk) -> None:
    answer = desk.ask("If I flip a 50mm round and couple it to the filter thread of a 135mm, which ratio does it give?")
    sizes = [row.value.nominal for row in answer.quantities or () if row.name == "magnification"]
    assert any(size == pytest.approx(2.7) for size in sizes)


def test_what_the_lens_of_a_camera_is_set_to_is_its_focal_length(desk: Desk) -> None:
    question = desk.ask(
        "The lens on my super 8 cam is set to 10 mm. Which full-frame focal length matches it?"
    ).question
    assert question is not None
    assert question.lens is not None
    assert question.lens.focal_length_mm == 10


def test_what_stands_in_for_infinity_is_so_far_away(desk: Desk) -> None:
    answer = desk.ask("With an 85, what's the minimum distance of an object that can stand in for infinity?")
    assert any(row.name == "target_distance_mm" for row in answer.quantities or ())


def test_the_image_measured_on_an_enlarger_lens_leaves_its_focal_length(desk: Desk) -> None:
    talk = Talk()
    desk.ask("80mm enlarger lens (39 thread) to E with infinity, how long must the tubing be", talk)
    question = desk.ask("just did, 74.5 to a roof far away", talk).question
    assert question is not None
    assert question.lens is not None
    assert (question.lens.focal_length_mm, question.said("flange_to_image")) == (80, "74.5 mm")
    answer = desk.ask("parts bin: m39-m42 ring 1mm, 25-55 helicoid, flat m42-E 1mm. enough?", talk)
    told = [row.value.nominal for row in answer.quantities or () if row.name == "helicoid_setting_mm"]
    assert told[:1] == [pytest.approx(54.5)]
