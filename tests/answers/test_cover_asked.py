"""Coverage as it is asked for and told, the numbers worked by hand."""

from __future__ import annotations

from math import hypot

import pytest

from engine.render.record import record_of
from tests.answers.picture import close, flat, numbers, one
from tests.answers.talks import talk


@pytest.mark.parametrize(
    "text",
    [
        "what is the largest 16:9 crop of the avocet on the skiff",
        "how many pixels are left if I crop the avocet clean on the skiff",
        "do I still get UHD from the avocet on the skiff",
        "punch-in for the avocet on the skiff in 16:9",
    ],
)
def test_a_crop_is_told_by_size_punch_in_pixels_and_equivalent(asked, text):
    found = asked(text)
    assert found["intent"] == "coverage"
    wide, high = 14 * 16 / hypot(16, 9), 14 * 9 / hypot(16, 9)
    assert one(found, "crop_width_mm", "16:9") == close(wide)
    assert one(found, "crop_height_mm", "16:9") == close(high)
    sensor = one(found, "format_diagonal_mm") * 3 / hypot(3, 2)  # 3:2, near enough for a percent
    assert one(found, "punch_in", "16:9") == close(sensor / wide, rel=0.01)
    assert one(found, "pixels_across", "16:9") == close(6000 * wide / sensor, rel=0.01)
    assert one(found, "equivalent_focal_mm", "16:9") == close(25 * hypot(36, 24) / 14)
    assert one(found, "equivalent_f_number", "16:9") == close(1.4 * hypot(36, 24) / 14)
    assert "HD remains, UHD does not" in " ".join(found["text"].split())


def test_what_was_asked_of_pixels_stands_first_and_unknown_pixels_are_asked_for(asked):
    assert asked("do I still get UHD from the avocet on the skiff")["text"].split("\n")[0].endswith("UHD does not.")
    assert "how many has it across and down?" in " ".join(
        asked("is UHD left with the avocet on the dory")["text"].split()
    )


@pytest.mark.parametrize(
    ("shape", "ratio"), [("3:2", 1.5), ("4:3", 4 / 3), ("1:1", 1), ("2.39:1", 2.39), ("16:9", 16 / 9)]
)
def test_each_shape_asked_for_is_cropped_to_the_circle(asked, shape, ratio):
    found = asked(f"largest {shape} crop of the avocet on the skiff")
    assert one(found, "crop_width_mm", shape) == close(14 * ratio / hypot(ratio, 1))
    assert one(found, "crop_height_mm", shape) == close(14 / hypot(ratio, 1))


def test_the_crop_asked_for_stands_first(asked):
    assert asked("what is the largest 16:9 crop of the avocet on the skiff")["text"].startswith(
        "Largest clean 16:9 crop"
    )


def test_a_native_crop_keeps_the_shape_of_the_sensor(asked):
    found = asked("largest native crop of the avocet on the dory")
    wide, high = one(found, "crop_width_mm"), one(found, "crop_height_mm")
    assert hypot(wide, high) == close(14)
    assert wide / high == close(17.3 / 13)


@pytest.mark.parametrize(
    ("text", "right", "up"),
    [
        ("does the avocet cover the dory with 3 mm of shift", 3, 0),
        ("will the avocet cover the dory when shifted 3 mm sideways", 3, 0),
        ("will the avocet vignette on the dory with 3 mm of rise", 0, 3),
    ],
)
def test_a_shift_darkens_what_it_shifts_out_of_the_circle(asked, text, right, up):
    found = asked(text)
    square, lit, steps = 49.0, 0, 400
    for i in range(steps):
        for j in range(steps):
            x, y = right + 17.3 * ((i + 0.5) / steps - 0.5), up + 13 * ((j + 0.5) / steps - 0.5)
            lit += x * x + y * y <= square
    assert one(found, "lit_share") == pytest.approx(lit / steps**2, abs=0.003)
    assert "shifted 3 mm" in found["text"]


def test_a_lens_whose_circle_is_only_known_to_cover_its_format_may_cover_more(asked):
    text = flat(asked("does the godwit cover the punt with 8 mm of shift"))
    assert "may not cover full frame" in text
    assert "how much more is not known" in text


@pytest.mark.parametrize("how", ["with 10 mm of tube", "with 10 mm of extension", "with a 10 mm extension tube"])
def test_extension_makes_the_circle_grow(asked, how):
    found = asked(f"does the avocet {how} cover the dory")
    least, greatest = numbers(found, "image_circle_mm")[0]
    assert (least, greatest) == close(14 * (1 + 0.45 * 10 / 25), 14 * (1 + 1.1 * 10 / 25))


def test_crop_modes_are_looked_at_beside_the_whole_sensor(asked):
    found = asked("does the avocet cover the punt")
    assert len(numbers(found, "lit_share")) == 2
    assert one(found, "pixels_across", "16:9 on aps-c") == close(one(found, "pixels_across", "16:9 on 35mm"), rel=0.002)


def test_a_format_beside_an_own_lens_is_the_frame_not_what_it_was_made_for(asked):
    found = asked("is the dunlin's image circle big enough for super 16")
    assert numbers(found, "image_circle_mm")[0][1] < 10
    assert "Super 16" in found["text"]


def test_equivalents_come_first_with_the_angle_of_view(asked):
    found = asked("what is the avocet equivalent to on the dory")
    assert found["text"].startswith("25 mm on Four Thirds frames like 50 mm")
    assert one(found, "angle_of_view_diagonal_deg") == close(46.8, rel=0.002)


@pytest.mark.parametrize(
    "text",
    [
        "does the godwit cover the punt through a 20 mm opening",
        "does a ring with a 20 mm bore clip the corners of the godwit on the punt",
        "will the godwit vignette on the punt with an adapter of 20 mm clear diameter",
    ],
)
def test_an_opening_on_the_way_is_told_to_clip_right_after_the_answer(asked, text):
    found = asked(text)
    assert "20 mm opening darkens the corners" in found["text"].split("- ")[1]
    # the exit pupil is 1.1 x 50 mm before the sensor; the opening 18 mm (body flange) to 45.46 mm (lens flange)
    least, greatest = numbers(found, "half_lit_circle_mm")[0]
    assert least == close(20 * 55 / (55 - 18))
    assert greatest == close(20 * 55 / (55 - 45.46))
    assert "For which lens" not in found["text"]


def test_an_equivalent_tells_whether_the_frame_it_is_for_is_lit(asked):
    found = asked("what is the full frame equivalent of the avocet on the skiff")
    assert found["intent"] == "crop-equivalent"
    assert one(found, "image_circle_mm") == close(14)
    assert one(found, "lit_share") < 0.5
    assert "the corners go dark" in flat(found)


@pytest.mark.parametrize(
    ("told", "across"),
    [("24 mp", (24e6 * 4 / 3) ** 0.5), ("20 megapixels", (20e6 * 4 / 3) ** 0.5), ("5184x3888", 5184)],
)
def test_pixels_said_in_the_question_are_what_is_left_of(asked, told, across):
    found = asked(f"a 25mm c-mount lens with a 15 mm image circle on four thirds, {told}: how many pixels are left")
    wide, high = 15 * 4 / 5, 15 * 3 / 5
    assert one(found, "crop_width_mm", "own") == close(wide, rel=0.01)
    assert one(found, "pixels_across", "own") == close(across * wide / 17.3, rel=0.01)
    assert one(found, "pixels_down", "own") == close(across * 3 / 4 * high / 12.98, rel=0.01)


def test_the_lens_that_gives_a_wanted_view_is_told(asked):
    found = asked("what focal length do i need on mft to match a 35mm on full frame")
    assert one(found, "focal_length_mm", "like 35 mm") == close(35 / 2, rel=0.01)


def test_an_inch_type_that_is_to_be_covered_is_a_format(asked):
    found = asked("does a 12.5mm c lens made for 2/3 inch cover 1 inch")
    assert one(found, "format_diagonal_mm", "") == close(hypot(13.2, 8.8), rel=0.01)


def test_a_shape_is_cut_from_the_circle_alone_where_no_frame_is_told(asked):
    found = asked("measured circle 30 mm, biggest square out of that")
    assert one(found, "crop_width_mm", "circle alone") == close(30 / 2**0.5)
    assert found["text"].startswith("The largest that a circle of 30 mm holds: 1:1 21.2 x 21.2 mm")


def test_a_frame_told_by_its_sides_is_the_one_that_is_lit(asked):
    found = asked("my lens lights 12 mm, does it cover a 12.5x7 mm sensor")
    assert one(found, "format_diagonal_mm") == close(hypot(12.5, 7))
    assert 0.8 < one(found, "lit_share") < 1


def test_room_to_shift_ends_where_the_corner_leaves_the_circle(asked):
    found = asked("6x6 lens with a shift adapter on full frame, how far can i shift")
    radius = hypot(56, 56) / 2
    assert one(found, "shift_mm", "long side") == close((radius**2 - 12**2) ** 0.5 - 18)
    assert one(found, "shift_mm", "short side") == close((radius**2 - 18**2) ** 0.5 - 12)
    assert found["text"].startswith("Room to shift on full frame")


def test_where_only_the_frame_is_told_its_need_is_said_and_the_lens_asked_for(asked):
    found = asked("will it cover full frame")
    assert found["text"].startswith("Full frame needs an image circle of 43.3 mm.")
    assert "? Which lens" in found["text"]


def test_a_length_told_after_the_circle_was_in_question_is_the_circle(club):
    *_, answer = talk(
        club,
        "does a 25 mm C-mount lens cover an E-mount APS-C body",
        "say its 16mm, biggest 16:9 then",
    )
    found = record_of(answer, club.knowledge)
    assert one(found, "crop_width_mm", "16:9") == close(16 * 16 / hypot(16, 9))
    assert found["intent"] == "coverage"


def test_a_crop_mode_needs_a_smaller_circle_and_a_crop_that_is_the_formats_own_does_not(asked):
    mode = asked("does a 25 mm C-mount lens cover MFT in 2x crop mode")
    own = asked("does a 25 mm C-mount lens cover MFT, 2x crop")
    assert "Four Thirds cropped 2x needs 10.82 mm" in flat(mode)
    assert "cropped 2x" not in flat(own)


@pytest.mark.parametrize(
    ("text", "starts"),
    [
        ("my adapter has a 30 mm hole, 20 mm from the sensor. will it darken full frame corners with an 85mm f/1.4",
         "The 30 mm opening darkens the corners of full frame at f/1.4"),
        ("does a 40 mm bore 20 mm from the sensor clip a 50mm f/4 on full frame",
         "The 40 mm opening clears the corners of full frame at f/4"),
        ("tube of 25 mm inner bore and 30 mm long behind a 50mm f/2 on aps-c, dark corners?",
         "The 25 mm opening may darken the corners of APS-C at f/2"),
    ],
)  # fmt: skip
def test_an_opening_is_judged_without_a_mount_too(asked, text, starts):
    assert asked(text)["text"].startswith(starts)


def test_an_opening_in_a_ring_to_a_body_is_told_beside_the_ring(asked):
    assert "18 mm opening may darken" in asked("adapter hole 18 mm, 25mm f/1.4 C lens on m43")["text"]


@pytest.mark.parametrize(
    "text",
    [
        "what can i do against black corners",
        "how do i get rid of dark corners with a c-mount lens on aps-c",
        "there are black corners with an old cine lens, can i do anything about it",
    ],
)
def test_what_helps_against_dark_corners_stands_first_where_it_is_asked(asked, text):
    assert flat(asked(text)).startswith("A small disc of picture:")


@pytest.mark.parametrize(
    ("text", "beside"),
    [
        ("how much shift can a 645 lens give on full frame", "moves sideways"),
        ("645 medium format glass on 44x33, any vignetting?", "stuck"),
        ("how far can i shift a 6x7 lens on 44x33", "Heat and cold"),
    ],
)
def test_what_is_lit_comes_without_advice_on_other_things(asked, text, beside):
    assert beside not in flat(asked(text))


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("largest sensor for a 105 enlarger lens", "the largest sensor that it surely fills is 54x40"),
        ("biggest digital back for an 80mm enlarger lens", "the largest sensor that it surely fills is 54x40"),
        ("645 on 44x33 shift how much", "Room to shift on 44x33"),
        ("biggest format for my 75 enlarger lens", "the largest format that it surely fills is 6x4.5; with luck 6x6"),
    ],
)
def test_the_largest_frame_counts_films_where_a_format_is_asked_and_a_film_on_a_frame_is_what_a_lens_is_of(
    asked, text, said
):
    assert said in flat(asked(text))


@pytest.mark.parametrize(
    "text",
    [
        "shade at long end wide open only, 300/2.8 thru narrow adapter, what is it",
        "wide open my 135/2 darkens the corners on this skinny adapter, at f/5.6 it's gone. why",
        "why are there grey corners when i use my 200/2.8 on a skinny helicoid",
        "why do i get dull corners with my 300 f/4 on a slim helicoid",
    ],
)
def test_corners_dark_wide_open_behind_a_narrow_ring_are_clipped_by_its_bore(asked, text):
    assert flat(asked(text)).startswith("narrow bore")


@pytest.mark.parametrize("after", ["PL primes and an L body, which adapter", "PL 25mm on E full frame"])
@pytest.mark.parametrize("said", ["lenses cover super 35.", "they only cover super 35."])
def test_a_frame_that_a_lens_is_said_to_cover_is_not_what_is_asked_about(club, after, said):
    _, answer = talk(club, after, f"{said} how much of full frame is lit")
    lit = next(row.value for row in answer.quantities if row.name == "lit_share")
    assert 0.7 < lit.least < lit.greatest < 0.95


@pytest.mark.parametrize(("say", "long_mm"), [
    ("P6 80mm on a 44x33 body, how much shift have i got", "14.1 mm"),
    ("P6 50 on E, mm of rise?", "either way|side"),
    ("with a 6x6 lens on 44x33 how many millimetres of movement", "14.1 mm"),
])  # fmt: skip
def test_room_to_shift_is_told_of_a_lens_on_a_body(asked, say, long_mm):
    found = asked(say)
    text = " ".join(found["text"].split())
    assert found["intent"] == "coverage"
    assert text.startswith("Room to shift")
    assert any(part in text for part in long_mm.split("|"))


def test_a_tilt_shift_lens_asks_for_its_ring(asked):
    assert asked("how do I get a tilt shift lens EF on E")["intent"] == "chain"


def test_a_circle_that_is_too_small_is_not_cured_by_the_iris(asked):
    assert "No: closing the iris" in flat(asked("can i fix vignetting of a 16mm lens by stopping down"))[:120]
