"""Turns of a talk about lists, light, threads, rings and helicoids of the gear told before."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


def mounts(answer):
    return [lens.id for lens in answer.question.lenses]


def last(club, *turns):
    return talk(club, *turns)[-1]


@pytest.mark.parametrize(
    "turn",
    [
        "what else goes on that body", "which other lenses fit that camera", "and what else can i put on it",
        "which other mounts fit my body", "what other old glass goes on this camera",
        "any other lens mounts for that body?",
    ],
)  # fmt: skip
@pytest.mark.parametrize("opening", ["what thickness do i cut", "dof at 2m f4", "does it cover"])
def test_what_else_that_body_takes_is_a_list_of_lenses(club, opening, turn):
    found = last(club, f"om 50 1.8 to Z, {opening}", turn)
    assert found.intent == "list-fits"
    assert not found.question.lenses
    assert "M42" in flat(found)


@pytest.mark.parametrize("turn", ["which other bodies take it", "what else can i put it on", "any other body for it?"])
def test_what_else_a_lens_goes_on_is_a_list_of_bodies(club, turn):
    found = last(club, "om 50 1.8 to Z, dof at 2m f4", turn)
    assert mounts(found) == ["om-mount"]


@pytest.mark.parametrize(
    "turn",
    [
        "light between them", "how much brighter is the FD", "which is brighter", "stops between the two",
        "difference in light", "what do i lose in light with the slower", "how many stops apart are they",
    ],
)  # fmt: skip
def test_two_lenses_of_a_talk_are_set_apart_by_their_light(club, turn):
    found = last(club, "50 f1.4 FD or 55 f1.8 petri for an L body, which one", turn)
    assert "50 mm f/1.4 lets in 0.73 stops more light than 55 mm f/1.8" in flat(found)


def test_an_exposure_of_two_lenses_sets_nothing_apart(club):
    found = last(club, "50 f1.4 FD or 55 f1.8 petri for an L body, which one", "nd for the petri at 1/50 in sun")
    assert "lets in" not in flat(found)


@pytest.mark.parametrize(
    "turn", ["what does 36 do then", "and a 36 one?", "a 36 exists, ok?", "if i made it 36", "found one of 36 mm"]
)
@pytest.mark.parametrize("opening", ["how long is the ring", "which ring"])
def test_a_number_near_the_ring_told_is_a_ring_of_that_length(club, opening, turn):
    found = last(club, f"T2 300mm f5.6 to RF, {opening}", turn)
    assert found.question.lens.focal_length_mm == 300
    assert "1 mm too far" in flat(found) or "stops at 91 m" in flat(found)


@pytest.mark.parametrize(("turn", "focal"), [("and a 35", 35), ("what about a 28", 28), ("my 50?", 50)])
def test_what_lenses_are_usually_as_long_as_is_a_lens(club, turn, focal):
    assert last(club, "om 85 2 on xcd, which ring", turn).question.lens.focal_length_mm == focal


@pytest.mark.parametrize(
    "turn", ["how near with 10 mm behind each", "how near with 10 mm behind both", "10mm in between, how close"]
)
def test_so_much_behind_is_no_other_lens(club, turn):
    found = last(club, "50 f1.4 FD or 55 f1.8 petri for an L body, which one", turn)
    assert "10 mm of tube" in flat(found)
    assert len(found.question.lenses) == 2


@pytest.mark.parametrize("opening", ["which ring", "how long is the ring", "equivalent on aps-c"])
@pytest.mark.parametrize(
    "turn",
    [
        "1 mm pitch ok?", "would a 42x1 thread do", "does a ring with 1 mm pitch take it", "would an M42 thread do",
        "is an m42 screw ok for it",
    ],
)  # fmt: skip
def test_another_thread_asked_about_does_not_become_that_of_the_lens(club, opening, turn):
    found = last(club, f"T2 300mm f5.6 on RF, {opening}", turn)
    assert "T2 and M42 are not the same" in flat(found)
    assert "t2" in mounts(found)


@pytest.mark.parametrize("turn", ["does an M42 ring take it", "will the m42 ring take it"])
def test_a_ring_of_another_thread_that_is_to_take_it_is_no_list_of_bodies(club, turn):
    found = last(club, "T2 300mm f5.6 on RF, which ring", turn)
    assert "no use: the two threads differ in pitch" in flat(found)


def test_a_pitch_that_puts_a_mount_right_is_still_taken(club):
    assert mounts(last(club, "T2 300 on RF", "no the pitch is 1 mm"))[0] == "m42"


@pytest.mark.parametrize(
    "turn", ["too tight when i screw it in", "it screws in two turns then goes stiff", "wont screw all the way"]
)
def test_a_screw_that_binds_is_told_by_its_thread(club, turn):
    found = last(club, "ltm 35 on Z, which ring", turn)
    assert found.intent == "look-alike"
    assert "39 mm x 26 tpi" in flat(found)


@pytest.mark.parametrize("turn", ["how many turns is that", "in turns?", "turns that is"])
@pytest.mark.parametrize(
    ("opening", "turns"), [("the ring is 0.1 too thick", "0.126 turn"), ("infinity at 3m mark, shim", "0.267 turn")]
)
def test_turns_of_the_thread_are_told_of_any_error(club, opening, turns, turn):
    assert turns in flat(last(club, "25 f1.4 c on mft", opening, turn))


@pytest.mark.parametrize(
    "turn",
    ["helicoid all the way in, infinity?", "helicoid wound in, infinity?", "with the helicoid right in infinity?"],
)
def test_a_helicoid_that_is_set_is_the_one_told_before(club, turn):
    found = last(club, "om 50 on E with a 12 mm helicoid how close", turn)
    assert found.reading.endswith("with a 0..12 mm helicoid")
    assert "reaches infinity" in flat(found)


@pytest.mark.parametrize("turn", ["helicoid fully out, how big", "all the way out how big"])
def test_a_helicoid_that_is_out_is_not_taken_off(club, turn):
    assert "0.24x" in flat(last(club, "om 50 on E with a 12 mm helicoid how close", turn))


@pytest.mark.parametrize(
    ("turn", "told"),
    [("vari nd or fixed?", "dark cross"), ("variable or fixed nd", "dark cross"), ("aluminium or brass?", "wears")],
)
def test_a_choice_that_is_advised_on_needs_no_second_answer(club, turn, told):
    assert told in flat(last(club, "30mm f1.4 c mount on mft, 1/60, iso 160, midday sun", turn))


def test_wording_that_leans_to_the_question_before_yields_to_what_plainly_asks(club):
    assert (
        last(club, "qbm 35mm 2.8 RF aps-c equivalent", "and what looks like that mount, mixups?").intent == "look-alike"
    )
