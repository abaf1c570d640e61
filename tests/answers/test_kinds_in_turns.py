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


@pytest.mark.parametrize("opening", ["like what lens on ff", "dof at 3 m f4", "is it all lit", "how near with 6 mm"])
@pytest.mark.parametrize("turn", ["horizon ok with 53.5?", "i got 53.5", "53.5 is what i have"])
def test_a_decimal_as_long_as_the_ring_is_no_other_lens(club, opening, turn):
    found = last(club, f"75 2.8 P645 on X, {opening}", turn)
    assert found.question.lens.focal_length_mm == 75
    assert "0.33 mm too far" in flat(found)


@pytest.mark.parametrize("turn", ["ring for the L one", "adapter for the L one", "how thick for the L one"])
def test_a_body_of_two_is_meant_by_its_mount_and_one(club, turn):
    found = last(club, "Z or L body for my C/Y 35 1.4", turn)
    assert mounts(found) == ["cy-mount"]
    assert "25.5 mm" in flat(found)


def test_a_lens_of_two_is_still_meant_by_its_mount_and_one(club):
    assert mounts(last(club, "c/y 50 and om 28 on L", "the om one?")) == ["om-mount"]


@pytest.mark.parametrize(
    "turn", ["with 5 mm in there how close", "how near with 5 mm in between", "5 mm behind it, how near"]
)
def test_so_much_in_there_is_extension(club, turn):
    assert "5 mm of tube: sharp at 32 cm" in flat(last(club, "Z or L body for my C/Y 35 1.4", turn))


@pytest.mark.parametrize("turn", ["as a full frame number?", "in full frame numbers", "its full frame figure?"])
def test_a_full_frame_number_puts_no_full_frame_into_the_body(club, turn):
    assert "on 44x33 frames like 22 mm on full frame" in flat(last(club, "adaptall 28 2.5 on G 44x33, all lit?", turn))


@pytest.mark.parametrize(
    "turn", ["shutter instead, no filter", "a faster shutter instead", "no filter here, which time"]
)
def test_the_shutter_that_does_instead_of_a_filter_is_told(club, turn):
    assert "1/5700 to 1/2800 s" in flat(last(club, "open shade, 1/60 iso 200 f1.2, nd?", turn))


@pytest.mark.parametrize("opening", ["hyperfocal at f11", "nd sun 1/50", "equivalent", "is it all lit"])
@pytest.mark.parametrize("turn", ["seat of the adapter", "seat?", "seat of that ring?"])
def test_the_seat_asked_after_a_pair_is_that_of_its_ring(club, opening, turn):
    assert "24.45 mm" in flat(last(club, f"35 f3.5 argus on L, {opening}", turn))


@pytest.mark.parametrize("turn", ["sharp up to", "ends where", "so how far is it sharp", "sharp till where"])
def test_how_far_a_ring_that_is_off_leaves_it_sharp(club, turn):
    assert "83 cm" in flat(last(club, "13 1.9 d on Q, ring", "i have a 3.3 mm ring", turn))


@pytest.mark.parametrize("turn", ["what is an altix mount like", "what is that altix mount"])
def test_what_a_mount_is_like_asks_of_no_view(club, turn):
    assert last(club, "altix 50 2.8 on EF-M behind a 6 mm spacer, nearest?", turn).intent == "definition"


@pytest.mark.parametrize("turn", ["deep at 1 m", "28 on it, deep at 1 m", "so deep at 80 cm"])
def test_deep_at_a_distance_is_a_depth_of_field_there(club, turn):
    found = last(club, "50 1.4 c/y on Z", turn)
    assert found.question.distance_mm in (800, 1000)
    assert found.question.lens.focal_length_mm == (28 if "28" in turn else 50)


@pytest.mark.parametrize("turn", ["and the value for shake", "which number for shake"])
def test_a_number_for_the_shake_is_one_for_the_stabiliser(club, turn):
    assert "enter 90 mm" in flat(last(club, "adaptall 90 2.5 on RF wont take a picture", turn))


@pytest.mark.parametrize(
    "turn", ["at 135 what is it on crop", "at 135 equivalent on aps-c", "on aps-c at 135 it equals?"]
)
def test_a_zoom_is_set_to_what_is_told_whatever_frame_is_told_beside(club, turn):
    found = last(club, "zoom 80-200 f4 SR on L, what do i key in for the stabiliser", turn)
    assert "135 mm on APS-C frames like 206 mm" in flat(found)


@pytest.mark.parametrize(("turn", "stop"), [("how deep at 8", 8), ("and how deep at 2.8", 2.8), ("deep at 4", 4)])
def test_how_deep_at_a_bare_stop_is_a_depth_of_field(club, turn, stop):
    found = last(club, "50 1.4 c/y on Z", turn)
    assert found.intent == "depth-of-field"
    assert found.question.f_number == stop


def test_a_ring_that_was_turned_is_no_matter_of_how_near(club):
    found, tape, mark = talk(
        club, "ring altix to X, what seat do i need", "24.6 is what i turned", "tape under it?",
        "and a 35 focuses to infinity at which mark",
    )[1:]  # fmt: skip
    assert found.intent == "focus-verdict"
    assert "0.2 mm" in flat(tape)
    assert "infinity at its 6.2 m mark" in flat(mark)


@pytest.mark.parametrize(
    ("opening", "told"),
    [("om 50 f2 on E how big with 10 mm tube", "2.0 stops"), ("tube or bellows for om 50 f2 on E", "2.0 stops")],
)
@pytest.mark.parametrize("turn", ["light then", "what light do i lose", "light loss there?"])
def test_a_size_wanted_after_tubes_is_what_light_is_asked_of(club, opening, told, turn):
    assert told in flat(last(club, opening, "how long for 1:1", turn))


def test_a_size_wanted_after_tubes_is_what_depth_is_asked_of(club):
    found = last(club, "om 50 f2 on E how big with 10 mm tube", "how long for 1:1", "and how deep at f8")
    assert "0.96 mm sharp in all" in flat(found)


def test_a_tube_alone_is_still_what_light_is_asked_of(club):
    assert "0.5 stops" in flat(last(club, "om 50 on E how big with 10 mm tube", "light then"))


@pytest.mark.parametrize("turn", ["field at 1 m", "and the field at 1 m?"])
@pytest.mark.parametrize("opening", ["at f5.6, 1 m, how much is sharp", "which ring", "nd sun 1/50"])
def test_a_field_at_a_distance_is_what_is_seen_there(club, opening, turn):
    assert "1.4 x 0.95 m on full frame" in flat(last(club, f"fd 24 f2.8 on E full frame, {opening}", turn))


@pytest.mark.parametrize("turn", ["f number then", "and the f number?", "f stop with it?"])
def test_the_stop_behind_glass_is_asked_after_the_stabiliser(club, turn):
    assert "600 mm f/8" in flat(last(club, "m42 300 f4 on Z with 2x, number for the stabiliser", turn))


@pytest.mark.parametrize("turn", ["could it be cs", "isnt it cs", "might it be a cs one"])
@pytest.mark.parametrize("opening", ["is it all lit", "nd sun 1/50", "equivalent"])
def test_a_doubt_of_the_mount_is_no_other_lens(club, opening, turn):
    found = last(club, f"c mount 12.5 1.4 on cx, {opening}", turn)
    assert "c" in mounts(found)
    assert "5 mm" in flat(found)


@pytest.mark.parametrize("turn", ["mft same look, which lens", "for the same look on mft which lens"])
def test_the_same_look_on_another_frame_is_a_lens_for_it(club, turn):
    assert "52.5 mm" in flat(last(club, "k 105 2.8 on rf, portrait at 1.8 m, f2.8, depth", turn))


@pytest.mark.parametrize("turn", ["will a 25 1.4 light it", "does a 25 1.4 light that sensor"])
def test_a_lens_that_is_to_light_it_asks_of_no_ring(club, turn):
    assert last(club, "cup for c mount lens into X, how deep do i mill it", turn).intent == "coverage"


@pytest.mark.parametrize("turn", ["why do my longer ones not care", "why do the teles not show it"])
def test_why_long_lenses_show_no_error_is_told_by_the_square(club, turn):
    found = last(club, "fd 24 f2.8 on E full frame", "mine is 24.15 and soft far out", turn)
    assert "square of the focal length" in flat(found)


@pytest.mark.parametrize("turn", ["full frame?", "on full frame", "and in full frame"])
def test_full_frame_after_a_body_that_has_none_is_what_it_is_like_there(club, turn):
    found = last(club, "135 2.8 adaptall on mft", turn)
    assert "135 mm on Four Thirds frames like 270 mm on full frame" in flat(found)


def test_full_frame_after_a_view_is_another_frame(club):
    assert "135 mm on full frame" in flat(last(club, "135 2.8 adaptall on mft, equivalent", "and full frame"))


@pytest.mark.parametrize("opening", ["nd sun 1/50", "equivalent", "is it all lit"])
@pytest.mark.parametrize(
    "turn", ["what do i look for so it isnt a cs", "how do i make sure its no cs", "how do i see that its no cs"]
)
def test_how_to_make_sure_that_it_is_another_mount_keeps_the_lens(club, opening, turn):
    found = last(club, f"30mm f1.4 c mount on mft, {opening}", turn)
    assert found.intent == "identify-mount"
    assert "12.5" in flat(found)


@pytest.mark.parametrize("opening", ["1.2 m f4 how deep", "nd sun 1/50"])
def test_a_mount_that_changes_nothing_of_a_depth_is_asked_for_its_ring(club, opening):
    found = last(club, f"exakta 58 f2 on E, {opening}", "will a re lens do as well")
    assert found.intent == "chain"
    assert "seat 26.7 mm" in flat(found)
