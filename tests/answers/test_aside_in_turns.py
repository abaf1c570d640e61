"""What is asked beside the chain in a talk: how to check, what else is like it, the right part, how to focus."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk

FORCED = "T2 lens into M42 ring goes 1.5 turns then tight"
YELLOW = "the back glass of my m42 50 1.4 is yellowish brown, dangerous?"


@pytest.mark.parametrize("turn", ["7.5 over ten", "7.5 for 10", "ten turns 7.5", "i count ten in 7.5"])
def test_a_length_over_ten_crests_is_a_pitch_and_no_register(club, turn):
    _, found = talk(club, "black 135 tele with no name, thread is 41.8", turn)
    assert found.question.said("flange_to_image") is None
    assert "by these it is T2" in flat(found)


@pytest.mark.parametrize("turn", ["10 for ten", "10 across ten threads", "its 10mm for ten"])
def test_a_whole_number_over_ten_crests_is_a_pitch_too(club, turn):
    _, found = talk(club, "unmarked lens, thread 41.9 across", turn)
    assert found.question.said("pitch") == "1 mm"


def test_a_mount_told_by_its_measures_goes_when_they_are_told_anew(club):
    _, other, anew, on = talk(
        club, "thread 42, pitch 1, window comes sharp 45.5 behind the flange", "no wait, 55",
        "may be i counted badly, say 0.75", "on ef then",
    )  # fmt: skip
    assert other.question.lens is None or not other.question.lens.ids
    assert "that is T2" in flat(anew)
    assert on.question.lens.ids == ("t2",)
    assert "seat 11 mm" in flat(on)


def test_a_number_told_anew_is_no_width_that_a_caliper_would_have_missed(club):
    _, found = talk(club, "thread 39, pitch 1, window sharp 28.8 behind the flange", "sorry, 45.2")
    assert "that is M39x1 SLR" in flat(found)


def test_what_looks_and_throat_tell_together_is_the_lens_that_is_spoken_of(club):
    told, on = talk(club, "big chrome mount, four flanges, bore about 54. what is it", "what puts it on an RF")
    assert told.lines[0].text.endswith("most likely PL.")
    assert "Taken for PL. Others look or measure like it" in flat(on)
    assert "seat 32 mm" in flat(on)


@pytest.mark.parametrize("turn", ["with just a ruler?", "no caliper, only a ruler", "how can i tell for sure"])
def test_how_it_is_measured_by_hand_is_asked_of_the_lens_that_is_identified(club, turn):
    _, found = talk(club, "unmarked lens, 42 thread", turn)
    assert found.intent == "identify-mount"
    assert "en pitches" in flat(found)


@pytest.mark.parametrize("turn", ["how do i check that", "is there a way to verify it", "can i tell for sure at home"])
def test_a_danger_is_checked_and_no_mount_named(club, turn):
    _, found = talk(club, YELLOW, turn)
    assert found.intent == "hazard"
    assert "Geiger counter" in flat(found)


def test_what_is_checked_after_another_danger_is_that_one(club):
    _, found = talk(club, "my lens has fungus inside, is that dangerous for others", "how do i check that")
    assert "thoriated" not in flat(found)


@pytest.mark.parametrize("turn", ["what else is close to that", "anything similar?", "what else could it be"])
def test_what_else_is_near_a_register_is_told_by_registers(club, turn):
    _, found = talk(club, "which mount has a 46.5 register", turn)
    assert found.intent == "look-alike"
    assert {"f-mount", "om-mount"} <= {row.case for row in found.quantities}


@pytest.mark.parametrize("turn", ["whats the proper part then", "what do i use instead", "which part do i need then"])
@pytest.mark.parametrize("first", [FORCED, "is a T2 lens the same as M42, both 42"])
def test_the_proper_part_is_the_ring_that_joins_the_two(club, first, turn):
    _, found = talk(club, first, turn)
    assert found.intent == "chain"
    assert "9.54 mm" in flat(found)


@pytest.mark.parametrize("turn", ["so how do i focus", "ok works now. so how do i focus with this", "hows it focused"])
@pytest.mark.parametrize("first", ["OM 50 on E", "just got an m42 to e ring, camera refuses to fire"])
def test_how_it_is_focused_is_told_after_a_lens_on_a_body(club, first, turn):
    _, found = talk(club, first, turn)
    assert found.intent == "gear-setting"
    assert flat(found).startswith("enlarging the picture to focus")


def test_close_up_it_is_focused_by_moving(club):
    _, found = talk(club, "FD 50 on E with 50 mm tubes, how close", "so how do i focus at that size")
    assert flat(found).startswith("focusing close up: By moving")


def test_a_filter_for_a_sunny_day_is_no_ruling_on_the_sun(club):
    first = "can i shoot into the sun with my 85 1.4"
    _, found, stopped = talk(club, first, "what nd just for a sunny beach, 1/50 iso 100 at 1.4", "and at f4")
    assert found.intent == stopped.intent == "exposure-nd"


def test_a_dark_filter_does_not_make_the_sun_safe_whatever_was_asked_before(club):
    first = "ok to leave an adapted 85 1.4 on the windowsill uncapped?"
    *_, found = talk(club, first, "and filming straight into the sun with it", "is an nd64 ok then")
    assert flat(found).startswith("No: not without a certified solar filter")


@pytest.mark.parametrize("turn", ["can it jump over to my other lenses?", "is it contagious", "does it spread"])
def test_whether_fungus_spreads_is_a_danger_and_no_repair(club, turn):
    _, found = talk(club, "spider web stuff inside my sr 50, how do i clean it out", turn)
    assert found.intent == "hazard"
    assert "Keep it apart" in flat(found)


@pytest.mark.parametrize("turn", ["what if the ring is a flat 1mm one", "and if the adapter is a 1 mm one"])
def test_a_length_told_of_the_ring_as_one_is_the_ring_and_no_lens(club, turn):
    _, found = talk(club, "c 25 on e", turn)
    assert found.question.lens.focal_length_mm == 25
    assert [piece.thickness_mm for piece in found.question.adapters] == [(1, 1)]


def test_one_of_another_length_is_the_thing_that_it_is_nearest_to(club):
    *_, ring, lens = talk(club, "c 25 on e, the ring is a plain 1 mm one", "a 3mm one?", "and a 50mm one?")
    assert ring.question.lens.focal_length_mm == 25
    assert [piece.thickness_mm for piece in ring.question.adapters] == [(3, 3)]
    assert lens.question.lens.focal_length_mm == 50


@pytest.mark.parametrize("turn", ["and a 85", "85?", "and a 135"])
def test_no_ring_is_as_long_as_a_lens(club, turn):
    _, found = talk(club, "m42 50 on E with a 27 mm ring", turn)
    assert [piece.thickness_mm for piece in found.question.adapters] == [(27, 27)]


@pytest.mark.parametrize("turn", ["with 15 more, how close is that", "15 mm more, how near", "15 extra, how close"])
def test_so_much_more_is_how_far_the_lens_goes_out_and_no_other_lens(club, turn):
    _, found = talk(club, "OM 50 on Z", turn)
    assert found.question.lens.focal_length_mm == 50
    assert "28 cm from the sensor, 0.3x" in flat(found)


@pytest.mark.parametrize("turn", ["what does the E ring cost", "and the ring for E, what would i pay", "and on E?"])
def test_glass_that_one_body_wanted_is_not_asked_of_another(club, turn):
    _, found = talk(club, "AR lens on EF, with glass maybe?", turn)
    assert found.question.lens.ids == ("ar-mount",)
    assert [body.ids[0] for body in found.question.bodies] == ["e-mount"]
    assert "12 to 30 dollars" in flat(found)


@pytest.mark.parametrize("turn", ["and the E ring?", "how thick is the E ring"])
def test_the_ring_of_another_body_puts_the_same_lens_on_it(club, turn):
    _, found = talk(club, "m42 58 on Z, which ring", turn)
    assert found.question.lens.ids == ("m42",)
    assert "27.46 mm" in flat(found)


def test_a_lens_that_falls_through_a_ring_has_not_the_mount_of_that_ring(club):
    _, on = talk(club, "20mm thread on a little microscope lens, falls straight thru my M25 ring", "what gets it on E")
    assert on.question.lens.ids[0].startswith("rms")


def test_what_can_be_done_about_an_iris_without_power_is_told_with_it(club):
    _, found = talk(club, "ef lens on a dumb e ring, cant change the aperture", "any trick to stop it down?")
    assert "hold the preview button" in flat(found)


def test_so_much_more_after_a_wanted_size_is_on_top_of_what_that_takes(club):
    *_, found = talk(club, "bellows or tubes for an m42 50 on E", "tubes. what length for 0.5x", "with 10 more?")
    assert [piece.thickness_mm for piece in found.question.adapters] == [(35, 35)]


@pytest.mark.parametrize("turn", ["what body would be right", "what about a mirrorless body for it then"])
def test_a_body_that_would_take_it_is_asked_for(club, turn):
    _, found = talk(club, "why does my MD 50mm f1.7 only focus out to 1.5 m on an EF body", turn)
    assert found.intent == "list-fits"
    assert "E-mount: reaches infinity" in flat(found)


@pytest.mark.parametrize("turn", ["isnt that m42", "is that not just M42", "same as m42?"])
def test_a_name_that_is_doubted_is_set_against_the_lens(club, turn):
    _, found = talk(club, "T2 300mm f6.3 to X, seat to seat?", turn)
    assert flat(found).startswith("No, T2 and M42 are not the same")


def test_what_looks_like_a_lens_is_not_set_against_the_body(club):
    _, found = talk(club, "K 55/1.8 on a Z body, what ring", "anything with the same bayonet id mix it up with")
    assert "not the same" not in flat(found)
    assert flat(found).startswith("K-mount: bayonet")
    assert "R-K" in flat(found)


@pytest.mark.parametrize("turn", ["then how thick would the ring be", "which ring would i need for that"])
def test_the_body_holds_on_past_what_a_lens_looks_like(club, turn):
    *_, found = talk(club, "M42 28mm f3.5 on an RF camera, how", "could it be a T2 instead, same 42", turn)
    assert found.question.body.ids[0] == "rf-mount"
    assert "35 mm" in flat(found)


@pytest.mark.parametrize("turn", ["pitch same?", "do they share the pitch"])
def test_the_pitch_of_two_is_asked_of_both(club, turn):
    _, found = talk(club, "is M42 the same as T2", turn)
    assert "pitch 1 mm" in flat(found)
    assert "pitch 0.75 mm" in flat(found)


@pytest.mark.parametrize("turn", ["harm in trying it", "can i damage something by screwing it in"])
def test_a_thread_that_nearly_meets_is_stripped_by_force(club, turn):
    _, found = talk(club, "is M42 the same as T2", turn)
    assert "forcing strips the softer part" in flat(found)


@pytest.mark.parametrize("turn", ["i have the slr kind, ring for E?", "mine is an slr lens, ring for E"])
def test_the_kind_of_camera_tells_which_of_a_name_it_is(club, turn):
    _, found = talk(club, "M39 is M39 no?", turn)
    assert "M39x1 SLR to E ring" in flat(found)


@pytest.mark.parametrize("turn", ["on the 1.6 one its like a what", "how does it frame on the crop body"])
def test_the_small_frame_of_a_body_is_that_of_its_mount(club, turn):
    _, found = talk(club, "M42 28mm f3.5 on an RF camera, how", turn)
    assert "frames like 45 mm" in flat(found)


def test_a_body_of_either_frame_is_answered_for_both(club):
    (found,) = talk(club, "28mm M42 on E, equivalent?")
    assert "28 mm on full frame frames like 28 mm" in flat(found)
    assert "28 mm on APS-C frames like 43 mm" in flat(found)


@pytest.mark.parametrize("turn", ["framing vs 35mm film?", "what would that be on 35mm film"])
def test_the_film_that_a_view_is_likened_to_is_no_lens(club, turn):
    _, found = talk(club, "55mm K lens on an X body, infinity?", turn)
    assert "55 mm on APS-C frames like 84 mm" in flat(found)


@pytest.mark.parametrize("turn", ["does it light the whole full frame", "does it fill full frame"])
def test_whether_a_frame_is_lit_is_asked_whatever_was_before(club, turn):
    _, found = talk(club, "50mm f2 LTM on E, ring is 11.1, infinity?", turn)
    assert found.intent == "coverage"


def test_how_deep_a_cup_is_on_another_body(club):
    _, found = talk(club, "C mount cup for an E body, depth and bore for a 32 barrel", "on MFT how deep")
    assert found.intent == "diy-dimension"
    assert "-1.72 mm" in flat(found)


@pytest.mark.parametrize("turn", ["we also want the sun in june", "and the sun?"])
def test_the_sun_that_is_wanted_is_ruled_on_whatever_else_the_chain_warns_of(club, turn):
    *_, found = talk(club, "T2 on my EF camera, ring length", "how far off would that be", turn)
    assert found.intent == "hazard"
    assert "certified solar filter in front" in flat(found)


def test_a_shutter_that_fires_is_no_fire(club):
    *_, found = talk(club, "C lens on MFT, camera says no lens", "ok fires now. f-- in the display, thats bad?")
    assert "start a fire" not in flat(found)


@pytest.mark.parametrize("turn", ["and the same lens on Z", "same lens, X body", "what about L instead", "and on E?"])
def test_after_a_danger_another_body_asks_for_its_ring(club, turn):
    *_, found = talk(club, "180/2.8 from a P6, EF body", "on a 1.6 crop body it is like?", "weight 2 kg ok?", turn)
    assert found.intent == "chain"
    assert found.question.lens.ids == ("p6-mount",)


def test_no_body_changes_the_stabilisers_number_and_another_asks_for_its_ring(club):
    *_, found = talk(club, "dkl 50 on MFT please", "stabiliser number", "and on X?")
    assert (found.intent, found.question.body.ids[0]) == ("chain", "x-mount")


def test_the_same_view_is_asked_of_another_body_where_nothing_else_was_since(club):
    *_, found = talk(club, "50mm m42 on apsc, like what?", "and the same lens on MFT")
    assert found.intent == "crop-equivalent"


@pytest.mark.parametrize(
    ("opening", "turn", "said"),
    [
        ("50mm m42 on L", "what does the little pin at the back do", "The pin closes the blades"),
        ("50mm m42 on L", "whats that pin for", "A pin at the rear of M42 lenses"),
        ("50mm m42 on L", "what does the lip in the ring do", "lip: A rim of a ring"),
        ("fd 50 on E", "what does the lever inside the ring do", "by which the body closes the blades"),
        ("35mm M on Z", "what does the cam do", "cam of a lens:"),
    ],
)
def test_what_a_part_is_for_is_told_and_no_chain(club, opening, turn, said):
    _, found = talk(club, opening, turn)
    assert found.intent == "definition"
    assert said in flat(found)
    assert "register" not in flat(found).split("Or, if")[0]


@pytest.mark.parametrize("turn", ["why do they make it thicker then", "but why so thick"])
def test_a_ring_for_an_slr_that_is_cut_thicker_keeps_rears_off_the_mirror(club, turn):
    _, found = talk(club, "exa to EF ring 1.0 thick, 35mm", turn)
    assert found.intent == "why"
    assert "rears stay off the mirror" in flat(found)


def test_a_thick_ring_for_a_mirrorless_body_keeps_nothing_off_a_mirror(club):
    _, found = talk(club, "K to X adapter 28.0 mm, 50", "why did they make it too thick")
    assert "rears stay off the mirror" not in flat(found)


@pytest.mark.parametrize("turn", ["which bodies would be better", "which other body would take it"])
def test_where_else_a_lens_would_do_leaves_out_the_body_told_and_those_of_film(club, turn):
    _, found = talk(club, "exa to EF ring 1.0 thick, 35mm", turn)
    assert found.intent == "list-fits"
    assert "EF-mount:" not in flat(found)
    assert "E-mount: reaches infinity" in flat(found)
    assert "RE (extended" not in flat(found)


@pytest.mark.parametrize(
    ("opening", "turn", "said"),
    [
        ("58/2 m42 to my Z body, which ring", "does it care about the pin", "auto pin: A pin at the rear of M42"),
        ("58/2 m42 to my Z body, which ring", "and the pin?", "auto pin: A pin at the rear of M42"),
        ("fd 50 on E", "and the lever?", "stop-down lever:"),
        ("35 LTM on M body", "does the cam matter", "cam of a lens:"),
        ("fd 50 on E", "does the lever touch anything", "Mostly harmless on mirrorless"),
    ],
)
def test_a_part_that_alone_is_named_is_told_of(club, opening, turn, said):
    _, found = talk(club, opening, turn)
    assert flat(found).startswith(said)


@pytest.mark.parametrize("turn", ["what sheet do i cut", "which sheet should i use", "what material"])
def test_a_sheet_for_a_thin_ring_is_a_shim_and_no_ring_to_make(club, turn):
    _, found = talk(club, "ltm 50 on X, 0.1 too thin ring", turn)
    assert found.intent == "shim-calibration"


@pytest.mark.parametrize("turns", [("does it hurt focus",), ("does it hurt focus", "tape?")])
def test_a_danger_of_a_ring_stays_what_is_asked_of(club, turns):
    found = talk(club, "adapter wobbles on my Z", *turns)[-1]
    assert found.intent == "hazard"
    assert "Play comes from weak springs" in flat(found)


def test_a_zoom_sharp_at_one_end_and_soft_at_the_other_is_set_to_neither(club):
    found = talk(club, "c mount zoom 12.5-75 on mft", "sharp at tele but soft at wide")[-1]
    assert found.intent == "shim-calibration"
    assert "12.5 mm zoom" not in found.reading
    assert flat(found).startswith("a zoom that no longer holds focus")


def test_whether_a_ring_takes_the_lens_spoken_of_names_no_other_lens(club):
    assert "50 mm LTM lens" in talk(club, "50 LTM", "fits an M ring?")[-1].reading


ON_E = "50mm f3.5 ltm lens on an e mount camera"


@pytest.mark.parametrize(
    "turn", ["how do i know", "what could that be", "how would i check that before", "is that bad"]
)
@pytest.mark.parametrize("aside", ["is the glass radioactive", "the back of it sticks out far, is that safe"])
@pytest.mark.parametrize("before", ["what exposure indoors", "how close does it focus"])
def test_what_has_no_subject_after_a_danger_is_asked_of_that(club, before, aside, turn):
    *_, danger, found = talk(club, ON_E, before, aside, turn)
    assert found.intent == "hazard"
    assert danger.lines[1].text.partition(":")[0] in " ".join(line.text for line in club.ask(aside).lines)


def test_after_the_danger_what_was_told_stays(club):
    *_, ring = talk(club, ON_E, "the lens is collapsible, is it safe", "can i push it in", "which ring do i need")
    assert ring.question.lens.ids == ("ltm",)
    assert ring.intent == "chain"


def test_the_lens_that_pulls_out_is_the_one_of_that_length(club):
    *_, found = talk(club, ON_E, "i also have an enlarger lens 75 mm also 39 screw", "the 50 pulls out, it collapses")
    assert found.intent == "hazard"
    assert found.question.lens.focal_length_mm == 50.0
    assert found.question.values == ()


@pytest.mark.parametrize(
    "turn",
    ["both screw 42", "both are m42", "they are m42", "the 58 is m42 and the 37 is m42", "both have the screw 42"],
)
def test_a_mount_told_of_two_lenses_is_that_of_each(club, turn):
    *_, found = talk(club, "one lens says 1:2 f=58, another 2.8/37", turn, "my camera is an X mount one")
    lenses = [(one.ids[0], one.focal_length_mm, one.f_number) for one in found.question.lenses]
    assert lenses == [("m42", 58.0, 2.0), ("m42", 37.0, 2.8)]
    assert found.question.body.ids[0] == "x-mount"


@pytest.mark.parametrize("turn", ["the 50 is f mount the 135 is m42", "the 50 is f mount and the 135 is m42"])
def test_two_mounts_told_of_two_lenses_are_each_its_own(club, turn):
    *_, found = talk(club, "bought a 50 1.4 and a 135 3.5", turn, "i own an e mount camera")
    lenses = [(one.ids[0], one.focal_length_mm, one.f_number) for one in found.question.lenses]
    assert lenses == [("f-mount", 50.0, 1.4), ("m42", 135.0, 3.5)]


def test_another_lens_told_goes_on_the_same_body(club):
    _, found = talk(club, "100mm f2.8 projector lens on my mft", "i got another lens too, k bayonet 28mm 2.8")
    assert found.intent == "chain"
    assert found.question.lens.ids == ("k-mount",)
    assert found.question.body.ids == ("mft-mount",)


def test_everything_sharp_with_a_lens_is_no_length_of_tubes(club):
    *_, found = talk(
        club, "50 1.4 m42 and 135 3.5 m42 on e mount", "what if i add a 20 mm tube",
        "where do i focus so everything is sharp with the 50",
    )  # fmt: skip
    assert found.question.adapters[0].thickness_mm == (20.0, 20.0)


def test_close_ups_of_a_small_thing_are_asked_and_the_tube_that_fills_the_picture_with_it(club):
    _, can, tube = talk(
        club, "58mm f2 m42 on x mount", "ok. can i do close ups of bugs with the 58",
        "what tube do i need so a bee fills the picture",
    )  # fmt: skip
    assert (can.intent, tube.intent) == ("macro-distance", "macro-distance")


def test_how_far_away_one_stands_for_a_portrait_is_told(club):
    _, found = talk(club, "100mm f2.8 m42 on my mft", "how far away do i stand for a head and shoulders")
    assert found.intent == "macro-distance"
    assert "there: sharp at 4." in flat(found)


def test_an_exposure_without_an_f_number_is_a_shutter_for_each_and_no_filter(club):
    _, found = talk(club, "75mm enlarger lens 39 screw on e mount", "what exposure do i use then, its indoors")
    assert flat(found).startswith("By the f-number: f/1.4 1/65 to 1/16 s")
    assert "ND" not in flat(found)


@pytest.mark.parametrize("turn", ["what can i do", "can i still use it"])
def test_what_is_done_about_blades_that_do_not_close_is_asked_of_them_and_no_ring(club, turn):
    _, _, found, ring = talk(
        club, "55mm 1.8 m42 on mft", "the aperture ring does nothing on the 55", turn, "which ring do i need"
    )
    assert found.intent == "why"
    assert "pin at the rear is pressed" in flat(found)
    assert ring.intent == "chain"


def test_what_else_is_needed_is_asked_of_the_same_body(club):
    *_, found = talk(club, "enlarger lens 50mm 2.8 on x mount", "what else do i need")
    assert found.question.body.ids[0] == "x-mount"
