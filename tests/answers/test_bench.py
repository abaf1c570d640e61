"""Work at the bench, as it is asked for: stops to drop in, bores to tap, glass taken off, scales against a tape."""

from __future__ import annotations

from math import sqrt

import pytest

from tests.answers.picture import close, flat, numbers, one


def test_the_hole_of_a_stop_is_focal_length_over_f_number(asked):
    found = asked("cutting a drop in paper stop for the 24mm auto110 lens, f5.6 hole how big")
    assert one(found, "hole_mm") == close(24 / 5.6)


def test_the_bore_before_a_metric_thread_is_cut(asked):
    (bore,) = numbers(asked("what hole do i bore for an M42x1 female before cutting the thread"), "bore_mm")
    assert bore[0] == pytest.approx(42 - 1.0825, abs=0.001)
    assert bore[1] - bore[0] == pytest.approx(0.236, abs=0.001)  # the tabled tolerance 6H


def test_filter_glass_that_is_gone_leaves_every_lens_too_far_out(asked):
    found = asked("had the 2mm filter glass taken off my sensor and now nothing hits infinity, how much and which way")
    assert one(found, "glass_shift_mm") == pytest.approx(2 * (1 - 1 / 1.52), abs=0.02)
    assert "too far out" in flat(found)


def test_a_scale_against_a_tape_tells_how_far_the_ring_is_off(asked):
    def travel(mark, f):
        spread = mark - 2 * f
        return (spread - sqrt(spread**2 - 4 * f**2)) / 2

    found = asked("35mm scale lies: says 2m, tape to the film plane says 2.6, infinity is still there")
    assert numbers(found, "register_error_mm")[0][0] == pytest.approx(travel(2600, 35) - travel(2000, 35), abs=0.01)


def test_a_ring_that_was_measured_is_told_by_how_much_it_is_off(asked):
    found = asked("measured my M42-E ring at 27.35, good or bad")
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(27.35 - 27.46)


def test_what_nothing_is_told_of_asks_which_lens_and_body(asked):
    assert asked("will it scratch anything in there?")["problem"]["expected"].startswith("which lens and which body?")


def test_a_length_told_against_what_it_should_be_is_off_by_the_difference(asked):
    found = asked("my printed M42 to RF ring came out 25.3 instead of 25.46, what shim")
    assert one(found, "shim_mm") == close(0.16)
    tilted = asked("ring measures 17.03 17.06 17.11 17.08 round the rim, should be 17.00. what do i sand")
    assert one(tilted, "register_error_mm") == close(0.07)


def test_degrees_of_a_thread_are_parts_of_a_turn(asked):
    assert one(asked("backed the M42 lens off 54 degrees to get infinity, shim?"), "shim_mm") == close(0.15)
    lead = asked("helicoid thread moves 6mm in 270 degrees, how far do i turn for 0.1")
    assert one(lead, "thread_turns") == close(0.1 / 8)


def test_of_sheets_told_in_a_row_those_are_taken_that_come_nearest(asked):
    found = asked("feelers .05 .1 .15 .25 here, need 0.42 behind a c lens")
    assert one(found, "stack_mm") == close(0.4)


def test_a_print_that_shrinks_is_drawn_larger(asked):
    found = asked("my prints shrink 0.5 percent, exakta to E, how thick should i make it")
    assert pytest.approx(numbers(found, "ring_thickness_mm")[0][0], abs=1e-3) == (26.7 / 0.995)


def test_each_stop_asked_for_has_its_hole(asked):
    found = asked("waterhouse stops for a 75mm f3.5: want 5.6 8 11, what holes")
    assert [round(low, 2) for low, _ in numbers(found, "hole_mm")] == [13.39, 9.38, 6.82]


def test_glass_put_before_the_sensor_sets_every_lens_too_close(asked):
    found = asked("put a 1mm clear glass in front of the sensor, does infinity move")
    assert numbers(found, "register_error_mm")[0][0] < 0
    assert one(found, "glass_shift_mm") == pytest.approx(1 - 1 / 1.52, abs=0.02)


def test_a_plate_of_the_body_is_its_end_and_no_second_ring(asked):
    found = asked("36-90 helicoid with M42 ends, 1mm E plate, 80mm enlarger lens with flange to image 74. infinity?")
    assert one(found, "helicoid_setting_mm") == close(74 - 18 - 1)


def test_no_helicoid_is_added_to_the_one_that_was_named(asked):
    found = asked("90 enlarger lens, 84 flange to image. 1mm MFT plate + 25-55 helicoid, infinity?")
    assert found["chains"][0]["verdict"] == "unusable"
    assert "too short" in flat(found)


def test_the_name_of_a_thread_is_not_its_register(asked):
    assert "it is T2" in flat(asked("42mm screw, image falls 55 mm behind"))


def test_a_pitch_counted_over_ten_threads_is_told_where_no_mount_has_it(asked):
    found = asked("10 threads come to 6.3 mm and it is 30.5 across")
    assert one(found, "thread_pitch_mm") == close(0.63)


def test_an_internal_thread_is_measured_between_its_crests(asked):
    assert "CS" in flat(asked("hole in an old camera, inside of the thread measures 24.6. c mount or what"))


def test_an_error_is_set_beside_what_is_forgiven(asked):
    found = asked("15mm f2 on apsc, does 0.02 of error even matter")
    assert one(found, "infinity_allowance_mm") == pytest.approx(2 * 28.35 / 1442, rel=0.02)
    assert "Hardly" in flat(found)


def test_a_ring_that_came_so_long_is_not_off_by_its_length(asked):
    found = asked("AR on E, ring came 22.62. too long?")
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(0.12)


def test_two_sides_of_a_ring_tell_its_tilt(asked):
    assert "tilted" in flat(asked("left edge blurry at infinity, calipers 18.00 left 18.06 right"))


def test_another_pitch_runs_apart_over_the_turns(asked):
    found = asked("my lathe only cuts 27 tpi, want 39x26 for LTM, 3 turns. ok?")
    assert one(found, "pitch_drift_mm") == close(3 * (25.4 / 26 - 25.4 / 27))


def test_a_throat_alone_tells_which_bayonets_it_may_be(asked):
    assert "RF-mount" in flat(asked("mount throat 54 with 4 lugs and contacts, which is it"))


def test_a_lens_set_to_infinity_that_is_sharp_nearer_sits_too_far_out(asked):
    found = asked("35mm set to inf is sharp on a wall at 6.5 m with the new LTM ring. how much")
    assert one(found, "register_error_mm") > 0


def test_a_thread_that_was_told_is_not_that_of_most_such_lenses(asked):
    found = asked("shoulder to picture 52.3, M42x1 industrial lens, ring to E")
    assert found["chains"][0]["pieces"][0]["id"] != "c-to-e-cup"
    assert "M42" in next(line for line in found["text"].splitlines() if line.startswith("1. "))


def test_a_ring_that_is_missing_is_not_counted(asked):
    found = asked("C lens on CS camera, 5mm ring missing, what happens with a 12mm f1.4")
    assert found["chains"][0]["verdict"] == "unusable"


def test_a_ring_that_is_sold_can_be_made_however_thin(asked):
    found = asked("make a ring QBM to EF, how thick")
    assert found["ring_to_make"]["possible"] == "plain"
    assert "made and sold as" in flat(found)


def test_a_ring_that_is_not_sold_stays_too_thin(asked):
    assert asked("make a ring FD to EF, how thick")["ring_to_make"]["possible"] == "no"


def test_rings_added_up_beside_a_helicoid_are_counted(asked):
    with_rings = asked("50mm M42 on E with helicoid 17-31, rings 1+1, does it reach infinity")
    alone = asked("50mm M42 on E with helicoid 17-31, does it reach infinity")
    ends = [one["chains"][0]["register_error_mm"]["greatest"] for one in (with_rings, alone)]
    assert ends[0] - ends[1] == pytest.approx(2, abs=0.01)


@pytest.mark.parametrize(
    "text",
    ["flange to sensor of my C camera is 17.45, 25mm", "C to sensor 17.45, 25mm lens. infinity?",
     "C camera flange to sensor 17.45 mm, how thick a shim for a 25mm lens"],
)  # fmt: skip
def test_what_a_body_itself_measures_is_off_from_its_mount(asked, text):
    found = asked(text)
    assert one(found, "register_error_mm") == close(17.45 - 17.526)
    assert numbers(found, "scale_mark_mm")[0][0] == pytest.approx(50 + 625 / 0.076, rel=0.01)
    assert "mm lens" not in found["reading"].replace("25 mm lens", "")


def test_a_body_that_is_too_deep_loses_infinity_for_its_own_lenses(asked):
    found = asked("E body flange distance is 18.2 by depth gauge, is infinity gone on a 24")
    assert found["chains"][0]["verdict"] == "macro-only"
    assert numbers(found, "far_from_sensor_mm")[0][0] == pytest.approx(48 + 576 / 0.2, rel=0.02)
    assert flat(found).startswith("Left so, a 24 mm lens is sharp to 2.93 m")


@pytest.mark.parametrize(
    ("text", "stack"),
    [("i need 9.54 between T2 and M42 but the shop only has 9 and .5 rings, fine?", 9.5),
     ("need 9.54, only 9 and .5 to be had", 9.5), ("spacer needed 5.2 mm, i have 5, 0.5 and 0.2", 5.2)],
)  # fmt: skip
def test_a_length_that_is_needed_is_made_up_of_the_rings_there_are(asked, text, stack):
    found = asked(text)
    assert found["intent"] == "diy-dimension"
    assert one(found, "stack_mm") == close(stack)


def test_a_stack_that_is_short_still_reaches_infinity_and_says_so(asked):
    found = asked("need 9.54, only 9 and .5 to be had")
    assert one(found, "register_error_mm") == close(-0.04)
    assert found["chains"][0]["verdict"] == "infinity"


def test_what_is_needed_of_lenses_is_no_stack(asked):
    assert not numbers(asked("i need a 50mm lens for E, only have 28 and 35"), "stack_mm")


def test_one_more_length_joined_on_behind_tubes_is_a_tube(asked):
    found = asked("macro with two 10mm tubes and a 5mm on a 50, how close")
    assert one(found, "stack_mm") == close(25)
    alone = asked("12mm tube and a 50, how close")
    assert "5 mm" not in alone["reading"].replace("50 mm", "")
    assert not numbers(alone, "stack_mm")


def test_a_distance_told_after_past_infinity_is_where_infinity_is_found(talked):
    turns = ("x mount ring, everything goes beyond infinity", "50mm, 12 m", "i have 0.05 brass, how many")
    mark, sheets = talked(*turns[:2]), talked(*turns)
    assert one(mark, "shim_mm") == close(0.21009)
    assert numbers(mark, "register_error_mm")[0][0] < 0
    assert one(sheets, "layer_count") == pytest.approx(4, abs=0.3)
    assert flat(sheets).startswith("0.21 mm is 4 x 0.05 mm")


def test_layers_that_are_asked_for_come_first(asked):
    assert flat(asked("infinity lands at 10m on my 50. how many layers of kitchen foil")).startswith(
        "0.25 mm in layers"
    )


@pytest.mark.parametrize(
    "text",
    ["12.5 C lens too fat for the recess on my E, sits on the flange. how far does it see",
     "12.5 C lens whose barrel won't go into the cup of the E ring, how far does it see"],
)  # fmt: skip
def test_a_lens_that_does_not_sink_in_is_out_by_what_the_cup_is_deep(asked, text):
    found = asked(text)
    assert found["chains"][0]["verdict"] == "macro-only"
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(18 - 17.526, abs=0.001)


def test_the_ring_of_cs_under_a_c_lens_on_a_c_camera_is_a_tube(asked):
    found = asked("how far does a 25 C with the 5mm CS ring on a C camera go")
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(5)


def test_a_whole_length_behind_a_ring_that_it_cannot_be_is_the_lens(asked):
    found = asked("m42 on mft ring 27.5, 35mm. inf?")
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(27.5 - 26.21)
    assert "35 mm M42 lens" in found["reading"]
    ring = asked("OM on mft ring, 27mm, infinity?")
    assert ring["chains"][0]["register_error_mm"]["least"] == pytest.approx(0.25)


def test_what_a_macro_lens_goes_to_by_itself_grows_with_the_tube(asked):
    found = asked("105 macro goes 1:2. add 25 tube, what do i get")
    assert pytest.approx(max(high for _, high in numbers(found, "magnification")), rel=0.01) == (0.5 + 25 / 105)


def test_a_mark_beside_an_error_is_asked_for_and_no_place_of_infinity(asked):
    found = asked("ring 0.3 thin, how much does the 1m mark move on a 50")
    assert flat(found).startswith("At its 1 m mark: it is now sharp at 1.11 m")


@pytest.mark.parametrize(
    ("text", "best", "error"),
    [("which is the better ring on L for OM: 25.9 25.98 or 26.05", 25.98, -0.02),
     ("26.1 or 26.3 ring for m42 to mft?", 26.1, -0.11),
     ("three om-mft rings: 26.6 / 26.75 / 26.9. which one", 26.75, 0.0)],
)  # fmt: skip
def test_of_several_rings_the_one_that_reaches_infinity_is_taken(asked, text, best, error):
    found = asked(text)
    assert flat(found).startswith(f"Take the {best:g} mm one")
    assert numbers(found, "register_error_mm")[0][0] == pytest.approx(error, abs=0.001)
    assert found["chains"][0]["verdict"] == "infinity"


def test_of_rings_that_are_all_too_thick_none_is_said_to_reach(asked):
    found = asked("rings of 26.5, 26.7 and 26.9 for the same pair: which? M42 to mft")
    assert flat(found).startswith("The 26.5 mm one is nearest: right is 26.21 mm, it is 0.29 mm too thick.")
    assert {chain["verdict"] for chain in found["chains"]} == {"macro-only"}


def test_several_readings_of_one_ring_are_still_readings(asked):
    assert one(
        asked("ring measures 17.03 17.06 17.11 17.08 round the rim, should be 17.00"), "register_error_mm"
    ) == close(0.07)


@pytest.mark.parametrize(
    ("text", "glass"),
    [("took a 2mm filter out from behind the lens, how far does focus move", 2),
     ("putting a 3mm filter glass behind the lens in my home made tube, does the tube need to grow", 3),
     ("gonna glue a 2 mm filter plate behind the rear lens. by how much do i lengthen the ring to get focus back", 2)],
)  # fmt: skip
def test_a_plate_behind_the_lens_moves_the_image_back(asked, text, glass):
    found = asked(text)
    assert one(found, "glass_shift_mm") == pytest.approx(glass * (1 - 1 / 1.52), abs=0.01)
    assert ("shorter" in flat(found)) == text.startswith("took")


def test_a_power_and_closeup_behind_it_is_a_close_up_lens(asked):
    found = asked("screwed a +2 closeup on my 100mm set to infinity. how far away is sharp")
    assert one(found, "working_distance_mm") == close(500)


def test_a_lens_of_a_named_mount_is_wide_at_its_barrel(asked):
    (bore,) = numbers(asked("turning a cup for a 22mm wide D lens on X. depth and inside dia"), "bore_mm")
    assert 22 < bore[0] < bore[1] < 23.5


def test_a_thread_cut_at_another_pitch_drifts_over_its_length(asked):
    found = asked("C thread cut at 0.8 pitch, 4 mm long, how far off")
    assert one(found, "pitch_drift_mm") == pytest.approx(4 / 0.79375 * 0.00625, rel=0.01)


def test_a_hole_cut_in_card_is_no_card(asked):
    found = asked("what hole do i cut in card to make my 75mm projector lens an f/5.6")
    assert one(found, "hole_mm") == close(75 / 5.6)


def test_marks_of_two_lenses_tell_whether_it_is_the_ring(asked):
    agree = asked("which shim if 35mm hits inf at 4 m and 50mm at 8m")
    assert [round(low, 2) for low, _ in numbers(agree, "shim_mm")] == [0.31, 0.32]
    assert "it is the ring" in flat(agree)
    apart = asked("24mm infinity at 1.5m, 50 mm at 15m. adapter or lens?")
    assert [round(low, 2) for low, _ in numbers(apart, "shim_mm")] == [0.4, 0.17]
    assert "that lens's own" in flat(apart)


def test_glass_behind_multiplies_what_a_tube_gives(asked):
    found = asked("50 with 20mm tube and 2x converter, mag?")
    assert numbers(found, "magnification")[0][0] == pytest.approx(0.8, rel=0.01)


def test_two_close_up_lenses_told_by_a_plus_and_an_s_are_no_seconds(asked):
    assert one(asked("two +2s on a 135 f2.8 mag?"), "magnification") == pytest.approx(0.54, rel=0.01)


def test_a_register_told_of_my_lens_by_paper_is_one(asked):
    assert "44.9 mm flange to image" in asked("reg of my lens is 44.9 by paper, what ring on L")["reading"]


def test_a_range_told_apart_from_its_helicoid_is_its_draw(asked):
    found = asked("what must my helicoid be set to for infinity, 25-55 m65 on Z, lens register 62")
    assert one(found, "helicoid_setting_mm", "infinity") == close(62 - 16)


def test_a_whole_length_before_a_register_with_its_number_behind_is_the_lens(asked):
    found = asked("m39 enlarger 50mm register 43 on mft helicoid 17-31 plus what")
    assert one(found, "helicoid_setting_mm", "infinity") == close(43 - 19.25)


def test_how_flat_a_ring_must_be_goes_by_the_stop_alone(asked):
    assert numbers(asked("how flat has the ring to be at f2"), "infinity_allowance_mm")[0][0] == close(0.030, rel=0.01)


def test_a_sheet_thicker_than_the_shim_makes_no_layer_of_it(asked):
    found = asked("can i shim with paper, need .06")
    assert not numbers(found, "layer_count")
    assert "thicker than that" in flat(found)


def test_metres_are_no_extension(asked):
    assert "of extension" not in asked("extension to shoot at .5m with a 200 that stops at 2.5m")["reading"]


@pytest.mark.parametrize(
    ("text", "moved"),
    [
        ("helicoid moves 6 mm per turn, infinity 30 degrees before the stop, shim?", 0.5),
        ("focus thread advances 8mm a turn, stars come 20 degrees before the end, how thick a shim", 8 / 18),
        ("lens moves 9 mm per revolution, infinity is 15 degrees short of the stop", 0.375),
        ("helicoid with a 10mm pitch, an eighth of a turn, how much is that", 1.25),
    ],
)
def test_what_a_turn_moves_is_a_lead(asked, text, moved):
    assert one(asked(text), "shim_mm") == close(moved)


@pytest.mark.parametrize(
    "text",
    [
        "adapter is 0.08mm too thin, what shows up on a 20mm lens vs a 100mm",
        "effect of a 0.1mm error on a 28mm vs an 85mm",
    ],
)
def test_an_error_sets_two_lenses_apart_by_the_square_of_their_length(asked, text):
    assert "goes by the square of the focal length" in flat(asked(text))


@pytest.mark.parametrize(
    ("text", "focal", "mark", "sharp"),
    [
        ("at the 3m mark of my 25mm things 2.5 m away are sharp", 25, 3000, 2500),
        ("things at 6m are sharp at the 5m mark, 50mm, shim?", 50, 5000, 6000),
        ("on the 10 m mark stuff at 8 m is sharp (85mm), which way and how much", 85, 10000, 8000),
    ],
)
def test_what_is_sharp_at_a_mark_is_set_against_it(asked, text, focal, mark, sharp):
    def extension(distance):
        spread = distance - 2 * focal
        return (spread - sqrt(spread**2 - 4 * focal**2)) / 2

    found = flat(asked(text))
    off = abs(extension(mark) - extension(sharp))
    assert f"Set to {mark / 1000:g} m it is sharp at {sharp / 1000:g} m" in found
    assert f"by: {focal} mm lens {off:.2g} mm" in found
    assert ("too close" if sharp > mark else "too far out") in found


@pytest.mark.parametrize(
    "text",
    [
        "every lens falls short of infinity on ring A, all fine on ring B",
        "with adapter one nothing reaches infinity, with adapter two everything does",
        "lenses good on ring 2, all short of infinity on ring 1",
    ],
)
def test_one_ring_on_which_all_lenses_fall_short_is_too_thick(asked, text):
    assert "the ring is too thick" in flat(asked(text))


def test_lenses_that_all_go_past_infinity_want_no_thinner_ring(asked):
    assert "the ring is too thick" not in flat(asked("every lens is past infinity on this ring, how much shim"))


@pytest.mark.parametrize("whose", ["adapter or lens?", "lens at fault or adapter?", "lens or adapter to blame?"])
def test_which_of_two_is_off_is_told_beside_the_shim(asked, whose):
    found = asked(f"35mm hits infinity at the 5 m mark, {whose}")
    assert one(found, "shim_mm") == close(35**2 / 4930)
    assert "second lens on the same ring" in flat(found)


@pytest.mark.parametrize(
    "text",
    [
        "1 mm IR cut glass goes in behind the machine vision lens, how much longer the spacer",
        "the IR block is 1 mm and comes between lens and sensor. how much thicker should my spacer be?",
        "adding a filter glass of 1 mm at the back of my M42 lens, how much does infinity move",
        "dust window 1 mm thick in the adapter, what is that worth in extension",
    ],
)
def test_a_plate_behind_the_lens_moves_the_focus_whatever_it_is_called(asked, text):
    assert one(asked(text), "glass_shift_mm") == pytest.approx(1 - 1 / 1.52, abs=0.02)


@pytest.mark.parametrize(
    ("text", "error"),
    [
        ("85 never gets beyond 40 m on this ring, how much is it over", 85**2 / 39830),
        ("fifty that never gets beyond 25 m with this adapter, how much is it over", 50**2 / 24900),
        ("24mm tops out at 4 m, how much is the ring over", 24**2 / 3952),
    ],
)
def test_how_much_a_ring_is_over_follows_from_the_far_end(asked, text, error):
    found = asked(text)
    assert found["intent"] == "shim-calibration"
    assert one(found, "shim_mm") == pytest.approx(error, rel=0.03)


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("is 0.05 too thick on a 300 gonna hurt me, birds at 200 m", "No, no harm there: 200 m is reached"),
        ("ring 0.3 too thick and 200mm, planes at 900 m, bad?", "Yes, it matters there: 900 m is out of reach"),
        ("0.1 too thick, are birds at 50 m still fine with a 135", "Yes: 50 m is reached"),
    ],
)
def test_whether_an_error_hurts_is_told_of_the_distance_that_is_needed(asked, text, start):
    assert flat(asked(text)).startswith(start)


@pytest.mark.parametrize("end", ["before the infinity stop", "a bit before the end of travel"])
def test_infinity_before_the_end_of_the_ring_is_no_fault(asked, end):
    assert "No fault, as a rule" in flat(asked(f"500 mirror lens on T2-EF ring, the moon is sharp {end}. bad ring?"))


def test_a_seat_that_is_too_short_still_reaches_the_stars(asked):
    found = asked("M48 spacing adds up to 53.3 where it should be 55; 135 mm tele on it. stars?")
    assert found["chains"][0]["verdict"] == "infinity"
    low, high = numbers(found, "scale_mark_mm")[0]
    assert low < 135**2 / 1.7 + 270 < high


@pytest.mark.parametrize(
    ("text", "mark"),
    [
        ("50 has infinity at 12 m on my ring, which mark would a 100 on the same ring show", 47800),
        ("infinity at 8 m with a 35, at which mark will a 70 have it", 31900),
        ("my 85 reads 20 m at infinity, which mark does a 50 read then", 7000),
    ],
)
def test_the_mark_of_another_lens_on_the_same_ring(asked, text, mark):
    assert numbers(asked(text), "scale_mark_mm")[0][0] == pytest.approx(mark, rel=0.03)


@pytest.mark.parametrize(
    "text",
    [
        "only the left half of the frame reaches infinity with K to E ring",
        "F lens on L, one side of the picture reaches infinity the other not",
        "my OM 28 on E, upper half sharp lower half soft at infinity",
    ],
)
def test_infinity_on_one_half_of_the_picture_is_a_tilt(asked, text):
    assert flat(asked(text)).startswith("One side of the picture is soft")


@pytest.mark.parametrize(
    ("text", "far"),
    [
        ("my lens on its board sits 3 mm in front of where it should. 90mm. far end?", 2880),
        ("gap of 0.4 between ring and body, 50mm. far limit?", 6350),
        ("35mm stands 0.2 too far forward, infinity?", 6200),
    ],
)
def test_a_gap_at_the_seat_sets_the_lens_too_far_out(asked, text, far):
    found = [high for _, high in numbers(asked(text), "far_from_sensor_mm")]
    assert any(one == pytest.approx(far, rel=0.05) for one in found)


@pytest.mark.parametrize(
    "text",
    [
        "after a service the 85 has infinity at its 25 m mark, on its own body as well. shim the ring?",
        "28mm infinity at 3 m, same on its own film body",
    ],
)
def test_a_lens_that_is_off_on_its_own_body_too_is_off_itself(asked, text):
    assert flat(asked(text)).startswith("one lens alone that misses infinity")


@pytest.mark.parametrize(
    ("text", "start"),
    [
        ("for infinity it needs 33, got a 25..55 helicoid, can it reach infinity", "Yes: 33 mm lies within"),
        ("my lens needs 20 mm and the helicoid has 17 to 31, infinity?", "Infinity at 20 mm leaves 11 mm"),
        ("helicoid 25-55, needs 60 for infinity. reach?", "No: 60 mm is 5 mm beyond"),
        ("needs 10 mm for infinity, my helicoid is 12-17", "No: shut it is 2 mm longer"),
    ],
)
def test_whether_the_length_that_infinity_wants_lies_in_the_travel(asked, text, start):
    assert flat(asked(text)).startswith(start)


@pytest.mark.parametrize(("say", "focal"), [
    ("35 lands on infinity at the 5m mark w/ my new ring, how much shim", 35),
    ("50 lands infinity at the 10 m mark", 50),
    ("24mm lands on infinity at 3m on the scale", 24),
])  # fmt: skip
def test_a_lens_that_lands_on_infinity_at_a_mark_is_that_long(asked, say, focal):
    assert f"{focal} mm lens" in asked(say)["reading"]
    assert "flange to image" not in asked(say)["reading"]
