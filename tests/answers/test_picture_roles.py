"""Single questions of the picture in everyday words: each number in its role, and what is asked for told first."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers, one


@pytest.mark.parametrize(
    ("text", "views", "wider"),
    [
        ("0.71 reducer on MFT or plain ring on APS-C for my 50, which one is wider", (71, 76), "50 mm with 0.71x"),
        ("mft with 35 or aps-c with 50, which has the narrower view", (70, 76), "35 mm on Four Thirds"),
        ("28mm on 1.6 crop or 20mm on mft, which is wider?", (40, 45), "20 mm on Four Thirds"),
        ("is a 50 with .64 reducer on mft wider than a plain 35 on aps-c?", (53, 64), "35 mm on APS-C"),
        ("is 75 on mft longer than 85 on aps-c", (130, 150), "85 mm on APS-C"),
    ],
)
def test_each_way_to_a_view_has_its_own_frame_and_glass(asked, text, views, wider):
    told = flat(asked(text))
    assert told.startswith(f"Not the same view: {views[0]} mm against {views[1]} mm in full frame terms. {wider}")


def test_lenses_of_tenths_on_frames_are_set_apart_too(asked):
    assert flat(asked("12.5mm on super16 or 25mm on aps-c, who sees more of the scene")).startswith("The same view")


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("48 mm of a steel rule fills the 36mm side of my full frame, the lens is a 60. what ratio", 36 / 48),
        ("100 mm of the folding rule cover the 24mm side of full frame, what ratio", 24 / 100),
        ("with a 100mm lens i photographed a ruler, 60 mm of it spans the long side of my 24x36. what ratio", 36 / 60),
    ],
)
def test_what_fills_a_side_is_the_field_and_the_side_its_image(asked, text, size):
    found = asked(text)
    assert found["intent"] == "macro-distance"
    assert any(low <= size * 1.001 and high >= size * 0.999 for low, high in numbers(found, "magnification"))
    assert " of tube" not in flat(found)


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("35mm c mount lens with 10mm of extension on mft, how wide is the thing", "What fills Four Thirds is 61 x"),
        ("how big an area do i see with a 28 and 12 mm of tubes on aps-c", "What fills APS-C is 55 x 37 mm"),
        ("7+14+28 tubes behind a 135, how far from the sensor and from the lens", "691 mm from the sensor, 507 mm"),
        ("my 100 on a 68mm tube shows 53 mm across. what sensor is it", "68 mm behind 100 mm is 0.68x: 53 mm is 36"),
    ],
)  # fmt: skip
def test_what_is_asked_of_a_picture_close_up_is_told_first(asked, text, first):
    assert flat(asked(text)).startswith(first)


@pytest.mark.parametrize(
    ("text", "circle"),
    [
        ("the bright disc of my cine zoom on tracing paper is 15.0mm across, biggest 16:9 inside it", 15.0),
        ("light patch on the tracing paper measures 19mm across, what sensor can it fill", 19.0),
        ("i get a 16 mm round bright spot behind my 25mm c lens. largest 16:9 and its crop", 16.0),
        ("image patch of my cctv lens is 9.5mm across so what 16:9 fits", 9.5),
    ],
)
def test_what_is_said_of_a_bright_disc_is_the_circle(asked, text, circle):
    assert one(asked(text), "image_circle_mm") == pytest.approx(circle)


@pytest.mark.parametrize(
    ("text", "focal", "near"),
    [
        ("how many mm of helicoid travel does a 50 need to go from infinity to half a metre", 50, 500),
        ("travel needed for an 85 from inf to 1m?", 85, 1000),
        ("what travel does my 100 need between infinity and 3 ft", 100, 914.4),
        ("is 10 mm of helicoid enough for a 50 to get from infinity to 40 cm", 50, 400),
        ("90mm from infinity to 0.8m how many mm does it move", 90, 800),
    ],
)
def test_the_travel_from_infinity_to_what_is_near_is_that_of_the_lens_told(asked, text, focal, near):
    found, apart = asked(text), near - 2 * focal
    moved = (apart - (apart**2 - 4 * focal**2) ** 0.5) / 2  # x of D = 2f + f*f/x + x
    assert numbers(found, "extension_mm")[0][0] == pytest.approx(moved, rel=0.01)
    assert flat(found).startswith("From infinity to")


@pytest.mark.parametrize(
    ("text", "shutter"),
    [
        ("polariser eats about 1.5 stops, i metered 1/250 f8, what shutter now", 2**1.5 / 250),
        ("yellow filter factor 2, meter says f8 at 1/125, what speed now", 2 / 125),
        ("orange filter factor 4 and i had 1/250. now?", 4 / 250),
    ],
)
def test_a_filter_on_a_metered_pair_tells_the_shutter_that_is_asked(asked, text, shutter):
    assert one(asked(text), "shutter_s") == pytest.approx(shutter, rel=0.01)


@pytest.mark.parametrize(
    ("text", "focal"),
    [
        ("field of view in degrees of a 12mm on super16, horizontal", 12),
        ("how many degrees does a 25mm see on mft", 25),
        ("whats the diagonal angle of a 50 on full frame", 50),
        ("hfov 16mm super 35", 16),
    ],
)
def test_degrees_of_a_view_turn_nothing(asked, text, focal):
    found = asked(text)
    assert found["intent"] == "crop-equivalent"
    assert one(found, "focal_length_mm") == focal
    assert "angle of view" in flat(found)


@pytest.mark.parametrize(
    ("text", "first"),
    [
        ("6000x4000 sensor with a super 16 crop punched in how many pixels are left", "Super 16 on APS-C: 3183 x 1887"),
        ("24mp aps-c, using only the super 16 area, pixels left?", "Super 16 on APS-C: 3186 x 1886"),
        ("mft 4600x3450, 16mm film area only, how many pixels across", "16 mm film on Four Thirds: 2728 x 1987"),
        ("45 MP full frame cropped to 1 inch, how many MP left", "1-type on full frame: 3012 x 2008"),
    ],
)
def test_the_pixels_of_an_area_cut_out_are_counted_on_the_whole(asked, text, first):
    assert flat(asked(text)).startswith(first)


@pytest.mark.parametrize(
    ("text", "larger", "sizes"),
    [
        ("which gives more magnification, 20mm tube on a 35 or 20mm on a 50", "20 mm behind 35 mm", ("0.57", "0.4")),
        (
            "a 50 with a 25mm tube or a 100 with a 36 mm tube, which magnifies more",
            "25 mm behind 50 mm",
            ("0.5", "0.36"),
        ),
        ("12 mm ring behind a 25 vs 20 mm ring behind a 50, bigger one?", "12 mm behind 25 mm", ("0.48", "0.4")),
    ],
)
def test_each_lens_has_its_own_tube_where_they_are_set_apart(asked, text, larger, sizes):
    assert flat(asked(text)).startswith(f"{larger} draws the larger: {sizes[0]}x against {sizes[1]}x")


@pytest.mark.parametrize(
    ("text", "view"),
    [
        ("if i punch in 1.4x on full frame with a 35mm what does it look like in full frame terms", 49),
        ("punching in 2x on mft with a 25mm, equivalent?", 100),
        ("24mm aps-c with a 1.25 punch-in, equiv", 24 * 1.527 * 1.25),
    ],
)
def test_a_punch_in_is_a_crop_on_top_of_the_frame_and_no_glass(asked, text, view):
    found = asked(text)
    assert numbers(found, "equivalent_focal_mm")[0][0] == pytest.approx(view, rel=0.02)
    assert "slower" not in flat(found)


@pytest.mark.parametrize(
    ("text", "stop"),
    [
        ("50mm with a 25mm filter ring hole 12.5 what f stop", 4.0),
        ("a 12.5 mm hole in front of my 50, what f-number is that", 4.0),
        ("drilled 6mm in cardboard for a 100mm lens. which stop", 100 / 6),
        ("front opening of my 85 lens is 42 mm across how fast is it", 85 / 42),
    ],
)
def test_the_stop_that_a_hole_makes_is_told(asked, text, stop):
    assert one(asked(text), "f_number") == pytest.approx(stop, rel=0.01)


def test_a_sensor_told_by_sides_of_no_name_is_measured(asked):
    assert one(asked("diagonal of a 20.7 x 13.8 sensor and its crop"), "crop_factor") == pytest.approx(1.74, rel=0.01)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        (
            "will a lens with a 20 mm image circle do super16? and mft?",
            ("covers Super 16", "does not cover Four Thirds"),
        ),
        ("image circle of 24 mm on mft and aps-c, corners?", ("does not cover APS-C", "covers Four Thirds")),
        ("circle of 27mm: mft ok? aps-c ok? full frame ok?", ("covers Four Thirds", "does not cover full frame")),
        ("how big a 4:3 fits in 17.5mm lit circle in mm and share of mft", ("4:3 crop 14.0 x 10.5 mm", "17.5 mm")),
        ("largest 2.39:1 on micro four thirds", ("2.39:1 on Four Thirds: 17.3 x 7.2 mm", "circle of 18.75 mm")),
    ],
)
def test_a_circle_and_a_shape_are_asked_of_every_frame_named(asked, text, said):
    told = flat(asked(text))
    assert all(one in told for one in said)


def test_the_bare_number_beside_tubes_is_the_lens(asked):
    told = flat(asked("10+16 mm tubes and a 28, how far from the lens is the coin"))
    assert told.startswith("112 mm from the sensor, 58 mm from the lens")


def test_more_frames_a_second_at_the_same_angle_take_light(asked):
    found = asked("i shoot 25p at 1/50 and go to 50p same angle, light loss")
    assert one(found, "light_difference_stops") == pytest.approx(1.0, abs=0.01)
