"""What a turn means by those before it: what it takes back, puts in a thing's place, or asks of the last answer."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


def test_a_length_behind_a_body_is_that_of_the_lens(club):
    _, found = talk(club, "PK on EF", "ok on an FF body, 28mm")
    assert found.question.lens.focal_length_mm == 28
    assert found.question.body.format == "35mm-full-frame"


def test_without_it_takes_back_what_was_told_last(club):
    _, cropped, found = talk(
        club, "25mm C-mount lens on E aps-c, does it cover", "and with the 2x tele mode", "without it"
    )
    assert cropped.question.said("crop") == "2"
    assert found.question.said("crop") is None


def test_what_was_put_on_is_taken_off_again(club):
    *_, found = talk(club, "35 1.4 and a 0.71 on X, what is it", "in ff terms", "and take it off again, equiv")
    assert not found.question.adapters


def test_the_reverse_is_lens_and_body_changed_about(club):
    _, found = talk(club, "C on CS", "and the reverse?")
    assert (found.question.lens.ids[0], found.question.body.ids[0]) == ("cs", "c")


def test_a_ring_as_long_as_it_must_be_is_no_tube(club):
    (found,) = talk(club, "exakta 100mm on NX, how close, the ring is 19.31")
    assert "mm of tube" not in flat(found)


def test_another_length_that_would_fix_it_is_that_of_the_ring(club):
    *_, found = talk(club, "exakta 100mm on NX, how close, the ring is 19.31", "would 18.9 fix it")
    assert "0.3 mm too close" in flat(found)


def test_a_measured_ring_is_off_by_what_it_lacks_and_not_by_its_length(club):
    *_, found = talk(club, "i measured my M42 to E ring, 27.31", "does that go past infinity")
    assert "sits 0.15 mm too close" in flat(found)


def test_foil_put_in_makes_the_ring_of_before_thicker(club):
    *_, found = talk(club, "i measured my M42 to E ring, 27.31", "and if i put 0.1 of foil in")
    assert "0.05 mm too close" in flat(found)


def test_a_ring_instead_is_told_by_being_as_long(club):
    *_, once, again = talk(club, "D 6.5mm on Q", "how far off if i use a 3.5mm one instead", "and 3mm")
    assert "0.41 mm too far out" in flat(once)
    assert again.question.lens.focal_length_mm == 6.5
    assert again.question.adapters[0].thickness_mm == (3, 3)


def test_a_lens_that_stops_far_away_sits_so_much_too_far_out(club):
    *_, ends, saved = talk(club, "M42 55, X mount body", "mine stops at 40m", "at which stop is it gone")
    assert "0.076 mm too far out" in flat(ends)
    assert "infinity from f/3.9" in flat(saved)


def test_a_mark_of_infinity_is_one_however_the_talk_goes_on(club):
    *_, turned, other = talk(
        club, "12.5mm C, sharp at infinity when the scale says 1.5m", "how far to unscrew instead",
        "where would my 50 read on the same ring",
    )  # fmt: skip
    assert "0.133 turn" in flat(turned)
    assert "24 m mark" in flat(other)


def test_a_sheet_is_what_layers_are_counted_of(club):
    *_, found = talk(club, "50mm on M42 to E, infinity at the 20 m mark", "my sheet is 0.05 thick")
    assert found.question.said("layer") == "0.05 mm"


def test_the_two_tubes_of_before_stand_together(club):
    *_, found = talk(club, "50 M42 on E with a 10mm tube, how close", "20 instead", "both")
    assert [piece.thickness_mm for piece in found.question.adapters] == [(10, 10), (20, 20)]


@pytest.mark.parametrize(
    ("turn", "filters"), [("swap the nd16 for an nd4", "ND4"), ("and no filter", None), ("nd8 on top", "ND16, ND8")]
)
def test_filters_change_as_they_are_told(club, turn, filters):
    _, found = talk(club, "exposure: f2.8, nd16, 1/50, iso 100 sunny?", turn)
    assert found.question.said("factor") == filters


def test_stops_at_hand_count_for_the_shutter(club):
    *_, found = talk(club, "need nd for f2 1/50 iso 400 sunny", "only have 6 stop", "or what shutter")
    assert "1/512 s" in flat(found)


def test_a_lens_left_out_of_several_is_gone_from_the_plan(club):
    *_, found = talk(club, "OM 50, MD 35 and an M42 135. body zorbex E", "cheapest set of adapters?", "skip the OM")
    assert [lens.ids[0] for lens in found.question.lenses] == ["sr-mount", "m42"]


def test_a_body_that_comes_later_is_planned_for_too(club):
    *_, found = talk(club, "OM 50 and MD 35 on E, what to buy", "and i might buy a Z later")
    assert [body.ids[0] for body in found.question.bodies] == ["e-mount", "z-mount"]


def test_a_piece_is_put_to_the_second_of_those_set_side_by_side(club):
    *_, found = talk(club, "compare QBM and PK on E", "what about helicoids for the second")
    assert [lens.ids[0] for lens in found.question.lenses] == ["k-mount"]


def test_a_zoom_is_set_to_one_of_its_lengths(club):
    *_, zoomed, long = talk(club, "c mount zoom 12.5-75 on mft", "equivalent", "at 50?", "and the long end")
    assert zoomed.question.lens.focal_length_mm == 50
    assert long.question.lens.focal_length_mm == 75


def test_the_view_told_before_is_no_other_lens(club):
    *_, found = talk(club, "50mm exakta lens, X body. ring?", "equiv on that body?", "so stabiliser gets 77")
    assert found.question.lens.focal_length_mm == 50


def test_a_piece_as_long_as_what_lacks_is_added(club):
    *_, found = talk(
        club, "M39 lens from a leaf shutter rangefinder, register 44. i have an LTM-E ring, ok?", "how do i fix it",
        "a 15 is what they sell. infinity?",
    )  # fmt: skip
    assert "0.2 mm too close" in flat(found)


def test_the_number_named_is_told_of_the_answer_before(club):
    _, seat = talk(club, "QBM 50 on E", "whats the seat")
    assert flat(seat).startswith("Seat: 26.46 mm.")
    *_, crop = talk(
        club, "1 inch tv lens 16mm on X, corners?", "i measured it, 17mm. biggest 16:9", "what crop factor is that"
    )
    assert flat(crop).startswith("Crop factor: 2.55")


def test_who_works_the_iris_comes_first_and_why_not_is_of_it(club):
    _, asked, why = talk(club, "EF 50 on MFT with a dumb ring", "can i change the aperture", "why not")
    assert flat(asked).startswith("No, not with this: the iris is stuck")
    assert "driven electrically" in flat(why)


def test_another_pitch_of_the_same_width_is_another_mount(club):
    *_, found = talk(club, "my lens has a 42mm thread, 0.75 pitch", "body is mft, which ring", "actually its 1mm pitch")
    assert flat(found).startswith("An M42 lens")


def test_which_lens_to_buy_is_not_answered_by_the_lens_spoken_of(club):
    *_, found = talk(club, "50mm f1.4 c mount on mft, does it cover", "Which lens should I buy for weddings")
    assert found.intent == "out-of-scope"


def test_no_adapter_with_glass_leaves_the_plain_ones(club):
    *_, found = talk(club, "C/Y 85 on L", "no adapter with glass please")
    assert "reaches infinity" in flat(found)


def test_a_lens_described_by_its_mount_is_not_named_by_it(club):
    *_, found = talk(club, "C on CS", "my C lens is a 12.5")
    assert found.question.lens.focal_length_mm == 12.5


def test_a_number_put_right_is_no_other_lens(club):
    *_, found = talk(club, "how much shim for infinity at 10m on a 50", "its 35 not 50")
    assert "Infinity at the 10 m mark of a 35 mm lens: it sits 0.12 mm too close" in flat(found)


def test_a_close_up_lens_on_top_leaves_the_tube_where_it_is(club):
    *_, found = talk(club, "55 F on E with 27.5 tube", "+4 dioptre on top")
    assert [piece.piece for piece in found.question.adapters] == ["extension-tube", "close-up-lens"]


def test_how_to_get_infinity_asks_what_would_put_the_chain_right(club):
    *_, found = talk(club, "is my M39 zenit screw lens ok on a LTM-M ring on E", "how do i get infinity")
    assert "11.4 mm too short" in flat(found)[:80]


def test_the_iso_that_goes_with_the_filters_at_hand_is_told(club):
    *_, found = talk(club, "f2, 1/50, iso 800, cloudy: nd", "only got ND64", "so iso?")
    assert flat(found).startswith("ISO: 156")


def test_the_other_lens_keeps_the_stop_that_was_set(club):
    *_, found = talk(club, "dof 85 1.8 at 3m ff", "f2.8", "what about 50mm")
    assert "50 mm f/2.8 at 3 m" in flat(found)


def test_a_bellows_is_drawn_to_the_number_told(club):
    *_, found = talk(club, "bellows 40 to 140, 100mm lens, full frame", "mag range?", "at 100")
    assert "100 mm of tube: sharp at 40 cm from the sensor, 1x" in flat(found)


def test_an_extender_flipped_in_is_no_magnification(club):
    *_, found = talk(club, "B4 zoom 8.5-128 on MFT", "does it cover", "and flipped 2x in")
    assert found.question.adapters[0].factor == 2
    assert "covers Four Thirds" in flat(found)


def test_another_length_is_another_lens_whatever_view_was_told(club):
    *_, found = talk(club, "does a 25mm c mount cover m43", "and a 50mm")
    assert found.question.lens.focal_length_mm == 50


def test_a_lighter_sky_changes_the_scene_and_is_no_filter(club):
    *_, found = talk(club, "nd for 1/60 f2.8 iso 640 overcast", "two stops brighter sky")
    assert "7.8 stops of ND to hold back" in flat(found)
    assert found.question.said("stops") is None


def test_the_target_to_check_on_is_told_first_where_it_is_asked(club):
    *_, found = talk(club, "shim: 24mm goes past inf at 3m mark", "then check at what distance")
    assert flat(found).startswith("Something far beyond 3000 focal lengths")
    assert "beyond 72 m" in flat(found)


def test_a_light_lens_is_carried_by_a_thin_ring(club):
    heavy, light = talk(club, "is my 2.8kg tele fine on a thin M42-E", "would the 400g one be")
    assert flat(heavy).startswith("Not by the camera alone.")
    assert flat(light).startswith("Yes: 400 g is within the 500 g or so")


def test_a_number_that_a_reply_begins_with_is_the_distance_asked_for(club):
    *_, ring = talk(
        club, "found a 39mm screw lens in a box no name. what is it", "48, and it has no focus ring",
        "how long a stack for E",
    )  # fmt: skip
    assert ring.question.said("flange_to_image") == "48 mm"
    assert "30 mm" in flat(ring)


def test_what_was_measured_where_a_circle_is_asked_about_is_the_circle(club):
    *_, found = talk(club, "25mm c lens, E body aps-c. covered?", "i measured 20mm")
    assert found.question.said("circle") == "20 mm"
    assert found.question.said("thread") is None


def test_the_view_is_not_what_the_stabiliser_is_told(club):
    *_, found = talk(club, "ibis on my X body asks focal length, its a 58", "not 87?")
    assert flat(found).startswith("No, not 87")
    assert "enter 58 mm" in flat(found)


def test_the_rings_of_one_body_of_a_plan(club):
    *_, found = talk(club, "M42 and C/Y lenses. bodies: L and X. adapters?", "thickness of the L ones")
    assert [body.ids[0] for body in found.question.bodies] == ["l-mount"]
    assert [lens.ids[0] for lens in found.question.lenses] == ["m42", "cy-mount"]


def test_glass_told_by_its_factor_is_no_magnification(club):
    *_, found = talk(club, "md 50 f1.7 on EF, plain 2mm ring", "there is one w/ glass in, 1.2x. what does that make it")
    assert "60 mm f/2.04" in flat(found)


def test_what_is_plainly_asked_beside_what_is_told_is_answered(club):
    *_, found = talk(club, "X body wont shoot", "ok. stabiliser asks a number, lens is 58")
    assert "enter 58 mm" in flat(found)


def test_what_only_changes_the_lens_asks_on_in_the_words_of_before(club):
    *_, found = talk(club, "how far can i shift a P6 80 on G 44x33", "and with a M645 80 instead")
    assert "oom to shift" in flat(found)


def test_a_tube_comes_to_the_helicoid_that_stands_there(club):
    *_, found = talk(club, "m42 35 on mft with 17-31 helicoid", "add the 7 tube")
    assert [piece.thickness_mm for piece in found.question.adapters] == [(17, 31), (7, 7)]


def test_a_variable_filter_is_reckoned_with_the_fixed_one_before_it(club):
    *_, found = talk(club, "f/1.2 25mm C mount, sun 1/50 iso 200. nd", "i have a 2-5 stop variable", "add an nd8")
    assert "with ND8, the variable one goes from 2 to 5 stops: 1.8 stops lack" in flat(found)


def test_only_so_much_of_the_tube_that_was_asked_for(club):
    *_, found = talk(club, "i want 1:2 on a 90mm LTM lens on MFT", "how much tube", "the magnification with only 20")
    assert found.question.lens.focal_length_mm == 90
    assert "0.22x" in flat(found)


def test_a_ring_that_was_lapped_is_as_long_as_it_is_now(club):
    *_, found = talk(club, "M42 ring came 27.6 for my E", "how much off", "ok lapped it, 27.48 now")
    assert "0.02 mm too far out" in flat(found)


def test_a_ring_for_a_body_gives_no_mount_to_a_lens_without_one(club):
    *_, found = talk(club, "unknown lens, 48.0 thread pitch .75", "60 to the image", "so which ring for EF")
    assert not found.question.lens.ids
    assert [body.ids[0] for body in found.question.bodies] == ["ef-mount"]
    assert "leaves 16 mm" in flat(found)
    assert "reaches infinity (certain)" not in flat(found)


def test_by_how_much_a_ring_is_off_stays_where_the_body_is_told_after_it(club):
    *_, found = talk(club, "om 50 1.8, will it reach infinity", "what if my ring is 0.1 too thin", "and on my mft")
    assert found.question.off_word == "too thin"
    assert all(piece.thickness_mm is None for piece in found.question.adapters)


def test_how_far_too_close_a_lens_sits_is_no_number_below_nought(club):
    (found,) = talk(club, "M42 lens held on Z with no ring")
    assert "29.46 mm too close to the sensor" in flat(found)
    assert "-29" not in flat(found)


def test_a_thread_told_in_a_talk_of_a_bayonet_lens_is_that_of_another(club):
    *_, ring = talk(club, "md lens on E", "another lens here, thread is 42mm, ten crests in 7.5", "so which ring for E")
    assert [lens.ids[0] for lens in ring.question.lenses] == ["t2"]
    assert "seat 37 mm" in flat(ring)


def test_a_tube_after_a_shim_is_no_ring_to_be_lapped(club):
    *_, close, stop = talk(
        club, "M42 50mm f1.8 on a z body with a 29.3 ring, infinity?", "how do I fix that",
        "and close up with a 20mm tube?", "what stop for 1 cm deep there",
    )  # fmt: skip
    assert close.intent == "macro-distance"
    assert "lap" not in flat(close)
    # N = t * m * m / (2 * c * (1 + m)), m = 20 / 50, c = diagonal / 1442
    wanted = 10 * 0.16 / (2 * 1.4 * 43.2666 / 1442)
    assert any(
        row.name == "f_number" and row.value.nominal == pytest.approx(wanted, rel=1e-3) for row in stop.quantities
    )


def test_double_that_size_goes_by_what_the_tubes_make_and_asks_on(club):
    _, found = talk(club, "50 and 25mm tube, how big", "and double that size")
    assert found.question.said("magnification") == "1"
    _, found = talk(club, "60mm at 1:1 how deep at f8", "and double that size")
    assert (found.intent, found.question.said("magnification")) == ("depth-of-field", "2")


def test_each_body_means_those_told_before(club):
    _, found = talk(club, "om lens on E, and on L", "M to each body")
    assert [body.ids[0] for body in found.question.bodies] == ["e-mount", "l-mount"]


def test_an_aperture_ring_that_does_nothing_is_no_reason_of_the_seat(club):
    _, found = talk(
        club, "i was given FD lenses and have an X camera, what do i need", "the aperture ring does nothing"
    )
    assert "the lever must be locked over" in flat(found)
    assert "register error" not in flat(found)


@pytest.mark.parametrize(
    ("told", "mount"),
    [
        ("i have one that says M39, off a reflex", "m39-zenit"),
        ("i have one that says OM", "om-mount"),
        ("one of them is a T2", "t2"),
    ],
)
def test_one_of_ones_own_lenses_goes_on_the_body_spoken_of(club, told, mount):
    _, found = talk(club, "which other old lenses may i try? the camera is E", told)
    assert (found.question.lens.ids[0], found.question.body.ids[0]) == (mount, "e-mount")
    assert found.chains


_PLAN = "OM, C/Y and R lenses, bodies E and L. how many adapters do i need"


@pytest.mark.parametrize(
    "said", ["what would the M way cost", "what if i go the M route", "and the M-mount way, price?"]
)
def test_a_way_named_by_a_mount_leads_through_it(club, said):
    _, found = talk(club, _PLAN, said)
    assert [lens.ids[0] for lens in found.question.lenses] == ["om-mount", "cy-mount", "r-mount-slr"]
    assert found.question.limits.using == ("m-mount",)


@pytest.mark.parametrize(
    ("said", "mount"),
    [("does infinity survive on the OM", "om-mount"), ("is infinity kept on the R", "r-mount-slr")],
)
def test_of_several_lenses_the_one_named_stays_on_their_bodies(club, said, mount):
    _, found = talk(club, _PLAN, said)
    assert [lens.ids[0] for lens in found.question.lenses] == [mount]
    assert [body.ids[0] for body in found.question.bodies] == ["e-mount", "l-mount"]


def test_on_a_body_said_to_be_one_it_is_no_lens_of_before(club):
    _, found = talk(club, "K and MD lenses, bodies X and Z, which rings", "what about on a K body")
    assert [body.ids[0] for body in found.question.bodies] == ["k-mount"]


@pytest.mark.parametrize(
    ("first", "said", "lens", "ring"),
    [
        ("500mm T2 mirror on a Z", "can i use my M42 ring instead, both 42", "T2", "M42"),
        ("T2 lens on E", "isnt my M42 ring the same", "T2", "M42"),
        ("50mm C on MFT, which ring", "is a CS ring the same", "C", "CS"),
        ("M39 SLR 50mm on X", "does my LTM ring work as well, same thread", "M39x1 SLR", "LTM"),
    ],
)
def test_a_ring_thought_the_same_is_set_against_the_lens_and_not_put_on_it(club, first, said, lens, ring):
    before, alike, after = talk(club, first, said, "and does it cover")
    assert flat(alike).startswith(f"No, {lens} and {ring} are not the same")
    assert after.question.lenses == before.question.lenses
    assert after.question.bodies == before.question.bodies
    assert not any(piece.front for piece in after.question.adapters)


@pytest.mark.parametrize(
    ("said", "factor"),
    [("would a 0.5x reducer fix that", 0.5), ("would a reducer help", None), ("a 2x extender?", 2.0)],
)
def test_glass_after_what_a_lens_lights_is_asked_for_its_circle(club, said, factor):
    _, found = talk(club, "16mm C lens on MFT, does it cover", said)
    assert found.intent == "coverage"
    assert f"with {factor or 0.71:g}x" in flat(found).partition(".\n")[0]


def test_an_error_carried_to_another_lens_is_the_one_that_is_left_in(club):
    *_, found = talk(
        club, "35mm shows infinity at the 5 m mark, how thick a shim", "and on my 100", "can i leave it like that"
    )
    assert "0.25 mm too short" in flat(found)


@pytest.mark.parametrize("said", ["would stopping down save it?", "if i stop down is it ok"])
def test_the_stop_that_cures_is_told_first(club, said):
    *_, found = talk(club, "24mm M42 on E with a 27.6 ring", said)
    assert flat(found).startswith("From f/7.1 on")


def test_what_a_shim_is_cut_from_is_asked_of_the_shim(club):
    *_, found = talk(club, "35mm shows infinity at the 5 m mark, how thick a shim", "what can I cut it from")
    assert found.intent == "shim-calibration"


@pytest.mark.parametrize(
    "asked",
    [
        "or just buy another, price?",
        "or buy a new one?",
        "how much for another",
        "cheaper to just replace it?",
        "better to buy another ring? cost?",
    ],
)
def test_another_ring_in_place_of_one_that_is_off_is_priced(club, asked):
    *_, found = talk(
        club, "what ring for fd on x body", "mine measures 24.6. 28mm lens", "how much do i take off then", asked
    )
    assert found.intent == "buy-plan"
    assert "FD to X ring with iris lever [10 to 25 dollars]" in flat(found)


@pytest.mark.parametrize(
    "asked", ["is a close-up lens better than that", "would a close-up lens be better", "would a helicoid be nicer"]
)
def test_what_is_better_than_that_is_set_against_the_piece_of_before(club, asked):
    *_, found = talk(club, "55mm lens and a 20mm tube, how close", "what tube for 1:1 then", asked)
    assert found.intent == "compare"
    assert "tube" in flat(found)


@pytest.mark.parametrize(
    "said",
    ["and if i leave the ring out?", "and if i leave the 5 out?", "what if i skip the 5 mm ring", "and without it?"],
)
def test_a_lens_without_its_ring_is_screwed_straight_in(club, said):
    *_, found = talk(club, "C mount 16mm lens on a CS body", said)
    assert "the lens sits 5 mm too close" in flat(found)


def test_the_ring_left_out_of_a_lens_drawn_closer_is_not_its_tube(club):
    *_, found = talk(
        club, "C mount 16mm lens on a CS body", "now i need closer, 2mm spacer on top", "and if i leave the 5 out?"
    )
    assert found.intent == "focus-verdict"
    assert "screwed straight in, the lens sits 5 mm deeper" in flat(found)


@pytest.mark.parametrize(
    "said",
    ["even though my sensor is crop?", "not the equivalent?", "so no crop factor in it?", "does the crop matter"],
)
def test_the_crop_asked_about_the_stabiliser_is_of_its_number(club, said):
    *_, found = talk(club, "what do i set for the stabiliser, 135mm m42 on E", said)
    assert found.intent == "gear-setting"
    assert "enter 135 mm" in flat(found)
    assert "change nothing of that" in flat(found)


def test_a_lens_told_by_the_frame_it_is_made_for_is_the_one_of_before(club):
    *_, found = talk(
        club, "28/2.8 with 0.71 reducer on mft", "corners ok with a full frame lens?", "stabiliser focal length?"
    )
    assert "enter 19.9 mm with 0.71x" in flat(found)


@pytest.mark.parametrize(
    "said", ["how much would that be", "how much is it", "whats the damage", "how much for that", "what will i pay"]
)
def test_the_price_of_what_was_told_is_told_first(club, said):
    *_, found = talk(club, "fd 85 on rf body", said)
    assert flat(found).startswith("Price: 12 to 30 dollars.")


@pytest.mark.parametrize(
    ("asked", "then", "sides"),
    [
        ("80mm p6 lens, does it go on E", "F too?", ("p6-mount", "f-mount")),
        ("p6 80/2.8, can i put it on Z", "K too?", ("p6-mount", "k-mount")),
        ("m42 50 on E, ok?", "K too?", ("k-mount", "e-mount")),
        ("m42 lenses, do they fit on E", "K too?", ("k-mount", "e-mount")),
    ],
)
def test_a_mount_after_what_a_lens_goes_on_is_that_of_a_body(club, asked, then, sides):
    *_, found = talk(club, asked, then)
    assert (found.question.lens.ids[0], found.question.body.ids[0]) == sides


@pytest.mark.parametrize(
    "said", ["would stopping down do instead?", "or would closing the iris do", "could i stop down instead of sanding"]
)
def test_stopping_down_in_place_of_sanding_is_asked_of_infinity(club, said):
    *_, found = talk(club, "m42 35mm on a Z, ring measures 29.60", "how much do i sand off", said)
    assert "infinity from f/7.1" in flat(found).partition(".\n")[0][:200]


@pytest.mark.parametrize("said", ["one ring for both then somehow?", "one adapter for both?"])
def test_one_ring_for_both_after_two_bodies_builds_on_the_one(club, said):
    *_, found = talk(club, "80mm p6 lens, does it go on E", "F too?", said)
    assert [body.ids[0] for body in found.question.bodies] == ["e-mount", "f-mount"]
    assert "then one F-mount to E-mount (28.5 mm)" in flat(found)


@pytest.mark.parametrize("said", ["is that harmful to anything", "is that dangerous", "will that hurt the sensor"])
def test_harm_asked_after_an_error_of_the_seat_is_what_comes_of_it(club, said):
    *_, found = talk(club, "35mm c lens reads 4m when the horizon is sharp", said)
    assert flat(found).startswith("Nothing is harmed, and infinity is there: only before its mark.")


@pytest.mark.parametrize("check", ["how do i check that", "how would i measure it", "how can i tell"])
@pytest.mark.parametrize(
    ("first", "told"),
    [
        ("rangefinder 15mm (LTM) with a long rear, safe on an E camera?", "Measure how far the rear reaches"),
        ("will the back of my 21mm M lens hit the shutter of an E body", "Measure how far the rear reaches"),
        ("is it dangerous to use an old flash trigger on the camera", "Measure the trigger voltage"),
        ("will a 25mm c lens fill the mft frame", "Four Thirds needs 21.64 mm"),
    ],
)
def test_how_to_make_sure_is_asked_of_what_was_told(club, first, told, check):
    answers = talk(club, first, check)
    assert answers[1].intent == answers[0].intent
    assert told in flat(answers[1])


@pytest.mark.parametrize("said", ["12 mm", "12 mm behind the flange it is", "it's 12 mm", "i measured 12"])
def test_a_length_after_a_rear_that_may_touch_is_how_far_it_reaches_and_stays(club, said):
    turns = talk(club, "can the rear of my 15mm ltm hit the shutter of an E body", "how do i check", said, "so safe?")
    for told in turns[2:]:
        assert "1.2 mm inside the flange of the body, 16.8 mm before the sensor" in flat(told)
    assert [lens.focal_length_mm for lens in turns[2].question.lenses] == [15]


def test_a_lens_that_is_sunk_into_the_body_has_no_seat_below_nought(club):
    last = talk(club, "16mm film c lens, deep rear, on mft, does it hit the shutter", "5 mm")[-1]
    assert "Sunk 1.72 mm into the body its rear stands 6.72 mm inside the flange" in flat(last)


@pytest.mark.parametrize(
    "said", ["whats the proper part between them", "which part joins them", "what ring connects both"]
)
@pytest.mark.parametrize(
    ("first", "pair", "ring"),
    [
        (["is M42 the same thread as T2"], ("t2", "m42"), 9.54),
        (["t2 ring jammed on my m42 tube, now what", "but they are both 42?!"], ("t2", "m42"), 9.54),
        (["om and md, same mount?"], ("om-mount", "sr-mount"), 2.5),
        (["is c mount the same as cs"], ("c", "cs"), 5.0),
        (["are K and M42 compatible"], ("m42", "k-mount"), 0.0),
    ],
)
def test_the_part_between_two_mounts_is_for_the_lens_that_leaves_it_room(club, first, pair, ring, said):
    last = talk(club, *first, said)[-1]
    assert (last.question.lenses[0].ids[0], last.question.bodies[0].ids[0]) == pair
    rows = [row.value.nominal for row in last.quantities if row.name == "ring_thickness_mm"]
    assert rows[0] == pytest.approx(ring, abs=0.02)


@pytest.mark.parametrize("said", ["can i see that with just a ruler", "how do i tell them apart with a ruler"])
def test_two_threads_are_told_apart_by_ten_crests(club, said):
    told = flat(talk(club, "is M42 the same thread as T2", said)[-1])
    assert "ten" in told
    assert "10 mm" in told.partition("7.5 mm")[0]
    assert "7.5 mm" in told


@pytest.mark.parametrize(
    "said",
    ["which of the two bodies is better", "which of the two cameras is better for it", "which camera suits it more"],
)
@pytest.mark.parametrize(
    ("first", "bodies"),
    [
        (("om 50 on E, ring?", "and on X"), ["e-mount", "x-mount"]),
        (("85 LTM on a Z, which ring", "same lens for my m body"), ["z-mount", "m-mount"]),
    ],
)
def test_two_bodies_told_one_after_the_other_are_set_apart(club, first, bodies, said):
    last = talk(club, *first, said)[-1]
    assert (last.intent, [body.ids[0] for body in last.question.bodies]) == ("compare", bodies)


def test_which_bodies_take_a_lens_is_still_asked_of_all(club):
    assert talk(club, "om 50 on E, ring?", "and on X", "which other bodies take it")[-1].intent == "list-fits"


@pytest.mark.parametrize("said", ["why not the 170", "why not 170", "not 170?", "why would i not type 170"])
def test_why_the_view_is_not_what_the_stabiliser_is_told(club, said):
    last = talk(club, "what do i enter for ibis, 85 om on mft", said)[-1]
    assert flat(last).startswith("No, not 170: that is only what it frames like. Enter 85.")


SHIM = "50mm lens infinity at the 10 m mark, shim?"


@pytest.mark.parametrize(
    "said",
    [
        "which side does the shim go on",
        "where should the foil sit",
        "where to place the tape",
        "what do i put it under",
    ],
)
def test_where_a_shim_goes_is_told_first(club, said):
    assert flat(talk(club, SHIM, said)[-1]).startswith("putting in a shim: Put the shim on a whole flat seat")


@pytest.mark.parametrize(
    "said", ["fixable?", "is it salvageable", "curable?", "bin it?", "anything to be done?", "hopeless?"]
)
def test_whether_a_ring_can_be_saved_is_how_much_to_take_off(club, said):
    last = talk(club, "45 mm OM lens on X body, ring?", "mine measures 28.42", said)[-1]
    assert "take 0.12 mm off" in flat(last)


@pytest.mark.parametrize(
    ("first", "then", "tells"),
    [
        ("f/2.8, 1/50, iso 400, full sun. ND?", "and if i stop down to 5.6", "f/5.6 is twice as deep as f/2.8"),
        ("f/2, 1/50, iso 100, full sun. ND?", "and if i stop down to f8", "f/8 is about 4 times as deep as f/2"),
    ],
)
def test_the_depth_of_two_stops_is_set_apart_where_no_lens_is_told(club, first, then, tells):
    assert flat(talk(club, first, then, "what does the depth do then")[-1]).startswith(tells)


@pytest.mark.parametrize(
    ("first", "tells"),
    [
        (("OM 50 to E via M",), "own play"),
        (("M42 50 on E",), "takes nothing of the sharpness"),
        (("M42 50 on F body, infinity?",), "weak teleconverter"),
        (("EF 50 on MFT with 0.71 reducer",), "corners and wide-open sharpness"),
        (("F lens to M, ring?", "and M to L"), "errors and play add"),
    ],
)
@pytest.mark.parametrize("said", ["any drawback", "what are the disadvantages"])
def test_a_drawback_is_of_what_stands_between(club, first, tells, said):
    last = talk(club, *first, said)[-1]
    assert last.intent == "compare"
    assert tells in flat(last)


@pytest.mark.parametrize(
    "said",
    ["sharp to 2.5m only", "2.5m is the farthest", "sharp only as far as 2.5 m", "sharp up to 2.5m, not further"],
)
def test_a_far_end_in_any_order_tells_how_far_out_the_lens_sits(club, said):
    *_, found, other = talk(club, "20mm M42 on E", said, "would a 50 on that ring be fine")
    assert any(abs(row.value.nominal - 0.163) < 0.005 for row in found.quantities if row.name == "register_error_mm")
    assert "15 m" in flat(other)


@pytest.mark.parametrize("said", ["and as full frame field", "expressed as full frame", "like what on full frame"])
def test_a_view_told_as_full_frame_stays_on_the_frame_it_is_of(club, said):
    last = talk(club, "35mm f/2 with .71 on apsc 1.5 = ?", said)[-1]
    assert any(abs(row.value.nominal - 37.9) < 0.1 for row in last.quantities if row.name == "equivalent_focal_mm")


@pytest.mark.parametrize("said", ["is it always at 2.5?", "can i stop it down", "any aperture in there?"])
def test_the_iris_of_a_projector_lens_is_told_alone(club, said):
    last = talk(club, "projector lens 120 2.5, image 95 mm behind the flange, EF body", said)[-1]
    assert flat(last).startswith("Iris: projection lenses have none, so it works at f/2.5 always;")


@pytest.mark.parametrize("said", ["would focus be right with it", "if it did screw in, would infinity be right"])
def test_a_ring_only_set_against_the_lens_is_put_on_where_it_is_supposed(club, said):
    last = talk(club, "T2 lens on Z", "is the M42 to Z ring the same thread", said)[-1]
    assert "9.54 mm too close" in flat(last)


@pytest.mark.parametrize(
    "said",
    [
        "f-number in the display says 0",
        "the f-number reads 0.0",
        "aperture reads 0 in the viewfinder",
        "f number displayed is 0",
    ],
)
def test_a_stop_that_is_shown_as_nought_is_no_ring(club, said):
    last = talk(club, "M42 50 on RF", said)[-1]
    assert (last.intent, last.question.topic) == ("gear-setting", "no-aperture-data")


def test_a_length_to_the_image_is_not_put_for_the_number_engraved(club):
    _, image, set_at = talk(
        club,
        "little lens with a 39mm thread, no focusing on it, want it on my E body one day. what is it?",
        "about 48 to the window picture, it says 50",
        "17-31 helicoid + 1mm flat ring at the bottom, what do i set for infinity",
    )
    assert flat(image).startswith("48 - 18 = 30 mm")
    assert flat(set_at).startswith("Infinity at 29 mm on the 17 to 31 mm helicoid")


MIRROR = ["500 f8 mirror on mft, like what", "stabiliser number?"]
EARLY = ["M42 58/2 on an E body", "infinity is at 8 m on the scale"]
STEADY = ["135 2.8 on an aps-c 1.5 body is like?", "and if i add the doubler", "ibis setting?"]


@pytest.mark.parametrize(
    ("first", "said", "asked", "told"),
    [
        (MIRROR, "light lost by the 1.4 tc?", "exposure-nd", "1.0 stop"),
        (EARLY, "and f2 1/50 iso 800 outside in sun?", "exposure-nd", "10.4 stops"),
        (STEADY, "or just crop the picture, which is better", "compare", "cropping by 2 costs no light"),
    ],
)
def test_what_is_plainly_asked_is_asked_whatever_came_before(club, first, said, asked, told):
    last = talk(club, *first, said)[-1]
    assert last.intent == asked
    assert told in flat(last)


@pytest.mark.parametrize("between", [["how much"], ["does it cover full frame"], ["and the stabiliser number?"]])
def test_a_ring_that_was_told_too_thick_is_so_still_after_something_else(club, between):
    last = talk(club, "50mm M42 on E stops at 10 m", *between, "and does it reach infinity")[-1]
    assert "stops at" in flat(last)
    assert "reaches infinity (" not in flat(last).partition("2.")[0]


def test_another_ring_is_not_the_one_that_was_too_thick(club):
    last = talk(club, "50mm M42 on E stops at 10 m", "and with another ring?")[-1]
    assert "reaches infinity" in flat(last)


@pytest.mark.parametrize(
    ("first", "turn", "term"),
    [
        ("80mm on 44x33 equivalent", "whats shift good for", "shift movement"),
        ("80mm on 44x33 equivalent", "what is tilt good for", "tilt movement"),
        ("50mm M42 on E", "whats tilt good for", "tilt movement"),
    ],
)
def test_what_a_movement_is_good_for_is_asked_of_the_word(club, first, turn, term):
    assert flat(talk(club, first, turn)[-1]).startswith(term)


def test_what_shift_there_is_stays_asked_of_the_lens(club):
    assert flat(talk(club, "80mm P6 on 44x33, covers?", "what is the most shift")[-1]).startswith("Room to shift")
