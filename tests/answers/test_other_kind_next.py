"""Turns that ask another kind of question of the same gear, in few words: what they ask, and what is kept."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk

THREE = "om 50 1.8, k 28 and m42 135 to go on a Z, what do i buy"


def mounts(answer):
    return [lens.id for lens in answer.question.lenses]


def last(club, *turns):
    return talk(club, *turns)[-1]


@pytest.mark.parametrize(
    "turn",
    ["without the k", "without the k one", "not the 28 then", "sold the 28", "the k is gone", "drop k", "minus the 28"],
)
def test_the_lens_that_goes_from_a_plan_is_left_out_of_it(club, turn):
    assert mounts(last(club, THREE, turn)) == ["om-mount", "m42"]


def test_the_lens_that_goes_is_left_out_of_any_question(club):
    assert mounts(last(club, "om 50 and k 28 on Z, do they reach infinity", "without the k one")) == ["om-mount"]


@pytest.mark.parametrize("turn", ["hub with M instead, downside", "hub over M, drawbacks?", "or a hub of M, worth it"])
def test_the_mount_behind_a_hub_is_that_of_the_hub(club, turn):
    found = last(club, THREE, turn)
    assert mounts(found) == ["om-mount", "k-mount", "m42"]
    assert [piece.piece for piece in found.question.adapters] == ["hub"]


@pytest.mark.parametrize(
    "turn", ["in crop mode what does it frame like", "crop mode, equivalent?", "with crop mode, field of view"]
)
def test_the_crop_mode_of_a_full_frame_body_is_the_usual_smaller_frame(club, turn):
    assert "frames like 137 mm" in flat(last(club, "90mm f2 om on E full frame, nd in sun at 1/50", turn))


def test_so_does_a_crop_mode_told_at_once(club):
    assert "frames like 53 mm" in flat(last(club, "35mm om on E full frame in crop mode, equivalent"))


@pytest.mark.parametrize(
    "turn", ["if i shim it 0.5, still infinity?", "0.5 under it, infinity?", "with a 0.5 washer, infinity?"]
)
def test_so_much_put_under_a_lens_is_so_much_too_far(club, turn):
    found = last(club, "25mm f1.4 c on mft, does it cover", turn)
    assert "stops at 1.3 m" in flat(found)


@pytest.mark.parametrize("opening", ["nd at 1/50 sun", "is it safe", "equivalent?", "ibis number", "does it cover"])
def test_an_error_of_the_seat_told_after_anything_asks_of_the_seat(club, opening):
    found = last(club, f"28 f2.8 md on mft {opening}", "say it sits 0.5 mm too far out")
    assert found.intent == "focus-verdict"
    assert "stops at 1.62 m" in flat(found)


def test_an_error_told_behind_a_tube_is_added_to_it(club):
    near, deep = talk(club, "28 f2.8 md on mft with 1mm tube how close", "it sits .5 too close", "how deep")[1:]
    assert "0.5 mm of tube" in flat(near)
    assert "sharp at 1.62 m" in flat(near)
    assert "0.5 mm of extension" in flat(deep)


def test_a_stop_beside_a_distance_is_no_second_lens(club):
    found = last(club, "28 f2.8 md on mft dof at 2m f4")
    assert len(found.question.lenses) == 1
    assert found.question.f_number == 4


@pytest.mark.parametrize(
    ("turn", "intent"),
    [
        ("infinity with a 38.5 ring", "focus-verdict"),
        ("and with a 2x tc, equivalent", "crop-equivalent"),
        ("with a 25mm tube near limit", "macro-distance"),
        ("ok with a collar then", "hazard"),
    ],
)
def test_a_piece_named_after_a_danger_is_a_remedy_only_where_nothing_else_is_asked(club, turn, intent):
    assert last(club, "400mm f6.3 t2 lens of 2.8kg hanging on a Z body ok", turn).intent == intent


LIT = "25 f0.95 c mount on mft 1/50 full sun iso 200 what nd"


@pytest.mark.parametrize(
    ("between", "turn", "stops"),
    [
        ("which ring seats it", "nd at f2.8", "7.4 stops"),
        ("looks like what", "now the nd at 1/100", "9.5 stops"),
        ("why", "and in open shade, nd?", "6.5 to 7.5 stops"),
        ("dof at 2m", "back to the nd: iso 400", "11.5 stops"),
    ],
)
def test_an_exposure_told_holds_past_other_questions(club, between, turn, stops):
    assert f"{stops} of ND" in flat(last(club, LIT, between, turn))


def test_light_lost_by_a_tube_asks_of_no_scene(club):
    assert "0.2 stops lost" in flat(last(club, LIT, "2mm spacer how close", "light lost?"))


def test_another_iso_after_a_filter_asks_of_the_filter_still(club):
    found = last(club, "16mm 1.4 c mount on e aps-c, does it fill it", "sun, 1/50, iso 100, how much nd", "and iso 400")
    assert "10.4 stops of ND" in flat(found)


def test_a_scene_in_a_talk_tells_the_stop_and_the_filter_wide_open(club):
    found = flat(last(club, "135 3.5 m42 on E, what do i put in the stabiliser", "noon, 1/500 iso 100"))
    assert "f/8.1" in found
    assert "2.4 stops of ND" in found


@pytest.mark.parametrize(
    ("opening", "reason"),
    [
        ("28 2.8 md on mft equivalent", "takes only the middle"),
        ("35 1.4 fd on E full frame dof at 1.5 m", "square of the focal length"),
        (LIT, "doubles the light"),
        ("md 45 f2 on an L body doesnt fire", "sees no lens"),
        ("135 3.5 m42 on E, what do i put in the stabiliser", "true focal length"),
    ],
)
@pytest.mark.parametrize("turn", ["why", "why is that"])
def test_why_after_what_is_no_matter_of_the_seat_asks_of_that(club, opening, reason, turn):
    assert reason in flat(last(club, opening, turn))


def test_why_not_a_body_after_a_list_of_those_that_fit_is_told_by_the_registers(club):
    found = flat(last(club, "what bodies take a FD lens and keep infinity", "why not EF"))
    assert "42 mm" in found
    assert "44 mm" in found


@pytest.mark.parametrize(
    ("opening", "turn", "intent"),
    [
        ("28 2.8 md on mft equivalent", "stays sharp at the horizon?", "focus-verdict"),
        ("35 1.4 fd on E full frame dof at 1.5 m", "does infinity come", "focus-verdict"),
        ("12.5 f1.9 c on mft hyperfocal at f4", "where do i set the ring for that", "depth-of-field"),
        ("what does a T2 ring mean", "how do i see if mine is one", "identify-mount"),
        ("what does a T2 ring mean", "if i force it in m42?", "look-alike"),
        ("what is the register of om", "longer than K?", "look-alike"),
        ("55 1.8 m42 with a .71 reducer on X what does it equal", "what do they go for", "buy-plan"),
    ],
)
def test_a_few_words_ask_another_kind_of_question(club, opening, turn, intent):
    assert last(club, opening, turn).intent == intent


@pytest.mark.parametrize("turn", ["35mm equiv", "looks like a what on ff", "frames like what on full frame"])
def test_what_a_lens_is_like_on_full_frame_names_no_other_lens_or_body(club, turn):
    assert "25 mm on Four Thirds frames like 50 mm" in flat(last(club, "25 f1.4 c on mft hyperfocal at f4", turn))


def test_a_hole_for_a_stop_is_that_of_the_lens_spoken_of(club):
    found = flat(
        last(club, "90mm f2 fixed projector lens on E full frame, 24p, iso 400, open shade, nd?", "hole for f8")
    )
    assert "11.2 mm for f/8" in found


def test_a_size_told_after_the_light_of_a_tube_asks_of_the_light_there(club):
    found = flat(
        last(club, "105 2.5 f mount with a 27mm tube on Z, how close", "light lost by the tube?", "and at 1:1")
    )
    assert "2.0 stops of light are lost" in found


def test_a_letter_behind_and_a_is_the_mount_of_the_lens_behind_it(club):
    assert mounts(last(club, "an om 50 and a k 28 on e")) == ["om-mount", "k-mount"]


@pytest.mark.parametrize(
    ("turn", "told"),
    [
        ("12mm of it out, how near", "0.24x"),
        ("light loss at 20mm", "1.0 stop lost"),
        ("at 15 out how deep at f8", "15 mm"),
    ],
)
def test_so_much_of_a_helicoid_of_no_told_length_is_drawn_out(club, turn, told):
    assert told in flat(last(club, "helicoid adapter or tubes for a 50 1.7 md on z", turn))


@pytest.mark.parametrize(
    ("turn", "body"), [("stabilisation figure on the second", "e-mount"), ("equivalent on the first", "mft-mount")]
)
def test_the_one_of_two_bodies_set_apart_is_told_by_its_number(club, turn, body):
    found = last(club, "25mm c lens: mft or e aps-c body, which is better", turn)
    assert [one.id for one in found.question.bodies] == [body]


@pytest.mark.parametrize(
    ("opening", "harm"),
    [
        ("is a 16mm f1.8 c lens that sticks out 9mm behind its flange safe on mft", "reach past the shutter"),
        ("400mm f6.3 t2 lens of 2.8kg hanging on a Z body ok", "bend mounts"),
    ],
)
def test_why_after_a_danger_tells_what_it_harms(club, opening, harm):
    assert harm in flat(last(club, opening, "why does that matter"))


@pytest.mark.parametrize(
    ("turn", "intent"),
    [
        ("take the tube off, equiv", "crop-equivalent"),
        ("tube off, dof at 2m f4", "depth-of-field"),
        ("lose the tube, infinity?", "focus-verdict"),
    ],
)
def test_what_is_asked_behind_a_piece_taken_off_is_asked_without_it(club, turn, intent):
    found = last(club, "28 2 exakta with a 10mm tube on mft how close", turn)
    assert found.intent == intent
    assert not found.question.adapters


@pytest.mark.parametrize("opening", ["hyperfocal at f11", "cover?", "is it safe", "ibis number", "equivalent"])
@pytest.mark.parametrize("turn", ["adapter?", "and the ring"])
def test_the_bare_word_for_a_ring_asks_for_that_of_the_pair(club, opening, turn):
    found = last(club, f"24 2.8 md on E full frame, {opening}", turn)
    assert found.intent == "chain"
    assert "seat 25.5 mm" in flat(found)


def test_a_stop_and_a_distance_after_a_danger_are_no_other_lens(club):
    found = last(club, "is it ok to hang 1.2kg of 300 f4 p6 on a Z", "f4 at 30m, zone")
    assert found.intent == "depth-of-field"
    assert mounts(found) == ["p6-mount"]


@pytest.mark.parametrize(
    ("text", "lens", "body"),
    [
        ("85 f2 om on Z, what mode do i shoot", "om-mount", "z-mount"),
        ("85 2 k on E equiv", "k-mount", "e-mount"),
    ],
)
def test_letters_beside_a_comma_or_a_bare_stop_are_mounts(club, text, lens, body):
    found = last(club, text)
    assert mounts(found) == [lens]
    assert [one.id for one in found.question.bodies] == [body]


def test_a_bare_stop_before_the_kind_of_a_lens_is_no_second_lens(club):
    (lens,) = last(club, "where would a T2 500 8 mirror lens fit").question.lenses
    assert (lens.focal_length_mm, lens.f_number) == (500, 8)


@pytest.mark.parametrize("turn", ["infinity with that on?", "can it focus far with that on"])
def test_a_close_up_lens_that_is_worn_reaches_no_infinity(club, turn):
    found = last(club, "+3 closeup on a 70 4 m42 on E: how close", turn)
    assert flat(found).startswith("No: with the +3 close-up lens on, nothing farther than 33 cm")
    assert not found.chains


@pytest.mark.parametrize("turn", ["ok and with iso 100 instead", "back to the filter: iso 100"])
def test_one_setting_of_an_exposure_told_again_asks_of_it(club, turn):
    found = last(club, "100 2.8 sr on E full frame, video 25p, iso 800, sun: density?", "ring please", turn)
    assert "6.4 stops of ND" in flat(found)


def test_a_filter_named_after_something_else_is_that_of_the_exposure_told(club):
    found = last(
        club, "100 2.8 sr on E full frame, video 25p, iso 800, sun: density?", "at 2m how thin", "filter at f5.6"
    )
    assert "7.4 stops of ND" in flat(found)


def test_the_focal_length_of_the_lens_is_no_tube(club):
    found = last(club, "135 3.5 om and 25mm of tubes on mft, how near", "is 135 like 270 there")
    assert [piece.thickness_mm for piece in found.question.adapters] in ([], [(25, 25)])


def test_a_lens_that_sits_too_deep_is_too_close(club):
    found = last(club, "16 2.8 sr on E aps-c hyperfocal at f5.6", "lens is 0.1 too deep")
    assert "0.1 mm too close" in flat(found)


def test_a_symptom_after_a_setting_is_not_answered_as_why_it_is_set(club):
    found = flat(last(club, "E body won't take pictures with my 58 1.4 sr", "near things sharp, distance not"))
    assert "sees no lens" not in found


def test_the_focal_length_before_a_t_stop_is_that_of_the_lens(club):
    found = last(club, "pl 35 t2.1 made for super 35 on L full frame: fills it?", "s35 mode, angle of view")
    assert "35 mm on Super 35 frames like 49 mm" in flat(found)


def test_a_converter_told_by_its_factor_after_the_stabiliser_changes_its_number(club):
    found = last(club, "58 1.4 sr on E, stabiliser number", "and on a 1.4x")
    assert "enter 81.2 mm" in flat(found)


@pytest.mark.parametrize("text", ["on E a 50 1.4 om which ring", "for E a 35 2 om, ring?", "on E a 50mm f2 om cover?"])
def test_a_body_named_before_its_lens_is_the_body(club, text):
    found = last(club, text)
    assert mounts(found) == ["om-mount"]
    assert [one.id for one in found.question.bodies] == ["e-mount"]


def test_the_mount_defined_is_that_of_the_lens_put_on_a_body_named_before_it(club):
    ring, error = talk(club, "explain flange distance of SR mount", "so on RF a 50 1.4 needs", "23.6, wide open, end?")[
        1:
    ]
    assert mounts(ring) == ["sr-mount"]
    assert "0.1 mm too far" in flat(error)


@pytest.mark.parametrize(
    ("turn", "intent"), [("drop it. which ring at all", "chain"), ("take it off, equivalent?", "crop-equivalent")]
)
def test_it_taken_off_is_the_one_piece_that_was_told(club, turn, intent):
    found = last(club, "stabiliser figure for m42 35 3.5 on L full frame", "with 1.4 tc", turn)
    assert found.intent == intent
    assert "teleconverter" in found.reading
    assert "without the teleconverter" in found.reading


def test_a_ring_named_with_the_tube_off_is_no_tube(club):
    found = last(club, "sr 50 1.7 with 20mm tubes on X how near", "no tube: infinity with 25.7")
    assert found.intent == "focus-verdict"
    assert "0.1 mm too close" in flat(found)


def test_deep_at_a_bare_stop_is_a_depth_of_field(club):
    found = last(club, "85 1.4 cy on mft dof at 2m", "deep at 4")
    assert "85 mm f/4 at 2 m" in flat(found)


def test_a_speed_told_bare_among_settings_is_an_iso_where_the_stop_is_known(club):
    found = last(club, "c lens 25 f0.95 on mft safe?", "what nd, 25p, 200, sun")
    assert "10.5 stops of ND" in flat(found)


@pytest.mark.parametrize("opening", ["field of view", "dof 2m f4", "nd sun 1/50", "ibis"])
@pytest.mark.parametrize("turn", ["mine says 26.9", "26.9 is what i got"])
def test_a_number_as_long_as_the_ring_must_be_is_that_of_the_ring(club, opening, turn):
    found = last(club, f"om 85 2 on mft {opening}", turn)
    assert found.intent == "focus-verdict"
    assert "0.15 mm too far" in flat(found)


def test_a_distance_in_metres_is_no_ring(club):
    found = last(club, "om 85 2 on mft dof 2m f4", "at 26.6 m")
    assert found.question.distance_mm == 26600


@pytest.mark.parametrize("turn", ["if i switch the body to crop", "in crop mode"])
def test_a_mode_that_is_supposed_asks_the_same_of_it(club, turn):
    assert "frames like 76 mm" in flat(last(club, "50 1.8 om on E full frame equiv", turn))


def test_whether_to_crop_is_no_mode(club):
    assert last(club, "50 1.8 om on E full frame cover?", "do i need to crop").intent == "coverage"


def test_the_view_on_a_frame_after_an_exposure_is_no_exposure(club):
    found = last(club, "m42 58 2 on L full frame, sunny, 1/60, iso 100, nd?", "view in aps-c")
    assert "58 mm on APS-C frames like 89 mm" in flat(found)


@pytest.mark.parametrize(
    "turn",
    ["light then", "how much light do i lose there", "what does that cost in light", "light lost at that size"],
)
def test_a_size_that_is_wanted_takes_the_place_of_the_tube_told_before(club, turn):
    opening = "60mm f2.8 C/Y on an L body with 14 mm of tube, how near does it get"
    assert "1.2 stops" in flat(last(club, opening, "how much tube for half life size", turn))


@pytest.mark.parametrize(
    "turn",
    [
        "lights the whole chip?", "does it light my sensor", "lights all of the frame?", "does it light the corners",
        "and does it light the entire sensor",
    ],
)  # fmt: skip
def test_a_lens_that_lights_the_chip_asks_of_no_exposure(club, turn):
    assert last(club, "30mm f1.4 c mount on mft, 1/60, iso 160, midday sun", turn).intent == "coverage"


@pytest.mark.parametrize("turn", ["body asks for a lens", "it asks me for a lens", "camera wants a lens on it"])
def test_a_body_that_asks_for_a_lens_is_to_release_without(club, turn):
    assert "release without" in flat(last(club, "qbm 35mm 2.8 RF aps-c equivalent", turn)).casefold()


@pytest.mark.parametrize("turn", ["blades dont close on it", "the iris wont close", "aperture blades stay open"])
@pytest.mark.parametrize(
    "opening", ["1.2 m at f4, how deep", "equivalent on aps-c", "nd at 1/50 in sun", "to type in ibis"]
)
def test_an_iris_that_does_nothing_is_explained_after_anything(club, opening, turn):
    assert "pin or lever" in flat(last(club, f"exakta 58 f2 on E full frame, {opening}", turn))


@pytest.mark.parametrize(
    "turn", ["no way to change the f stop", "there is no way to set the aperture", "no chance to change the stop"]
)
def test_no_way_to_do_a_thing_is_no_doubt_at_the_answer(club, turn):
    found = flat(last(club, "contarex 50 on L body, it says no lens and wont shoot", turn))
    assert "cannot be worked here" in found


@pytest.mark.parametrize(
    "turn",
    [
        "on crop what is it",
        "what is it on crop",
        "in crop mode its like what",
        "equivalent on crop",
        "cropped to aps-c it equals?",
    ],
)
def test_a_view_on_crop_is_that_of_the_smaller_frame(club, turn):
    assert "frames like 89 mm" in flat(last(club, "exakta 58 f2 on E full frame, 1.2 m at f4, how deep", turn))


@pytest.mark.parametrize("turn", ["aps-c mode, equals?", "in crop mode it equals what", "equivalent in crop"])
def test_a_view_in_a_mode_asked_after_the_stabiliser_is_a_view(club, turn):
    found = last(club, "miranda 85 1.8 adapted on a z, what do i key in for the stabiliser", turn)
    assert "frames like 130 mm" in flat(found)


@pytest.mark.parametrize(
    "turn", ["what would do the same on mft", "which lens gives the same on mft", "on mft what does the same"]
)
def test_what_does_the_same_on_another_frame_is_a_lens_for_it(club, turn):
    assert "143" in flat(last(club, "105 f2.5 F lens on a CX body, what is it like in full frame", turn))


@pytest.mark.parametrize(
    ("turn", "intent"),
    [
        ("7mm tube, then?", "depth-of-field"), ("with 7 of tube how deep", "depth-of-field"),
        ("how deep with a 7 mm tube", "depth-of-field"), ("and the depth with a 7mm tube on", "depth-of-field"),
    ],
)  # fmt: skip
def test_a_tube_told_after_a_depth_brings_what_is_sharp_near(club, turn, intent):
    found = last(club, "exakta 58 f2 on E full frame, 1.2 m at f4, how deep", turn)
    assert found.intent == intent
    assert "18 mm deep at f/4" in flat(found)


@pytest.mark.parametrize(
    "turn", ["is 1.2 m to the glass or the chip", "from the sensor or from the front?", "counted from where"]
)
def test_from_where_a_distance_counts_is_told_with_it(club, turn):
    assert "from the sensor" in flat(last(club, "exakta 58 f2 on E full frame, 1.2 m at f4, how deep", turn))


@pytest.mark.parametrize("turn", ["what would happen to the mirror", "would the mirror hit it", "mirror safe?"])
def test_the_mirror_asked_about_after_a_way_is_a_danger(club, turn):
    assert last(club, "exakta 58 f2, can i take it on EF", turn).intent == "hazard"


@pytest.mark.parametrize(
    "turn", ["0.2 too thin what do i do", "its 0.2 too thin, how do i fix it", "ring came 0.2 too thin, remedy?"]
)
def test_an_error_and_its_remedy_in_one_breath_is_a_shim(club, turn):
    found = last(club, "ring from om to xcd, what thickness do i cut", turn)
    assert found.intent == "shim-calibration"
    assert "add a shim of 0.2 mm" in flat(found)
