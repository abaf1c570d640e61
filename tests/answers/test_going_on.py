"""Talks that go on: rings at hand, an error left as it is, ends of a zone, distances told by their two ends."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


def seats(answer, name="ring_thickness_mm"):
    return [row.value.nominal for row in answer.quantities or () if row.name == name]


@pytest.mark.parametrize("turn", ["i already own M42 to K", "ive an m42>k bush", "got the m42-k already"])
def test_a_ring_at_hand_goes_between_the_lens_and_the_body_of_before(club, turn):
    _, found = talk(club, "50/1.4 m42 onto e mount, ring?", turn)
    assert [body.id for body in found.question.bodies] == ["e-mount"]
    assert "still to get: K to E ring, 27.46 mm" in flat(found)


def test_a_ring_owned_leads_to_the_body_named_after_it(club):
    (found,) = talk(club, "i already own FD to M, now I've swapped to a Z camera, do i just get one more")
    assert [body.id for body in found.question.bodies] == ["z-mount"]
    assert 11.8 in seats(found)


def test_a_lens_and_a_body_of_others_are_no_ring_of_the_pair(club):
    _, found = talk(club, "50/1.4 m42 onto e mount, ring?", "i have FD to Z")
    assert [lens.id for lens in found.question.lenses] == ["fd-mount"]


def test_a_capital_m_before_a_dash_is_a_mount_and_no_metre(club):
    (found,) = talk(club, "ltm 50 on L body, only have the 7.8 M-L ring")
    assert [piece.front for piece in found.question.adapters] == [("m-mount",)]


def test_what_comes_of_leaving_a_thin_ring_is_told_of_the_error_of_before(club):
    _, left, sheets = talk(
        club,
        "24mm lens: infinity lands on 1.5 m, how thick a shim",
        "does it matter if i leave it",
        "i only have 0.1 brass",
    )
    assert left.intent == "why"
    assert "Nothing is harmed" in flat(left)
    assert "forgiven" not in flat(left)
    assert seats(sheets, "layer_count") == [4]


def test_what_is_left_too_thick_is_forgiven_by_a_stop_on_the_frame_spoken_of(club):
    _, added, left, stop = talk(
        club, "35mm wont go past 6 m with this NX ring (apsc), how much too thick", "so adding shim helps?",
        "can i live with it", "from which stop",
    )  # fmt: skip
    assert flat(added).startswith("No,")
    assert "stop down" in flat(left)
    assert seats(left, "infinity_from_f_number") == [pytest.approx(10.5, abs=0.1)]
    assert "infinity from f/11" in flat(stop)


@pytest.mark.parametrize(
    "line",
    ["50mm, near limit 2 m far 5 m, which f", "near 2 far 5, 50mm, what aperture", "sharp from 2 to 5, 50 mm, which f"],
)  # fmt: skip
def test_two_ends_told_by_their_words_are_a_zone(club, line):
    (found,) = talk(club, line)
    assert found.question.said("zone") == "2000 mm to 5000 mm"


@pytest.mark.parametrize(
    "line", ["61 mm from shoulder to the window picture", "61 from the rear edge to the picture of the window"]
)
def test_a_length_from_a_lens_to_its_far_image_is_no_focal_length(club, line):
    _, found = talk(club, "brass lens on E, no mount at all, infinity?", line)
    assert found.question.said("flange_to_image") == "61 mm"
    assert found.question.lens.focal_length_mm is None


def test_what_was_told_is_put_in_the_order_asked_for(club):
    *_, thick = talk(club, "exakta 50 on Z", "ring for L then", "and RF?", "thickest of the three?")
    assert flat(thick).startswith("Thickest: a Z-mount body")
    assert seats(thick, "stack_mm") == [28.7, 24.7, 24.7]
    *_, cheap, simple = talk(club, "OM lens to L body", "which is cheaper", "which one is easier then")
    assert flat(cheap).startswith("Cheapest: OM to L ring")
    assert flat(simple).startswith("Simplest: OM to L ring, 1 piece")


def test_both_tubes_are_no_two_lenses_and_one_more_comes_to_them(club):
    *_, both = talk(club, "16mm c mount on MFT, how close with a 5mm tube", "and the 25?", "both tubes, 5 and 10")
    assert [lens.focal_length_mm for lens in both.question.lenses] == [25]
    assert [piece.thickness_mm for piece in both.question.adapters] == [(5, 5), (10, 10)]
    _, more = talk(club, "50mm lens 12mm tube, mag?", "add the 20 as well")
    assert [piece.thickness_mm for piece in more.question.adapters] == [(12, 12), (20, 20)]


def test_a_filter_on_top_comes_to_that_of_before(club):
    _, more = talk(club, "f2.8 in full sun, 1/50, iso 100, ND64", "ND8 on top")
    assert more.question.said("factor") == "ND64, ND8"


def test_depth_through_a_reducer_is_that_of_the_lens_both_make(club):
    _, deep = talk(club, "F lens 85mm f1.8 on mft with a 0.71", "dof at 3m f2.8")
    assert "60.4 mm f/2 at 3 m" in flat(deep)


def test_a_frame_it_is_likened_to_takes_no_frame_away(club):
    _, like = talk(club, "9mm at 2.8 on super16, hyperfocal?", "and in full frame speak how wide is it")
    assert seats(like, "equivalent_focal_mm")[0] == pytest.approx(26.8, abs=0.1)


def test_what_is_left_before_the_sensor_is_told_of_the_rear_spoken_of(club):
    _, left, other = talk(
        club, "ltm wide, its rear stands 14 mm behind the flange. ltm-E ring 10.8. will something touch",
        "how far off the sensor is that", "mft instead, how long is the ring there",
    )  # fmt: skip
    assert seats(left, "clearance_mm")
    assert all(row == pytest.approx(14.8) for row in seats(left, "clearance_mm"))
    assert not any(piece.rear for piece in other.question.adapters)


def test_a_lens_that_cannot_be_focused_has_no_register_by_its_thread(club):
    _, seat, focal, buy = talk(
        club, "brass lens, 39 thread, there is no focus ring at all",
        "61 mm from shoulder to the window picture. so what length goes between it and an E",
        "rim says 63mm", "so i buy?",
    )  # fmt: skip
    assert focal.question.lens.focal_length_mm == 63
    assert "leaves 43 mm" in flat(buy)
    assert "helicoid" in flat(buy)
    assert "infinity (likely)" not in flat(seat)


def test_a_number_asked_of_the_same_answer_is_told_first(club):
    *_, size = talk(club, "16mm c mount on MFT", "how close with a 5mm tube", "what mag is that")
    assert flat(size).startswith("Magnification: 0.31x")


def test_rings_named_one_after_the_other_are_stacked_and_one_told_anew_takes_its_own_place(club):
    *_, stacked, thin = talk(
        club, "135/3.5 LTM tele, want it on L", "got LTM-M 1mm here", "then M-L?", "measured the M-L at 7.72"
    )
    assert [piece.front for piece in stacked.question.adapters] == [("ltm",), ("m-mount",)]
    assert [piece.thickness_mm for piece in thin.question.adapters] == [(1, 1), (7.72, 7.72)]
    assert "0.08 mm too close" in flat(thin)


def test_a_limit_told_after_a_mark_takes_its_place(club):
    *_, now = talk(club, "how thick a shim, 50mm infinity at 8m mark", "now it stops at 12m, how much off")
    assert now.question.said("mark") is None
    assert "12 m sits 0.21 mm too far out" in flat(now)


def test_a_size_wanted_is_what_the_tubes_at_hand_are_to_give(club):
    *_, best = talk(club, "mag 0.5 with a 50mm, what tube", "and 1:1", "ive only got 12 20 36")
    assert flat(best).startswith("Of what you have, 36 + 12 mm comes nearest")


def test_a_depth_wanted_after_a_distance_is_no_nearer_subject(club):
    _, stop = talk(club, "how deep sharp 85mm f2 at 3m ff", "want 20cm at least, what stop")
    assert "f/2.8 at least" in flat(stop)


def test_what_is_to_be_set_goes_on_being_asked_in_a_crop(club):
    _, _, crop = talk(club, "K 28/2.8 on my Z full frame", "what do i set for ibis", "and in crop mode?")
    assert seats(crop, "ibis_focal_mm")[0] == 28


def test_the_id_of_a_ring_without_its_dash_is_no_name_of_it(club):
    (found,) = talk(club, "qbmm lens 50mm for E")
    assert found.status == 2
    assert "QBM" in flat(found)


def test_a_ring_without_a_recess_is_no_cup_however_it_is_told(club):
    _, flat_ring = talk(club, "C mount 25/0.95 on E, infinity?", "my adapter isnt recessed tho")
    assert "stops at 1.37 m" in flat(flat_ring)


def test_a_length_behind_a_piece_that_was_spoken_of_is_that_of_a_lens(club):
    _, other = talk(club, "M42 135 to EF, the ring is 1.2 thick", "same ring, 50mm")
    assert [lens.focal_length_mm for lens in other.question.lenses] == [50]
    assert [piece.thickness_mm for piece in other.question.adapters] == [(1.2, 1.2)]


def test_a_length_far_from_that_of_the_piece_is_another_lens(club):
    _, longer = talk(club, "helicoid 17-31 on M42 to E, 50mm, how close", "and a 100")
    assert longer.question.lens.focal_length_mm == 100
    _, tube, lens = talk(club, "50mm 10mm tube mag", "and a 20", "and a 100")
    assert [piece.thickness_mm for piece in tube.question.adapters] == [(20, 20)]
    assert lens.question.lens.focal_length_mm == 100


def test_one_of_several_tubes_is_picked_by_its_length(club):
    *_, one, other = talk(club, "tubes 10 16 on 35mm c-y lens", "f8, light loss", "only 16", "just the ten")
    assert [piece.thickness_mm for piece in one.question.adapters] == [(16, 16)]
    assert [piece.thickness_mm for piece in other.question.adapters] == [(10, 10)]
    assert other.question.f_number == 8


def test_another_extender_takes_the_place_of_the_one_left_out(club):
    _, other = talk(club, "300/4 FD w 2x TC on apsc E, what is that", "without tc, 1.4x instead")
    assert "420 mm f/5.6" in flat(other)


def test_no_screw_leaves_the_bayonets(club):
    _, left = talk(club, "which mount is it, flange to image 44.6", "no screw")
    assert "M39x1 SLR" not in flat(left)


@pytest.mark.parametrize(
    ("said", "extension"), [("and double that size", 120.0), ("half the size", 30.0), ("twice as big", 120.0)]
)
def test_a_share_of_the_size_is_a_share_of_the_magnification(club, said, extension):
    last = talk(club, "60mm enlarger f4 at 1:1 on full frame", said)[-1]
    told = [row.value.nominal for row in last.quantities or () if row.name == "extension_mm"]
    assert told == [pytest.approx(extension)]


@pytest.mark.parametrize(
    "said",
    [
        "ok remove the tube. whats the hyperfocal at f8",
        "tube off again, hyperfocal at f8?",
        "lose the tube, hyperfocal at f8",
    ],
)
def test_a_tube_that_is_taken_off_is_gone_from_what_is_asked_with_it(club, said):
    last = talk(club, "35 2.8 m42 on e", "what if i put a 15mm tube", said)[-1]
    assert last.intent == "depth-of-field"
    assert last.question.adapters == ()
    assert "hyperfocal 5.1" in flat(last)


@pytest.mark.parametrize("said", ["lose the tube", "without the tubes", "take the tube off again", "without it"])
def test_without_the_tube_it_is_asked_what_was_asked_before_it(club, said):
    first, _, last = talk(club, "f-mount 50 1.4 on e", "and with a 12 mm tube", said)
    assert last.intent == "chain"
    assert last.chains[0].title == first.chains[0].title


@pytest.mark.parametrize(
    "said",
    [
        "50mm m42 on RF ring focuses past infinity",
        "50 m42 on an RF ring, overshoots infinity",
        "50mm m42 with RF adapter: infinity is reached before the stop",
        "the 50mm m42 on RF ring hits infinity too early",
    ],
)
def test_a_lens_that_goes_past_infinity_on_a_ring_is_asked_for_its_mark(club, said):
    first, shim, sheets, ring = talk(club, said, "12 m", "how many layers of 0.05 tape", "what should the ring be")
    assert "too thin" in flat(first)[:120]
    assert "DANGER" not in flat(first)
    assert pytest.approx(seats(shim, "shim_mm")[0], abs=0.006) == 0.21
    assert seats(sheets, "layer_count") == [4]
    assert pytest.approx(seats(ring)[0], abs=0.01) == 25.46


@pytest.mark.parametrize("turn", ["do they expose different?", "is the exposure different?", "same exposure on both?"])
def test_whether_a_crop_changes_the_exposure_is_asked_after_an_equivalent(club, turn):
    *_, found = talk(club, "50 1.4 on aps-c 1.5 equals?", "and mft", turn)
    assert flat(found).startswith("No crop changes the exposure")


CLOSE = ["90mm lens, 30mm of tubes, how big", "how close does an 80mm lens get with a 20mm tube",
         "60mm with 30mm extension, magnification"]  # fmt: skip


@pytest.mark.parametrize("close", CLOSE)
@pytest.mark.parametrize("turn", ["depth?", "how deep is it", "f11 depth", "and the depth"])
def test_depth_asked_after_how_close_is_what_is_sharp_there(club, close, turn):
    _, found = talk(club, close, turn)
    assert found.intent == "depth-of-field"
    assert "deep at f/11" in flat(found) if "11" in turn else "f/8 is only an example" in flat(found)


@pytest.mark.parametrize("close", CLOSE)
@pytest.mark.parametrize("turn", ["f8 what happens to light", "what about light", "light?", "light at f5.6"])
def test_light_asked_after_how_close_is_what_the_extension_costs(club, close, turn):
    _, found = talk(club, close, turn)
    assert found.intent == "exposure-nd"
    assert "lost" in flat(found)


def test_depth_after_the_light_of_a_close_up_is_at_its_stop(club):
    found = talk(club, CLOSE[0], "f8 what happens to light", "depth?")[-1]
    assert "5.76 mm deep at f/8" in flat(found)


@pytest.mark.parametrize("first", ["16mm c lens on e, ring?", "c to e ring with a 16mm lens, infinity?",
                                   "got a 16mm 1.4 tv lens with 1 inch thread. E body. ring?"])  # fmt: skip
@pytest.mark.parametrize("turn", ["what if it turns out to be CS", "and if it is really a CS lens"])
def test_a_lens_that_turns_out_to_be_of_another_register_is_first_told_in_the_ring_of_before(club, first, turn):
    found = talk(club, first, turn)[-1]
    assert flat(found).startswith(
        "In a ring for C a CS lens sits 5 mm too far out: a 16 mm lens ends 8.8 cm from the sensor. It wants one"
    )
    assert 5.0 in seats(found, "register_error_mm")


def test_a_lens_of_another_thread_is_told_in_no_ring_of_before(club):
    found = talk(club, "m42 50 on e with my m42 ring", "what if it is a T2 lens")[-1]
    assert "In a ring for M42" not in flat(found)


@pytest.mark.parametrize(
    ("turn", "body"), [("so for E", "e-mount"), ("and on Z", "z-mount"), ("just the Z then", "z-mount")]
)
def test_one_of_two_bodies_named_alone_is_that_body(club, turn, body):
    _, found = talk(club, "M42 50 on E or Z, which", turn)
    assert found.intent == "chain"
    assert [one.ids[0] for one in found.question.bodies] == [body]
    assert found.question.lens.focal_length_mm == 50


def test_a_body_of_two_is_no_mount_of_a_lens_without_one(club):
    _, found = talk(club, "projector lens f1.3 20mm smooth barrel 31 mm. on Q or E?", "so for E")
    assert found.question.lens.focal_length_mm == 20
    assert not found.question.lens.ids
    assert [one.ids[0] for one in found.question.bodies] == ["e-mount"]


@pytest.mark.parametrize("turn", ["too long, shorter", "just the number please", "in one line", "tldr"])
def test_the_last_answer_in_short_keeps_its_head_its_way_and_its_warnings(club, turn):
    whole, short = talk(club, "28 LTM on E", turn)
    assert short.reading == whole.reading
    assert flat(short).startswith("A 28 mm LTM lens on an E-mount body: reaches infinity (likely). 1. LTM to E ring")
    assert {line for line in whole.lines if line.kind == "caution"} <= set(short.lines)
    assert len(short.lines) < len(whole.lines)


@pytest.mark.parametrize("turn", ["shorter tubes?", "which is shorter"])
def test_what_is_to_be_shorter_is_no_answer(club, turn):
    _, found = talk(club, "28 LTM on E with a 10 mm tube", turn)
    assert not found.aside


@pytest.mark.parametrize(
    ("first", "turn", "length"),
    [
        ("25mm c on mft with a 10 mm tube", "what if its 0.1 thinner", 9.9),
        ("25mm c on mft with a 10 mm tube", "2 mm longer?", 12),
        ("how close does a 100mm K lens get on Z with 31mm of tubes", "2 mm shorter", 29),
        ("M42 50 on E with a 27.6 ring", "and 0.2 thicker", 27.8),
    ],
)
def test_a_piece_so_much_longer_or_shorter_is_that_piece(club, first, turn, length):
    _, found = talk(club, first, turn)
    assert [piece.thickness_mm for piece in found.question.adapters] == [(length, length)]


@pytest.mark.parametrize("turn", ["how sure are you", "why so much", "draw it", "anything dangerous?"])
def test_tubes_told_by_their_length_alone_stand_in_what_is_asked_of_them_next(club, turn):
    _, found = talk(club, "how close does a 100mm K lens get on Z with 31mm of tubes", turn)
    assert "31 mm extension tube" in found.reading


def test_two_of_the_tubes_told_by_their_length(club):
    _, found = talk(club, "how close does a 100mm K lens get on Z with 31mm of tubes", "two of those")
    assert "31 + 31 = 62 mm" in flat(found)


@pytest.mark.parametrize("turn", ["can i fix it myself", "how do i fix that", "what would cure it"])
def test_what_mends_an_error_told_by_a_mark_is_a_shim(club, turn):
    _, found = talk(club, "my 50 K on E has infinity at the 10 m mark", turn)
    assert found.intent == "shim-calibration"
    assert "add a shim of 0.25 mm" in flat(found)


@pytest.mark.parametrize("turn", ["how do i check that", "how can i test it"])
def test_how_a_way_is_tried_out_comes_first_where_it_is_asked(club, turn):
    _, found = talk(club, "M42 50 on E", turn)
    assert flat(found).startswith("Check: wide open, something farther than 64 m must come sharp")


def test_what_was_assumed_is_how_sure_it_is(club):
    _, found = talk(club, "M42 50 on E", "what did you assume")
    assert "assumed: where a mount stands for the lens" in flat(found)


def test_wide_open_after_a_way_is_that_way_at_its_widest(club):
    _, found = talk(club, "50mm f1.8 M42 on E full frame", "and wide open")
    assert found.intent == "focus-verdict"


@pytest.mark.parametrize("turn", ["so how do i focus", "how should i focus then", "and how do you focus with it"])
@pytest.mark.parametrize(
    "first",
    [
        ("display shows F-- with the FD ring on", "which mode", "finder goes dim when i stop down, why"),
        ("OM on X with a dumb ring, which mode",),
        ("why is my viewfinder dim at f11 with an old lens",),
        ("can i use autofocus with m42 on E",),
    ],
)
def test_how_to_focus_is_told_by_hand_whatever_was_asked_before(club, first, turn):
    assert flat(talk(club, *first, turn)[-1]).startswith("enlarging the picture to focus:")


def test_how_to_focus_a_lens_that_has_no_focusing_is_no_matter_of_the_finder(club):
    assert "enlarging the picture" not in flat(talk(club, "80mm enlarger lens on E", "so how do i focus")[-1])


@pytest.mark.parametrize("turn", ["how do i take that off evenly", "how to remove it", "how do i take it off flat"])
@pytest.mark.parametrize(
    "first",
    [
        ("turning a ring LTM to Q, face to face length?", "came out 0.05 too thick"),
        ("my ring is 0.05 too long, 50mm",),
    ],
)
def test_what_a_ring_is_too_thick_by_is_taken_off_and_no_piece(club, first, turn):
    assert "take 0.05 mm off one seat of the ring, flat and parallel" in flat(talk(club, *first, turn)[-1])


@pytest.mark.parametrize("turn", ["why not just stop down", "why not stop down instead", "why not iso 50"])
def test_why_no_other_way_than_a_filter_is_told_of_the_filter(club, turn):
    assert flat(talk(club, "nd for full sun f2 1/50", turn)[-1]).startswith("less light by iris, filter or shutter:")


@pytest.mark.parametrize("turn", ["why so much", "why 7.4", "why is my picture pink"])
def test_the_sun_that_lights_a_scene_is_no_danger_when_it_is_asked_why(club, turn):
    assert "DANGER" not in flat(talk(club, "nd for full sun f2 1/50", turn)[-1])
    assert "sun through the lens" not in flat(talk(club, "nd for full sun f2 1/50", turn)[-1])


@pytest.mark.parametrize(
    "turn",
    ["what if its 0.1 off", "what if the ring is off by 0.1", "and if the ring is 0.1 mm off?",
     "what if its a tenth off", "what if its 0.1 too thick or too thin"],
)  # fmt: skip
def test_an_error_told_without_its_way_is_told_both_ways_and_is_no_length(club, turn):
    _, found = talk(club, "M42 50 on E", turn)
    assert flat(found).startswith(
        "0.1 mm too far out, a 50 mm lens comes sharp to 25 m from the sensor at most; as much"
    )
    assert "27.36 mm too close" not in flat(found)
    assert "f/-" not in flat(found)


def test_what_was_taken_off_a_ring_makes_it_so_much_thinner(club):
    _, found = talk(club, "M42 50 on E", "they took 0.1 off")
    assert "0.1 mm too close" in flat(found)


def test_a_body_counted_in_a_word_behind_plus_is_that_body(club):
    (found,) = talk(club, "SR and K lenses plus one X body, shopping list")
    assert [one.ids[0] for one in found.question.bodies] == ["x-mount"]


def test_a_converter_told_by_the_factor_behind_it_is_one(club):
    (found,) = talk(club, "converter 1.4, one stop or half?")
    assert flat(found).startswith("1.4x costs 1.0 stops of light")


def test_how_far_a_named_thing_must_be_to_stand_for_infinity(club):
    (found,) = talk(club, "Infinity calibration - how far must the tower be for a 100mm lens?")
    assert "100 mm lens: beyond 300 m" in flat(found)


@pytest.mark.parametrize(("off", "length"), [("thin", 4.9), ("thick", 5.1)])
def test_the_error_of_a_ring_is_no_tube_of_its_own(club, off, length):
    turns = (f"what if the ring is 0.1 too {off}", "how close does it get with a 5 mm ring")
    *_, near = talk(club, "does a 16mm f/1.9 c-mount lens reach infinity on an m43 body", *turns)
    rows = [line.text for line in near.lines if "of tube" in line.text]
    assert [row.split(" mm of tube")[0] for row in rows] == [str(length)]


@pytest.mark.parametrize("turn", ["what if the ring is 0.1 too thick", "what if the ring is 0.1 thinner"])
def test_a_ring_supposed_to_be_off_after_a_picture_asks_of_the_seat(club, turn):
    first = "does a 16mm f/1.9 c-mount lens cover an m43 body"
    _, seat = talk(club, first, turn)
    assert seat.intent == "focus-verdict"
    assert "image circle" not in flat(seat)


@pytest.mark.parametrize(
    "turn",
    ["what should I wear to the wedding", "what should i eat tonight", "will it rain", "which phone should I buy"],
)
def test_what_is_of_no_lens_is_declined_in_a_talk_too(club, turn):
    _, declined = talk(club, "does a 16mm f/1.9 c-mount lens reach infinity on an m43 body", turn)
    assert declined.intent == "out-of-scope"


@pytest.mark.parametrize(
    ("first", "turn", "lens"),
    [
        ("what's a 50/1.7 from the flea market worth", "K mount. will it go on MFT", (50, 1.7)),
        ("what is a 135/2.8 worth", "its M42. E body ring?", (135, 2.8)),
        ("i found a 28/2.8 at a sale, fair price?", "OM mount, goes on Z?", (28, 2.8)),
        ("what can i sell a 50/1.4 for", "it's C/Y, on E?", (50, 1.4)),
    ],
)
def test_a_lens_whose_worth_was_asked_is_the_one_whose_mount_is_told_then(club, first, turn, lens):
    declined, found = talk(club, first, turn)
    assert declined.intent == "out-of-scope"
    told = found.question.lenses[0]
    assert (told.focal_length_mm, told.f_number) == lens
    assert found.intent == "chain"


def test_that_only_what_reaches_infinity_is_listed_holds_for_the_list_alone(club):
    *_, close = talk(club, "where can my FL 50 go with infinity", "does it on my EF dslr?", "say ring is 1mm of metal")
    assert "stops at 94 cm" in flat(close)


@pytest.mark.parametrize("turn", ["there's no f-ring on the lens, how do i stop down", "no f ring on the lens, iris?"])
def test_a_ring_for_the_stop_is_no_mount(club, turn):
    *_, found = talk(club, "contarex 50/2 on Z", turn)
    assert found.question.lenses[0].ids[0] == "contarex"


def test_a_converter_that_turns_a_stop_into_another_turns_no_thread(club):
    *_, found = talk(
        club, "my Z won't fire, the lens is a dumb 105/2.5",
        "fires now. stabiliser wants a focal, theres a 1.4x tc between", "what does the 1.4 turn f2.5 into",
    )  # fmt: skip
    assert flat(found).startswith("105 mm f/2.5 with 1.4x is 147 mm f/3.5")


@pytest.mark.parametrize(
    ("say", "size"),
    [
        ("60mm lens, sensor 23.6 mm wide, 36 mm slide fills it. extension", "39.33 mm of extension"),
        ("my sensor is 17.3 wide and the slide 36, what magnification", "0.481x"),
        ("slide is 36 wide, sensor 23.5 wide, magnification", "0.653x"),
    ],
)
def test_a_sensor_told_by_its_width_has_both_sides(club, say, size):
    (found,) = talk(club, say)
    assert size in flat(found)


@pytest.mark.parametrize("turn", ["where on a 50", "and on a 50?", "with my 50?", "and a 50mm?"])
def test_a_lens_tried_on_a_ring_that_was_made_is_told_by_that_ring(club, turn):
    found = talk(club, "k to L ring length", "turned it 25.31", turn)[-1]
    assert found.intent == "focus-verdict"
    assert "infinity would be sharp at the 17 m mark" in flat(found)
    assert "add a shim of 0.15 mm" in flat(talk(club, "k to L ring length", "turned it 25.31", turn, "shim?")[-1])


def test_a_lens_told_before_a_ring_was_made_leaves_what_is_to_be_made(club):
    assert talk(club, "k to L ring length", "and for a 50mm?")[-1].intent == "diy-dimension"


@pytest.mark.parametrize(
    "turn", ["why not the FD", "why not the FD lens", "why does the FD not work", "why wont the FD reach infinity"]
)
def test_why_not_that_one_asks_of_just_that_one(club, turn):
    found = talk(club, "M42 and FD lens on EF dslr, which rings", turn)[-1]
    assert found.intent == "why"
    assert [lens.ids for lens in found.question.lenses] == [("fd-mount",)]
    assert flat(found).startswith("FD-mount lenses sit 42 mm from the sensor, EF-mount is 44 mm deep")


@pytest.mark.parametrize("turn", ["not the FD", "skip the FD", "without the FD"])
def test_not_that_one_leaves_the_others(club, turn):
    found = talk(club, "M42 and FD lens on EF dslr, which rings", turn)[-1]
    assert [lens.ids for lens in found.question.lenses] == [("m42",)]


@pytest.mark.parametrize("turn", ["is it the ring", "how would i see that", "stop down to what", "what helps"])
def test_a_fault_of_the_picture_is_asked_on_about_and_no_seat(club, turn):
    first, found = talk(club, "OM 24 on Z plain ring, corners soft wide open, why", turn)
    assert "register error" not in flat(first)
    assert found.intent == "why"
    assert flat(found).startswith("soft edges all round wide open")
    assert "Two to three stops clear it" in flat(found)


@pytest.mark.parametrize("turn", ["and on E?", "how near does it focus", "does it cover"])
def test_what_is_no_matter_of_the_fault_is_asked_anew(club, turn):
    _, found = talk(club, "OM 24 on Z plain ring, corners soft wide open, why", turn)
    assert found.intent in ("chain", "macro-distance", "coverage")


def test_a_haze_in_the_pictures_is_told_by_light_and_not_by_the_seat(club):
    (found,) = talk(club, "50 1.4 m42 on E, all pictures have a haze, why")
    assert flat(found).startswith("veil and low contrast")
    assert "register error" not in flat(found)


@pytest.mark.parametrize("asked", ["which of the two is better", "so which one would you take", "which is nicer"])
def test_two_ways_closer_asked_one_after_the_other_are_set_against_each_other(club, asked):
    found = talk(club, "50mm lens on E with 20mm tube, how close", "and with a +4 instead", asked)[-1]
    assert found.intent == "compare"
    assert "The first is larger, 0.4x against 0.2x." in flat(found)


@pytest.mark.parametrize(
    "asked", ["is the light ever dangerous to the camera", "can light that strong hurt the camera"]
)
def test_light_that_harms_is_that_of_the_sun(club, asked):
    found = talk(club, "25mm C lens on MFT", "beach at noon, f4, iso 200, 1/50", asked)[-1]
    assert found.intent == "hazard"
    assert "sun through the lens: A" in flat(found)


def test_a_focal_length_in_inches_asks_for_no_distances_in_feet(club):
    (found,) = talk(club, '2" f/2 C lens on E, depth of field at 3 m')
    assert "at 3 m" in flat(found)
    assert " ft " not in flat(found)


@pytest.mark.parametrize(
    ("lines", "spacer"),
    [
        (("M48 corrector wants 55mm, E body, how much between", "camera ring is 11 thick"), 26),
        (("flattener needs 55 from its M48 thread, MFT body, how much spacing", "ring is 16", "total then?"), 19.75),
        (("0.8 reducer wants 66mm to the sensor, EF dslr with t ring", "with an RF body instead?", "i put 10, so?"), 1),
        (("corrector 55 backfocus, cam 17.5, wheel 20, how long a spacer", "no wheel", "filters are 2mm"), 38.18),
    ],
)
def test_the_stack_before_a_corrector_is_told_on_turn_by_turn(club, lines, spacer):
    found = talk(club, *lines)[-1]
    assert seats(found, "stack_mm") == [pytest.approx(spacer, abs=0.02)]
    assert flat(found).startswith(f"{spacer:g} mm ")


def test_glass_behind_a_lens_seats_it_too_close_in_every_turn(club):
    *_, found = talk(club, "16mm 1.4 c lens on mft with 2mm filter glass behind it, what does that do", "1mm instead")
    assert flat(found).startswith("1 mm of glass behind the lens")
    assert seats(found, "shim_mm") == [pytest.approx(0.341, abs=0.005)]


def test_a_ring_told_by_a_bare_number_is_so_long_and_where_infinity_falls_is_said_first(club):
    (found,) = talk(club, "my m42 to E ring is 27, 50mm lens, where is infinity")
    assert "at the 5.54 m mark of its scale" in flat(found)[:160]


@pytest.mark.parametrize(
    ("lines", "head"),
    [
        (("two 0.1 shims and a 0.05 under my k to E ring, total?",), "Together 0.25 mm: 2 x 0.1 + 0.05"),
        (("24mm f lens on E with 28.35 ring", "plus a 0.05", "total?"), "28.4 mm from flange to flange"),
        (("t2 on mft, ring's 35.5 by caliper", "so total?"), "35.5 mm from flange to flange"),
        (
            ("50mm m42 on E with a 27.38 ring", "and with a 0.1 washer under it", "in or out?"),
            "Nearer to right: your 27.48",
        ),
        (("om to E ring of 28.02, 50mm lens", "can i see that in pictures"), "Nothing of it shows"),
        (
            ("helicoid 12 to 25 for a 50mm m42 on E and a 10 ring", "and infinity?"),
            "Infinity with the helicoid at 17.46",
        ),
        (("50mm m42 lens on E", "image falls 55 behind its flange"), "55 mm from flange to image is not M42"),
        (
            ("EF to RF ring with drop in filter, i take the filter out", "its 1.2mm thick", "so infinity?"),
            "Without its 1.2 mm",
        ),
        (("om 50 on E ring is 28.02", "28.10 on the other side"), "Mean 28.06 mm, 0.06 mm too thick"),
        (("fd 50 on E, ring 23.9", "is that normal"), "The seat is 0.1 mm too short. Makers cut rings"),
        (
            ("om to E ring of 28.05, 50mm lens", "does that matter for a 24?"),
            "Nothing is harmed, but what lies beyond 12 m",
        ),
        (("75mm enlarger lens on bellows, want 2:1", "it only opens to 100"), "Of what you have, 100 mm comes nearest"),
        (("85mm om on L stops at 40m", "and to fix that", "took 0.2 off"), "The lens sits 0.019 mm too close"),
        (
            ("om to L ring 26.15, 50mm lens", "26.05 after lapping", "one more lap of 0.03?"),
            "The lens sits 0.02 mm too far out",
        ),
        (
            ("50 reversed on bellows, draw 120", "draw 80", "not reversed"),
            "A 50 mm lens, from the sensor, focus ring at infinity unless told: 80 mm of tube",
        ),
        (
            ("M48 flattener 55mm back focus, ring for K plus camera, what's left", "reducer instead, wants 62"),
            "16.54 mm of spacer: 62 mm are wanted",
        ),
        (("50mm on a 10mm tube", "tube off", "two tubes?"), "Together 10 + 10 = 20 mm"),
        (("85mm on 12+20 tubes", "swap the 20 for a 36", "all three"), "Together 12 + 36 + 20 = 68 mm"),
        (
            ("35mm k on X, ring 27.9, and a 1mm filter behind it", "without the filter", "thicker one, 2mm"),
            "2 mm of glass behind the lens moves the image 0.68 mm back, t(1 - 1/n): with a seat 0.14 mm too far out",
        ),
        (("k ring for E, 0.1 too thick",), "A K-mount lens on an E-mount body: close-up only"),
    ],
)
def test_what_a_few_words_ask_of_rings_is_said_first(club, lines, head):
    assert flat(talk(club, *lines)[-1]).startswith(head)


@pytest.mark.parametrize(
    ("lines", "lens", "body"),
    [
        (("c or cs? image falls 12.5 behind the flange", "sorry, 17.5", "so on E?"), "c", "e-mount"),
        (("m42 50 on K body", "the k version"), "k-mount", "k-mount"),
        (("T2 on EF", "and on RF", "have the EF one already, can i use it"), "t2", "rf-mount"),
    ],
)
def test_what_is_put_in_the_place_of_another_leaves_the_rest(club, lines, lens, body):
    found = talk(club, *lines)[-1].question
    assert ([one.id for one in found.lenses], [one.id for one in found.bodies]) == ([lens], [body])


def test_a_width_put_right_takes_the_place_of_the_one_told_wrong(club):
    found = talk(club, "thread is 15.9, what mount", "no wait, 25.4")[-1].question
    assert (found.said("thread"), found.said("flange_to_image")) == ("25.4 mm", None)


@pytest.mark.parametrize(
    ("lines", "error"),
    [
        (("ltm 50 on E infinity at 10m mark", "put three 0.1 in"), 0.0475),
        (("ltm 50 on E infinity at 10m mark", "put three 0.1 in", "take one out"), -0.0525),
        (("my T2 ring for K is 9.3 by caliper, 500mm",), -0.24),
        (("om 50 on E needs a 0.25 shim", "only have 0.2"), -0.05),
        (("om 50 on E with a 28 ring", "add 10"), 10.0),
        (("50mm ltm soft far on my LTM to E, the ring is 11",), 0.2),
    ],
)
def test_what_is_put_to_a_ring_comes_to_it(club, lines, error):
    found = talk(club, *lines)[-1]
    told = (
        [found.chains[0].listed.judged.measured_trace.value("register_error_mm").shortest.nominal]
        if found.chains
        else []
    )
    assert [*seats(found, "register_error_mm"), *told][:1] == [pytest.approx(error, abs=0.001)]


def test_another_lens_on_a_helicoid_is_no_length_of_it(club):
    found = talk(club, "85mm m42 on E with a 17-31 helicoid", "set to 30", "and a 50?")[-1].question
    assert [one.focal_length_mm for one in found.lenses] == [50]
    assert [one.thickness_mm for one in found.adapters] == [(30, 30)]


def test_the_draw_of_a_bellows_is_no_drawing(club):
    (found,) = talk(club, "100mm m42 on bellows on E, draw 60")
    assert (found.intent, found.question.said("extension")) == ("macro-distance", "60 mm")
