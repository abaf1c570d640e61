"""A distance that alone is needed, and what a follow-up tells by the number of before."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers


def _extension(focal, away):
    spread = away - 2 * focal
    return (spread - (spread**2 - 4 * focal**2) ** 0.5) / 2


def test_what_a_distance_allows_and_what_is_over_it(talked):
    found = talked("what if I only need it at 5 m, M42 50 on a 2mm too thick ring")
    allowed = _extension(50, 5000)
    assert found["intent"] == "focus-verdict"
    assert close(2 - allowed) in [row[0] for row in numbers(found, "shim_mm")]
    assert flat(found).startswith("> ") or "5 m is out of reach" in flat(found)
    assert "5 m is out of reach" in flat(found)


def test_a_seat_that_is_off_by_less_reaches_it(talked):
    found = talked("M42 50 on E with a 1mm too thick ring", "what if I only need it at 2 m?")
    assert "2 m is reached" in flat(found)
    assert close(_extension(50, 2000)) in [row[0] for row in numbers(found, "register_error_mm")]


def test_a_seat_too_close_is_not_said_to_reach_it(talked):
    found = talked("C mount 25 on a CS body held flush... i dont need infinity, only 3m")
    assert "is reached" not in flat(found)


@pytest.mark.parametrize(
    ("then", "away"),
    [("half that distance?", 2.0), ("and twice as far", 8.0), ("what about at half the distance", 2.0)],
)
def test_a_share_of_the_distance_of_before(talked, then, away):
    found = talked("dof 50 f2.8 at 4 m full frame", then)
    assert found["intent"] == "depth-of-field"
    assert f"at {away:g} m" in found["reading"]


def test_stops_down_or_up_are_reckoned_from_the_stop_of_before(talked):
    start = "35 f2 3m full frame what is sharp"
    assert "at f/4" in talked(start, "stopped down two stops?")["reading"]
    assert "at f/2.8" in talked(start, "stopped down two stops?", "and opened up a stop")["reading"]


def test_the_same_on_a_body_told_by_its_frame_alone(talked):
    found = talked("85/2 at 2.5m on ff, dof?", "and at f/4?", "on the other body, aps-c?")
    assert found["intent"] == "depth-of-field"
    assert "APS-C" in found["reading"]
    assert "at f/4" in found["reading"]


def test_twice_a_tube(talked):
    found = talked("50mm 20mm tube how close", "double that")
    assert [row[0] for row in numbers(found, "extension_mm")] == [close(40)]


@pytest.mark.parametrize(
    ("text", "marks"),
    [
        ("50mm sits 0.2 mm too far out, what do the 3, 5 and 10 ft marks mean now", [914.4, 1524, 3048]),
        ("what do the 1m, 2m and the 5m marks mean on a 50 thats 0.2 too far out", [1000, 2000, 5000]),
        ("50mm sits 0.2 too far out, where is the 3m mark really", [3000]),
        ("marks of my 50 mm, 0.2 too far out, what does the 1.2 mark mean", [1200]),
    ],
)
def test_every_mark_of_a_row_is_told_first(talked, text, marks):
    found = talked(text)
    assert found["intent"] == "depth-of-field"
    told = numbers(found, "focus_from_sensor_mm")
    assert len(told) == len(marks)
    for (least, greatest), mark in zip(told, marks, strict=True):
        x = _extension(50, mark) + 0.2
        assert least - 1 <= 100 + 2500 / x + x <= greatest + 1


def test_what_a_lens_does_by_itself_as_a_magnification(talked):
    found = talked("14 and 21 tubes, 85mm that already does 0.12")
    told = [row[0] for row in numbers(found, "magnification")]
    assert close(0.12 + 14 / 85) in told
    assert close(0.12 + 21 / 85) in told


@pytest.mark.parametrize(
    ("text", "power"),
    [
        ("2 and 3 dioptre stacked on 85, how close", 5),
        ("+1 +2 and +4 all together on an 85", 7),
        ("+10 on an 85 at infinity", 10),
    ],
)
def test_close_up_lenses_add_up(talked, text, power):
    assert numbers(talked(text), "working_distance_mm")[0] == (close(1000 / power),) * 2


def test_worth_of_tube_is_a_length_of_tube(talked):
    found = talked("28mm worth of tube behind a 100, how close n how big")
    assert numbers(found, "magnification")[0] == (close(0.28),) * 2


def test_tubes_one_after_the_other_and_then_both(talked):
    found = talked("300mm 4.5, min focus 4m, 25 tube, how near", "50 tube?", "both")
    assert numbers(found, "magnification")[0] == (close(75 / 300),) * 2


def test_the_stop_of_before_holds_for_another_lens_where_depth_is_asked(talked):
    assert "at f/8" in talked("zone focus 28mm f8 apsc, set 3 m, whats sharp", "and 24mm?")["reading"]


def test_double_the_tube_where_depth_is_asked(talked):
    found = talked("50 1.8 + 20 tube f8, dof on ff?", "double the tube")
    assert numbers(found, "magnification")[0] == (close(0.8),) * 2


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("ten plus sixteen of tube behind a 40", 26 / 40),
        ("macro tubes 10 16 21 with 35mm on mft: which gives 1:1", 37 / 35),
    ],
)
def test_tubes_added_up_or_chosen_for_a_size(talked, text, size):
    assert close(size) in [row[0] for row in numbers(talked(text), "magnification")]


def test_a_face_front_to_back_is_so_deep(talked):
    found = talked("front to back of a face 15 cm, 85mm, 1.5m, ff which aperture")
    near, far = ((1500 + d) for d in (-73, 77))
    needed = 85**2 / (43.267 / 1442) * (far - near) / (2 * near * far)
    assert numbers(found, "f_number")[0][0] == pytest.approx(needed, rel=0.06)


def test_a_mark_that_measures_otherwise_tells_the_error(talked):
    found = talked("old 50mm in feet, 5ft mark measures 4.5. error?")
    wanted = _extension(50, 4.5 * 304.8) - _extension(50, 5 * 304.8)
    assert numbers(found, "register_error_mm")[0] == (close(wanted, rel=0.01),) * 2


def test_no_lens_comes_nearer_than_four_focal_lengths(talked):
    least, greatest = numbers(talked("how close can a 60 ever focus"), "focus_from_sensor_mm")[0]
    assert least <= 240 <= greatest


def test_a_length_that_a_helicoid_adds_is_its_own(talked):
    assert close(0.2) in [
        row[0] for row in numbers(talked("my helicoid adds 8mm, lens 40mm. how near"), "magnification")
    ]


def test_a_nearest_mark_before_its_word(talked):
    found = talked("30 inch min focus 135. how near with a 21mm tube")
    assert close(21 / 135) in [row[0] for row in numbers(found, "magnification")]


def test_dark_corners_of_two_coupled_lenses_are_not_said_to_be_none(talked):
    found = talked("135 + reversed 28: vignette?")
    assert "covers" not in flat(found)
    assert "Dark corners" in flat(found)


@pytest.mark.parametrize(
    ("text", "sizes"),
    [
        ("tell me ratio for 20, 40, 60, 80mm bellows draw on a 75", [20 / 75, 40 / 75, 60 / 75, 80 / 75]),
        ("how far from the front of the lens with 50/20 tube", [0.4]),
        ("25mm cctv, 3mm worth of washers, how near + how wide on mft", [0.12]),
        ("if i stack two +2 and a +4 on the 100", [0.8]),
        ("c lens 16mm plus 1mm ring where's focus", [1 / 16]),
        ("50mm m42 helicoid 10mm travel E body, nearest if the lens goes to .45", [0.2]),
    ],
)
def test_rows_and_pairs_of_numbers_are_each_what_they_stand_beside(talked, text, sizes):
    told = [row[0] for row in numbers(talked(text), "magnification")]
    assert all(close(size) in told for size in sizes)


def test_which_close_up_lens_for_a_distance(talked):
    assert numbers(talked("which closeup lens gets my 135 to 0.5m"), "dioptres") == [(close(2),) * 2]


def test_a_bare_distance_beside_a_stop(talked):
    found = talked("on mft with 25 1.4 at 1.5 m near and far limits", "if I go to 3 m", "back to 1.5 at f4")
    assert "at 1.5 m" in found["reading"]


@pytest.mark.parametrize(
    "text", ["stop so that 2m..inf sharp 18mm apsc", "everything from my toes (2m) to the mountains, 18mm apsc"]
)
def test_a_zone_to_infinity_however_it_is_written(talked, text):
    assert numbers(talked(text), "focus_from_sensor_mm") == [(close(4000),) * 2]


def test_a_zone_in_feet_is_answered_in_feet(talked):
    assert "4 ft to 9 ft" in flat(talked("zone from 4 ft to 9 ft w 35 ff what f"))


def test_a_length_before_which_another_lens_is_reversed_is_a_lens(talked):
    found = talked("135mm with 50 1.4 reversed, how big")
    assert numbers(found, "magnification") == [(close(2.7),) * 2]


def test_a_mark_that_is_really_another_distance(talked):
    found = talked("20mm: mark 1m is really 1.3. seat?")
    assert numbers(found, "register_error_mm")[0] == (close(_extension(20, 1300) - _extension(20, 1000), rel=0.02),) * 2


def test_the_close_up_lens_that_does_what_a_tube_does(talked):
    found = talked("what plus lens equals a 15 tube on 60mm")
    assert numbers(found, "dioptres") == [(close(1000 * 15 / 3600),) * 2]


def test_a_stop_that_was_set_is_set_anew(talked):
    found = talked("with 12+20 tubes at f11 on 60mm, real f, mft depth?", "f16")
    assert found["reading"].count("f/") == 1
    assert "at f/16" in found["reading"]


def test_a_close_up_lens_before_another(talked):
    found = talked("closeup +4 on 50 at 0.45 mark", "and +2 with it")
    assert numbers(found, "working_distance_mm")[0] == (close(1000 / 6),) * 2


def test_how_large_a_thing_comes_on_the_sensor(talked):
    found = talked("how big is a 10mm bug on sensor with 85 and 40mm tube")
    assert numbers(found, "image_size_mm") == [(close(10 * 40 / 85),) * 2]


def test_the_extension_for_a_subject_so_far_from_the_sensor(talked):
    found = talked("50mm, subject 30cm from sensor, how much extension")
    assert close(_extension(50, 300)) in [row[0] for row in numbers(found, "extension_mm")]


def test_two_people_and_an_aperture_are_a_zone(talked):
    found = talked("two people 2m and 2.6m from me, 50mm ff, aperture?")
    assert found["intent"] == "depth-of-field"
    assert numbers(found, "focus_from_sensor_mm") == [(close(2 * 2000 * 2600 / 4600),) * 2]


def test_the_field_on_each_frame_that_is_named(talked):
    found = talked("field of a 50 with 20 tube on full frame, aps-c and mft")
    assert [row[0] for row in numbers(found, "field_width_mm")] == [close(90), close(59), close(43.25)]


@pytest.mark.parametrize(
    ("text", "away"),
    [
        ("200mm and the adapter is 0.05 too thick, do i loose the mountain 20 km off", "20000 m is out of reach"),
        ("my adapter is 0.1 mm too thick, 85mm lens, is a house 300 m away still sharp?", "300 m is out of reach"),
        ("300mm, ring 0.1 mm too thick. can it focus on a boat 400 m off", "400 m is reached"),
        ("100 mm lens, ring 0.05 too thick, a steeple 800m off, sharp?", "800 m is out of reach"),
        ("200mm, ring 0.05 mm too thick, is a house 300 m off sharp", "300 m is reached"),
    ],
)
def test_what_lies_so_far_off_is_told_to_be_reached_or_not_beside_an_error(talked, text, away):
    found = talked(text)
    assert found["intent"] == "focus-verdict"
    assert away in flat(found)
    assert "name of no mount" not in flat(found)


@pytest.mark.parametrize(
    ("text", "focal", "away"),
    [
        ("my 135 at infinity stop is sharp at 60m only. whats the error", 135, 60_000),
        ("35mm lens set to infinity is sharp at 9 m, what do i take off", 35, 9_000),
        ("85 on its infinity stop focuses on 30 m. how far off is the ring", 85, 30_000),
        ("racked to infinity my 28 gets sharp at 4 m. how much off is the adapter", 28, 4_000),
    ],
)
def test_what_is_sharp_with_the_lens_at_its_infinity_stop_is_as_far_as_it_gets(talked, text, focal, away):
    found = talked(text)
    assert "too far out" in flat(found)
    assert "too close" not in flat(found)
    assert close(_extension(focal, away)) in [row[0] for row in numbers(found, "register_error_mm")]


def test_infinity_at_a_mark_before_the_stop_is_still_too_close(talked):
    found = flat(talked("the 50 hits infinity at 15 m on the scale, well before the hard stop. shim?"))
    assert "too close" in found


def test_a_distance_that_is_not_reached_in_truth_tells_how_thick_the_ring_is_at_least(asked):
    found = flat(asked("can't get sharp at the far wall 12m, K 28mm on E through a no-name ring. near is fine"))
    assert "Yours does not: it is more than 0.066 mm too thick" in found


def test_infinity_that_is_wanted_at_the_stop_falls_before_it_now(talked):
    found = talked("i want infinity at the hard stop exactly with a 35, its at 9m now")
    assert "too close" in flat(found)
    assert close(_extension(35, 9000)) in [row[0] for row in numbers(found, "shim_mm")]


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("infinity at 4m on the scale with a 35mm, ring is 27.3 thick. how thick should it be", 27.3 + 0.31),
        ("my 50 stops at 8 m with a 27.8 ring, what should the ring be", 27.8 - 0.32),
    ],
)
def test_a_ring_whose_length_is_told_gets_the_one_that_is_right(talked, text, right):
    assert f"should be {right:.2f} mm" in flat(talked(text))


def test_a_scale_off_by_a_share_is_no_mark_of_infinity(talked):
    found = talked("focus scale off by 10% on a 50 at 1m, shim?")
    errors = sorted(row[0] for row in numbers(found, "register_error_mm"))
    thin = _extension(50, 1000)
    assert errors == [close(_extension(50, 1100) - thin, rel=0.02), close(_extension(50, 900) - thin, rel=0.02)]


@pytest.mark.parametrize(
    "text", ["put a 0.5 mm shim under a 50, what happens", "a 0.5 shim under a 50 mm lens, what does it do"]
)
def test_what_a_shim_is_put_under_is_a_lens_and_no_price(talked, text):
    assert "under $" not in talked(text)["reading"]


def test_a_shim_that_was_put_in_is_not_told_in_inches(talked):
    found = talked("35mm lens infinity at the 6m mark, shim?", "put a 0.2 in and now infinity is at 40 m")
    assert "5.08" not in found["reading"]
    assert " ft" not in found["text"]


@pytest.mark.parametrize(
    ("text", "focal", "size"),
    [
        ("put a 0.5 mm shim under a 50, what happens", 50, 0.5),
        ("0.1 shim under a 35 what does it do", 35, 0.1),
        ("what happens with a 0.3 mm shim behind a 135", 135, 0.3),
    ],
)
def test_what_a_shim_does_is_told_and_not_that_it_is_lacking(talked, text, focal, size):
    found = flat(talked(text))
    assert found.startswith(f"A shim of {size:g} mm moves the lens as far out")
    assert f"{focal} mm" in found


def test_a_ring_too_thin_is_no_shim_put_in(talked):
    assert "infinity at its 25 m mark" in flat(talked("ring 0.1 too thin, what happens to a 50"))


@pytest.mark.parametrize(
    ("say", "far"),
    [
        ("200mm with a 12mm tube left on, how far off can the bird be", "3.75 m"),
        ("300mm plus 12mm ring, how far can the bird sit", "8.11 m"),
        ("400 with a 25 mm tube behind, how distant can the animal be", "7.22 m"),
    ],
)
def test_how_far_off_a_thing_may_be_is_the_far_end_of_a_lens_on_its_tube(talked, say, far):
    found = talked(say)
    assert found["intent"] == "focus-verdict"
    assert f"stops at {far}" in flat(found)
