"""Stacks, draws, threads and stops of lenses without a register, as they are asked for at the bench."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers, one


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("how long a tube from X flange so a projector lens (58 mm shoulder to image) hits infinity", 58 - 17.7),
        ("60 enlarger lens sharp 52mm behind its flange, MFT cap. how long a tube", 52 - 19.25),
        ("infinity at 71 from rear edge of the barrel, no mount. tube for mft?", 71 - 19.25),
        ("focused picture of the far roof is 49.5 off the back of the barrel. ring length for E?", 49.5 - 18),
    ],
)
def test_the_stack_is_what_lies_behind_the_lens_less_the_register(asked, text, wanted):
    found = asked(text)
    assert any(row[0] == pytest.approx(wanted, abs=0.01) for row in numbers(found, "stack_mm")), found["reading"]


def test_what_the_rear_itself_does_behind_the_flange_is_no_image(asked):
    found = asked("rear glass reaches 20 behind the flange, M39 on E, is it sharp at infinity")
    assert "flange to image" not in found["reading"]


def test_the_smooth_tube_of_a_lens_is_its_barrel_and_stands_between_nothing(asked):
    found = asked("projection lens 50 1.4, smooth 42.5 tube, E body, infinity?")
    assert "42.5 mm barrel" in found["reading"]
    assert not found.get("chains")


@pytest.mark.parametrize(
    "text", ["rings of 20, 5 and 2 behind a 50, how big", "50mm lens, rings 20, 5 and 2. magnification with each?"]
)
def test_rings_in_a_row_are_tubes_where_close_ups_are_asked_for(asked, text):
    sizes = {round(low, 3) for low, _ in numbers(asked(text), "magnification")}
    assert {0.4, 0.1, 0.04, 0.54} <= sizes


def test_a_lens_told_behind_the_lengths_of_tubes_is_no_tube(asked):
    found = asked("tubes 13 21 31, 85/1.8 native max is .12x. each one and all three?")
    sizes = [low for low, _ in numbers(found, "magnification")]
    assert any(size == pytest.approx(0.12 + 65 / 85, abs=0.001) for size in sizes)
    assert any(size == pytest.approx(0.12 + 13 / 85, abs=0.001) for size in sizes)


def test_a_bellows_is_drawn_by_magnification_times_focal_length(asked):
    found = asked("bellows, 50mm, want 2:1. how much draw and where does the stamp go?")
    assert "drawn to 100 mm the bellows gives 2x" in flat(found).casefold()
    assert any(low == pytest.approx(75) for low, _ in numbers(found, "from_front_principal_mm"))
    far = asked("75mm on a bellows that goes 35 to 120, i want 2:1. how far do i draw it")
    assert "150 mm of draw, beyond its 35 to 120 mm" in flat(far)


def test_a_reversed_lens_tells_its_image_distance_and_whether_the_bellows_reach(asked):
    found = asked("24 reversed on a bellows 45-100, K body. does it do 6:1?")
    assert any(low == high == pytest.approx(168) for low, high in numbers(found, "image_distance_mm"))
    assert "wants 79 to 135 mm of draw" in flat(found)


@pytest.mark.parametrize(
    "text", ["10x objective finite 160, E body, how much tube between body flange and its shoulder",
             "10x objective 160/0.17 on E. spacing body to objective?"]
)  # fmt: skip
def test_a_finite_objective_stands_its_image_distance_from_the_sensor(asked, text):
    assert any(low == pytest.approx(132) for low, _ in numbers(asked(text), "stack_mm"))


def test_turns_for_a_way_are_told_by_the_pitch(asked):
    found = asked("how many turns of 26tpi do i need for 5mm of travel")
    assert one(found, "thread_turns") == close(5 * 26 / 25.4)


def test_a_thread_that_is_too_long_is_told_by_how_much(asked):
    assert "0.5 mm too long" in flat(asked("c mount thread on this one is nearly 4.5mm long, screw it in anyhow?"))
    assert numbers(asked("max thread length on a D male before something in the camera gets hit"), "thread_length_mm")


def test_a_stop_of_card_is_focal_length_over_f_number(asked):
    found = asked("projector lens 38 1.4 on E. could i make it f4 with a card disc")
    assert one(found, "hole_mm") == close(9.5)


def test_a_reversed_lens_on_tubes_is_told_as_a_thin_glass_and_as_a_range(asked):
    found = asked("reversed 35 on 30 mm K tubes how big")
    assert any(low == high == pytest.approx((45.46 + 30) / 35 - 1) for low, high in numbers(found, "magnification"))
    assert any(low < high for low, high in numbers(found, "magnification"))


def test_where_a_helicoid_stands_the_rest_of_the_stack_is_told_and_no_ring(asked):
    said = flat(asked("63mm enlarger lens, image 60 behind the flange, M42 helicoid 17-31 on E. what else between"))
    assert said.startswith("60 - 18 = 42 mm")
    assert "the other parts are 25 mm together" in said


@pytest.mark.parametrize(
    ("text", "mark", "focal"),
    [
        ("fd to x ring, my 24 has infinity at the 3m mark. shim?", 3000, 24),
        ("new k-x ring, 35mm shows infinity at the 5m mark", 5000, 35),
        ("on my m42-x adapter the 24 shows infinity at 2 m", 2000, 24),
    ],
)
def test_a_length_behind_a_ring_that_shows_infinity_at_a_mark_is_a_lens(asked, text, mark, focal):
    found = asked(text)
    assert f"for a {focal} mm" in found["reading"]
    assert one(found, "shim_mm") == pytest.approx(focal**2 / mark, rel=0.05)


@pytest.mark.parametrize(
    "text", ["85 never gets past 12 m, hard stop. how much metal has to go",
             "lens hits stop before infinity, furthest sharp 12 m, 85mm. how much off the ring"]
)  # fmt: skip
def test_where_focus_ends_short_of_infinity_the_ring_is_too_thick(asked, text):
    assert "too far out: take that off the ring" in flat(asked(text))


def test_a_ring_that_is_told_by_a_stop_is_told_by_its_lens(asked):
    found = asked("tolerance for a 20mm f2.8 ring")
    assert "20 mm f/2.8 lens" in found["reading"]
    assert numbers(found, "infinity_allowance_mm")


@pytest.mark.parametrize(
    "text", ["60mm lens 180 from its node to sensor, how big",
             "60mm enlarger lens, 180mm between lens and sensor. magnification?"]
)  # fmt: skip
def test_between_lens_and_sensor_is_the_image_distance(asked, text):
    assert any(low == pytest.approx(180 / 60 - 1, rel=0.01) for low, _ in numbers(asked(text), "magnification"))


def test_so_many_times_is_a_magnification_where_extension_is_asked_for(asked):
    found = asked("want 1.5x with 60mm, how much extension")
    assert any(low == pytest.approx(90) for low, _ in numbers(found, "extension_mm"))
    assert "1.5x teleconverter" in asked("60mm with a 1.5x teleconverter, how near")["reading"]


def test_glass_told_as_thick_is_a_plate_that_moves_the_focus(asked):
    for text in (
        "plane glass 2mm thick behind 50, shim?",
        "put a 2mm thick ND behind the lens and infinity moved, how come",
    ):
        assert one(asked(text), "glass_shift_mm") == pytest.approx(2 * (1 - 1 / 1.52), abs=0.02)


def test_the_greatest_of_what_a_shim_is_made_from_is_the_shim(asked):
    assert "to make 0.3 mm" in asked("shim 0.3 out of 0.1 and 0.05, how many")["reading"]


def test_ten_threads_of_a_pitch_are_told_as_long(asked):
    assert any(
        low == pytest.approx(7.9375, abs=0.001)
        for low, _ in numbers(asked("what do ten threads of 32 tpi measure"), "ten_pitches_mm")
    )


@pytest.mark.parametrize(
    ("text", "wanted"),
    [
        ("making a board: 75mm lens in a body cap for NX, image 70.", 70 - 25.5),
        ("distance from lens shoulder to e flange if my lens images at 51.3", 51.3 - 18),
    ],
)
def test_where_an_image_is_told_to_lie_is_behind_the_flange(asked, text, wanted):
    assert any(low == pytest.approx(wanted) for low, _ in numbers(asked(text), "stack_mm"))


def test_an_article_behind_a_tube_begins_a_lens(asked):
    assert "24 mm lens" in asked("with a 12mm tube my 24 cant focus on anything, normal?")["reading"]


def test_what_tells_a_size_needs_no_lens_and_no_body(asked):
    assert numbers(asked("inner bore for 31 mm barrel"), "bore_mm")
    assert one(asked("thread pitch 0.75, need 0.3 more. how many turns"), "thread_turns") == close(0.4)


def test_both_is_no_magnification(asked):
    assert "magnification" not in asked("12 and 25 tube, 85mm at its 0.8 m, mag both ways")["reading"]


def test_a_reply_and_a_question_in_one_line_are_both_taken(talked):
    found = talked("75 enlarger lens on X at life size, extension?", "70. so what ring or stack?")
    assert "70 mm flange to image" in found["reading"]


def test_whether_a_target_stands_for_infinity_is_answered_first(asked):
    assert flat(asked("chimney 100m away, good enough to set infinity on a 200mm?")).startswith("No, 100 m is too near")
    assert flat(asked("mast 2000 m away, good enough to set infinity on a 200mm?")).startswith("Yes, 2000 m is far")


@pytest.mark.parametrize(
    ("text", "row"),
    [
        (
            "i need to space a lens 3.3mm w/ shims 0.5 and 1, what do i stack",
            "1 + 1 + 1 + 0.5 = 3.5 mm, 0.2 mm too long",
        ),
        ("need 3.5 mm of spacing, have shims of 0.5 and 1 mm, how do i stack them", "1 + 1 + 1 + 0.5 = 3.5 mm"),
        ("how do i get 4.2 mm from spacers 1, 0.5 and 0.2?", "1 + 1 + 1 + 1 + 0.2 = 4.2 mm: just right"),
        ("stack of spacers to reach 7.3 mm: 5, 1, 0.5, 0.3", "5 + 1 + 1 + 0.3 = 7.3 mm: just right"),
    ],
)
def test_the_longest_length_told_beside_a_row_is_what_the_row_is_to_make(asked, text, row):
    found = asked(text)
    assert found["intent"] == "diy-dimension"
    assert row in flat(found)


@pytest.mark.parametrize(
    ("text", "off"),
    [
        ("what if i swap the 27.46 for a 27.3 ring with my 50 M42 on E", "0.16 mm too close"),
        ("i replaced my 27.46 mm M42 ring with one of 27.3 on E, 50mm. sharp at infinity?", "0.16 mm too close"),
        ("exchanged the 5 mm spacer by a 5.2 one under my C lens 25mm on CS", "0.2 mm too far out"),
        ("if i replace the 28 ring with a 28.2, OM 50 on E, still infinity?", "0.2 mm too far out"),
    ],
)
def test_a_ring_that_takes_the_place_of_another_is_the_one_that_is_there(asked, text, off):
    found = asked(text)
    assert found["intent"] == "focus-verdict"
    assert off in flat(found)


def test_what_a_caliper_reads_beside_what_is_written_on_a_ring_is_the_ring(asked):
    found = asked("i wrote 28.5 on the ring, caliper 28.46, F on E: keep it?")
    assert found["intent"] == "focus-verdict"
    assert "0.04 mm too close" in flat(found)


def test_a_ring_told_by_its_ends_counts_beside_what_is_drawn_out(asked):
    found = asked("80mm enlarger lens, 76 flange to image, on M42 helicoid 25-55 with m42-e ring on E, 1:2")
    assert one(found, "helicoid_setting_mm", "for 0.5x") == close(76 + 40 - 18 - 27.46)


def test_rings_that_nobody_named_are_told_beside_the_setting_without_one(asked):
    found = asked("80mm enlarger lens on M42 helicoid 25-55 on E, 1:2")
    assert one(found, "helicoid_setting_mm", "for 0.5x") == close(76 + 40 - 18)
    assert "takes its whole seat off the setting: M42 to E ring 27.46 mm or M42 to E flat ring 1 mm" in flat(found)
