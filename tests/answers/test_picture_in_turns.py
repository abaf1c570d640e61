"""Talks about the picture: shapes, frames, views and fields that a turn changes."""

from __future__ import annotations

import pytest

from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import flat, talk


def _told(club, answer, name):
    return [(low + high) / 2 for low, high in numbers(record_of(answer, club.knowledge), name)]


def test_one_to_one_after_a_crop_is_a_shape(club):
    *_, last = talk(club, "image circle 22mm. aps-c?", "2.39", "1:1 then")
    assert last.intent == "coverage"
    assert _told(club, last, "crop_width_mm")[0] == pytest.approx(22 / 2**0.5, rel=0.01)


def test_a_frame_larger_than_a_body_is_built_with_stands_for_itself(club):
    *_, last = talk(club, "what focal length fills 3m at 10m on mft", "on ff")
    assert _told(club, last, "focal_length_mm")[0] == pytest.approx(117.2, rel=0.01)
    assert "Micro Four Thirds" not in last.reading


def test_a_field_changed_keeps_its_distance(club):
    *_, last = talk(club, "what focal length fills 3m at 10m on mft", "5m wide")
    m = 17.3 / 5000
    assert _told(club, last, "focal_length_mm")[0] == pytest.approx(10_000 / (2 + m + 1 / m), rel=0.01)


def test_how_wide_at_a_distance_goes_on_with_the_lens(club):
    *_, last = talk(club, "whats 35mm on mft in ff terms", "at 5m how wide")
    assert _told(club, last, "field_width_mm")[0] == pytest.approx(17.3 * (5000 - 70) / 35, rel=0.02)


def test_the_normal_lens_is_asked_of_the_next_format_too(club):
    *_, film, portrait = talk(club, "normal lens for mft", "and s16", "portrait?")
    assert _told(club, film, "focal_length_mm")[0] == pytest.approx(16.9, abs=0.1)
    assert _told(club, portrait, "focal_length_mm")[0] == pytest.approx(29.1, abs=0.2)


def test_inches_alone_are_the_next_frame(club):
    *_, last = talk(club, "does a 2/3 inch cctv lens cover s16", 'what about 1"')
    assert _told(club, last, "format_diagonal_mm")[0] == pytest.approx(15.86, abs=0.02)


@pytest.mark.parametrize(
    ("turns", "across"),
    [
        (["so how many pixels are left of 4608"], 2704),
        (["how many pixels are left", "5184"], 3042),
        (["how many pixels are left", "5184 px wide"], 3042),
        (["how many pixels are left of 4608", "what if the sensor was 5184 wide"], 3042),
        (["how many pixels are left of 4608", "and of 6000"], 3521),
    ],
)
def test_the_width_of_a_sensor_in_pixels_alone_tells_what_is_left(club, turns, across):
    *_, last = talk(club, "will a 12.5mm c mount lens cover a micro four thirds camera", *turns)
    assert last.intent == "coverage"
    assert _told(club, last, "pixels_across")[0] == pytest.approx(across, abs=3)
    assert last.lines[0].text.startswith("At least")
    assert "pixels left: HD remains" in last.lines[0].text


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("is 1080p still possible after the crop", "HD remains."),
        ("can i get uhd out of it", "UHD does not."),
        ("enough for 720p?", "720p remains."),
        ("and dci 4k", "DCI 4K does not"),
        ("how many megapixels is that", "5.5 megapixels"),
    ],
)
def test_the_recording_asked_for_is_the_one_told(club, asked, says):
    *_, last = talk(club, "will a 16mm c mount lens cover mft, 4608 x 3456 pixels", asked)
    assert last.intent == "coverage"
    assert "fps" not in last.reading
    assert says in last.lines[0].text


def test_what_a_larger_circle_might_give_is_not_denied(club):
    *_, last = talk(club, "25mm f1.4 c mount on mft, 16:9 crop, sensor is 4608 pixels wide, how many pixels are left")
    assert last.lines[0].text == "At least 3017 x 1697 pixels left: HD remains, UHD may, where the circle is larger."
    assert "APS-C" not in last.reading


def test_without_a_count_of_pixels_it_is_told_how_many_it_takes(club):
    (last,) = talk(club, "is uhd still possible with a 16mm c mount lens on mft")
    assert last.lines[0].text == "64 % of the sensor's width is left: UHD takes 6002 pixels across all of it."


def test_of_pixels_alone_it_is_told_how_far_they_may_be_cropped(club):
    first, last = talk(club, "sensor is 4608 x 3456 pixels, can i still get uhd", "12.5mm c mount on mft")
    assert "84 %" in first.lines[0].text
    assert last.intent == "coverage"
    assert "UHD does not" in last.lines[0].text


@pytest.mark.parametrize(
    "asked", ["why is the circle 13", "where does the 13 come from", "why 13 to 22", "who says the circle is 13"]
)
def test_where_a_circle_comes_from_is_no_circle_told(club, asked):
    *_, last = talk(club, "will a 25mm f1.4 c mount cover mft", asked)
    assert last.intent == "why"
    assert "image circle" not in last.reading
    assert "13 to 22 mm is what lenses of 17 to 25 mm" in last.lines[0].text


def test_a_circle_told_after_its_reason_is_still_told(club):
    *_, last = talk(club, "will a 25mm f1.4 c mount cover mft", "why is the circle 13", "no, the circle is 14.5")
    assert "14.5 mm image circle" in last.reading


@pytest.mark.parametrize("asked", ["how wide is that", "how wide would it look", "angle of view?", "is that a wide"])
def test_how_wide_a_lens_looks_is_asked_after_a_way(club, asked):
    *_, last = talk(club, "50mm f1.8 m42 on an mft body", asked)
    assert last.intent == "crop-equivalent"
    assert "frames like 100 mm" in " ".join(line.text for line in last.lines[:2])


@pytest.mark.parametrize(
    ("lens", "says"),
    [("50mm m42 on mft", "Narrower"), ("13mm c mount on mft", "About"), ("9mm c mount on mft", "Wider")],
)
def test_a_view_is_set_beside_that_of_a_phone(club, lens, says):
    *_, last = talk(club, lens, "how wide would it look compared to a phone")
    assert last.intent == "crop-equivalent"
    assert last.lines[0].text.startswith(says)


@pytest.mark.parametrize(
    "asked",
    ["and which is wider, that or a 35", "would a 35 be wider", "how does it compare to a 35mm", "is a 35 wider"],
)
def test_one_more_lens_is_set_beside_that_of_before(club, asked):
    *_, last = talk(club, "50mm m42 on mft", asked)
    assert last.intent == "compare"
    assert "35 mm M42" in last.lines[0].text
    assert "50 mm M42 lens 100 mm; 35 mm M42 lens 70 mm" in " ".join(line.text for line in last.lines)


def test_degrees_asked_for_are_told_first(club):
    *_, last = talk(club, "50mm m42 on mft", "how wide is that", "in degrees please")
    assert last.lines[0].text == "Angle of view across the width: 20 degrees (Four Thirds)."


def test_the_circle_measured_of_one_lens_is_not_that_of_another(club):
    *_, last = talk(club, "16mm c mount on mft, will it cover", "what if the circle is actually 15", "ok and the 25mm")
    assert "image circle" not in last.reading
    assert "13 to 22 mm" in last.lines[0].text


def test_a_mode_told_stays_one_in_the_turns_after(club):
    turns = ("50mm lens, full frame camera, aps-c crop mode, what do i get", "in pixels from 24mp")
    *_, pixels, other = talk(club, *turns, "how does that compare to a 75")
    assert pixels.lines[0].text == "APS-C: 3933 x 2617 pixels left: UHD remains."
    assert "76 mm against 114 mm" in other.lines[0].text


def test_the_edge_asked_about_comes_before_pixels_kept(club):
    *_, last = talk(club, "16mm c mount on mft, 5184 x 3888, pixels left?", "is that enough to hide the corners")
    assert last.lines[0].text.startswith("16 mm C lens: does not cover")


@pytest.mark.parametrize(
    ("asked", "says"), [("and in 2.8k", "2.8K takes 3706"), ("and 6k", "6K takes"), ("in 4k?", "UHD takes 5082")]
)
def test_recordings_are_told_by_thousands_of_pixels(club, asked, says):
    *_, last = talk(club, "does a super 16 zoom cover mft", asked)
    assert says in last.lines[0].text


@pytest.mark.parametrize(
    ("asked", "needs"),
    [
        ("what would the same shot need on full frame", 24.0),
        ("what do i need on full frame for the same view", 24.0),
        ("same view on aps-c please", 15.7),
        ("and what would i need on aps-c to match that", 15.7),
        ("which lens on full frame for that view", 24.0),
        ("same framing on aps-c", 15.7),
    ],
)
def test_a_view_is_matched_from_the_frame_it_was_told_on(club, asked, needs):
    *_, last = talk(club, "12mm lens on mft, how wide", asked)
    assert "To frame like 12 mm on Four Thirds" in last.lines[0].text
    assert _told(club, last, "focal_length_mm")[0] == pytest.approx(needs, abs=0.06)


def test_two_frames_set_apart_go_on_with_another_lens(club):
    _, better, other, wide = talk(
        club, "compare mft and aps-c for c mount lenses", "which covers better", "with a 25", "and how wide on each"
    )
    assert better.lines[0].text.startswith("Four Thirds is lit the fuller")
    assert other.lines[0].text.startswith("Four Thirds is lit the fuller: 59 to 100 %, APS-C 36 to 85 %")
    assert "38 mm against 50 mm" in wide.lines[0].text


@pytest.mark.parametrize("asked", ["is mft or aps-c wider with a 25mm", "on which is a 25mm wider, mft or aps-c"])
def test_a_mount_of_bodies_beside_a_frame_is_a_body(club, asked):
    (last,) = talk(club, asked)
    assert "25 mm on APS-C is the wider" in last.lines[0].text


def test_a_factor_put_right_is_no_distance(club):
    *_, last = talk(club, "20 mm m42 on aps-c with a 0.71 reducer, how wide at 4 m", "no sorry, 0.72")
    assert "with a 0.72x focal reducer, at 4 m" in last.reading


@pytest.mark.parametrize("shape", ["4:5", "2:3", "3:4"])
def test_a_shape_upright_is_no_magnification_after_what_is_lit(club, shape):
    *_, last = talk(club, "full frame body, aps-c lens 24mm, will the corners be dark", f"and {shape}")
    assert f"{shape} crop" in last.reading


@pytest.mark.parametrize("asked", ["compare with no crop", "and uncropped?", "and with the whole sensor"])
def test_a_crop_may_be_left_away(club, asked):
    *_, last = talk(club, "50mm m42 on mft with a 1.25 crop, how wide", asked)
    assert last.intent == "crop-equivalent"
    assert "crop" not in last.reading


def test_a_zoom_is_set_and_keeps_its_mode(club):
    turns = ("my c mount zoom 12.5-75 on super 16 crop of mft, does it cover", "and at 25")
    *_, at, pixels, wide = talk(club, *turns, "pixels? body has 5184 across", "and how wide at 12.5")
    assert "f/25" not in at.reading
    assert "in Super 16" in pixels.reading
    clean = _told(club, pixels, "crop_width_mm")[0]
    assert _told(club, pixels, "pixels_across")[0] <= 5184 * clean / 17.3 + 1
    assert (wide.intent, wide.question.lens.focal_length_mm) == ("crop-equivalent", 12.5)


@pytest.mark.parametrize(
    ("lens", "asked", "says"),
    [
        ("is a 35mm on aps-c wide", "so its a normal lens", "35 mm is a normal lens"),
        ("20mm m42 on x mount", "is that wide", "20 mm is a wide lens"),
        ("100mm m42 on mft", "is that a tele", "100 mm is a tele lens"),
    ],
)
def test_whether_a_lens_is_wide_there_is_told(club, lens, asked, says):
    *_, last = talk(club, lens, asked)
    assert says in last.lines[0].text


def test_what_sees_the_same_is_reckoned_from_the_other_frame(club):
    turns = ("what is the angle of view of a 10mm on a 1/2.3 sensor", "and on mft")
    first, _, last, shape = talk(club, *turns, "what do i need on mft to see the same", "and at 16:9")
    assert first.lines[0].text.startswith("10 mm on 1/2.3-type frames like 56 mm")
    assert last.lines[0].text.startswith("To frame like 10 mm on 1/2.3-type, Four Thirds needs 28.2 mm")
    assert shape.intent == "crop-equivalent"


def test_a_mode_takes_its_share_of_the_sensors_pixels(club):
    _, mode, other = talk(club, "16mm c mount on mft, 5184 wide, pixels left", "and in super 16 mode", "and on aps-c")
    least = min(numbers(record_of(mode, club.knowledge), "crop_width_mm"))[0]
    assert _told(club, mode, "pixels_across")[0] == pytest.approx(5184 * least / 17.3, abs=2)
    assert "5184" not in other.reading  # another sensor has its own


def test_a_mode_takes_the_place_of_the_crop_told_before(club):
    *_, last = talk(club, "16mm c mount on mft, covers?", "in the 1.4x crop mode", "super 16 crop")
    assert "1.4" not in last.reading
    assert "Super 16" in last.reading


@pytest.mark.parametrize(
    ("asked", "says"),
    [
        ("what sensor would it fill then", "surely fills is 2/3-type; 1-type needs a circle of 15.9 mm"),
        ("no, the circle is 22, which sensor does it cover", "surely fills is Four Thirds; APS-C 1.6x needs"),
    ],
)
def test_the_largest_sensor_that_a_circle_fills_is_told(club, asked, says):
    *_, last = talk(club, "does a 16mm c mount cover mft", asked)
    assert any(says in line.text for line in last.lines[:2])


@pytest.mark.parametrize("asked", ["pixels from 20 mp", "is uhd still possible", "how many pixels remain of 5184"])
def test_pixels_asked_after_a_way_are_those_of_its_picture(club, asked):
    *_, last = talk(club, "16mm c mount on mft", asked)
    assert last.intent == "coverage"
    assert "16 mm C-mount lens" in last.reading


@pytest.mark.parametrize(
    "turn", ["so f4 exposure?", "is exposure f4 then?", "so it exposes like f4?", "so f4", "does it meter at f4"]
)
def test_a_stop_of_the_same_depth_is_no_stop_that_was_set(club, turn):
    _, doubted, glass = talk(club, "35mm f2 on mft equals what", turn, "put a 0.71 reducer behind it")
    assert flat(doubted).startswith("No: f/2 exposes as f/2 on any sensor")
    assert flat(glass).startswith("35 mm f/2 with 0.71x is 24.8 mm f/1.42")


@pytest.mark.parametrize(
    "turn", ["so is it darker?", "light the same?", "whats the light, still f2?", "is that dimmer"]
)
def test_light_doubted_after_an_equivalent_stays_the_same(club, turn):
    assert flat(talk(club, "35mm f2 on mft equals what", turn)[-1]).startswith(
        "No crop changes the exposure: f/2 stays"
    )


@pytest.mark.parametrize("turn", ["at f4?", "stopped down to f4"])
def test_a_stop_that_is_set_after_an_equivalent_has_its_own(club, turn):
    last = talk(club, "35mm f2 on mft equals what", turn)[-1]
    assert "f/4 on Four Thirds has the depth of field of f/8 on full frame" in flat(last)


def test_glass_without_a_factor_after_an_equivalent_changes_the_equivalent(club):
    last = talk(club, "50 f1.4 on 1.5 crop, equivalent", "put a speed booster in")[-1]
    assert flat(last).startswith("50 mm f/1.4 with 0.71x is 35.5 mm")


@pytest.mark.parametrize("turn", ["and uncropped?", "without the crop", "and with the crop off?", "whole sensor"])
def test_without_the_crop_the_whole_sensor_counts(club, turn):
    *_, found = talk(club, "38/1.8 pen f on Z", "so crop mode then. what does 38 look like", turn)
    assert "38 mm on full frame frames like 38 mm" in flat(found)
    assert "changes nothing" not in flat(found)


@pytest.mark.parametrize("turn", ["image circle i measured 13.5", "i measured its image circle, 13.5 mm"])
def test_a_circle_measured_in_a_talk_of_coverage_is_judged_and_not_written(club, turn):
    _, found, shape = talk(club, "16mm C f1.4 on a 1 inch sensor, lit?", turn, "how much of it in 16:9")
    assert found.intent == "coverage"
    assert _told(club, shape, "crop_width_mm")[0] == pytest.approx(11.77, abs=0.05)


@pytest.mark.parametrize("turn", ["is it a 55 or something else there", "does it stay a 55", "still a 55?"])
def test_whether_a_lens_stays_as_long_as_it_is(club, turn):
    *_, found = talk(club, "M645 55mm to E, adapter", "how much shift could that give on full frame", turn)
    assert found.intent == "crop-equivalent"
    assert found.lines[0].text == "It stays a 55 mm lens: no adapter and no frame changes that."


@pytest.mark.parametrize(
    ("first", "turn", "lens", "frame"),
    [
        ("25mm PL on RF", "its a super 16 one, full frame sensor", "made for Super 16", "does not cover full frame"),
        ("25mm PL on E", "it's for super 35, sensor is full frame", "made for Super 35", "does not cover full frame"),
        ("12mm C on MFT", "made for 16mm film, sensor four thirds", "made for 16 mm", "does not cover Four Thirds"),
        ("50mm C on MFT", "its a one inch lens, sensor is 4/3", "made for 1-type", "covers Four Thirds"),
    ],
)
def test_what_a_lens_is_made_for_told_with_the_sensor_asks_whether_it_covers(club, first, turn, lens, frame):
    *_, found = talk(club, first, turn)
    assert found.intent == "coverage"
    assert lens in found.reading
    assert frame in flat(found)


@pytest.mark.parametrize("turn", ["sensor is 4/3", "chip is four thirds"])
def test_a_sensor_told_by_the_name_of_a_mount_is_no_mount_of_the_lens(club, turn):
    *_, found = talk(club, "50mm C lens on MFT, ring?", turn)
    assert "50 mm C-mount lens on a Micro Four Thirds" in found.reading


@pytest.mark.parametrize(
    "turn", ["and if i skip it how thick is the bare ring", "if i leave the glass out how long is the plain ring"]
)
def test_how_long_the_ring_without_the_glass_is(club, turn):
    *_, found = talk(club, "F mount 35/2 with .71 on mft what have i got", turn)
    assert _told(club, found, "ring_thickness_mm")[0] == pytest.approx(27.25, abs=0.01)
    assert "seat 27.25 mm" in flat(found)


@pytest.mark.parametrize("turn", ["skip the reducer, ring thickness", "without the reducer, adapter length?"])
def test_the_ring_asked_for_behind_glass_left_away_is_not_left_away_with_it(club, turn):
    *_, ring, price = talk(club, "M42 28 with .71 on E, what do i get", turn, "and the price")
    assert "seat 27.46 mm" in flat(ring)
    assert "no use" not in flat(price)
    assert "M42 to E ring [8 to 25 dollars]" in flat(price)


@pytest.mark.parametrize(
    ("turns", "focal"),
    [
        (("would a 25 be better", "or 50"), 50),
        (("would 25 be ok", "is 35 enough"), 35),
        (("would 25 be better",), 25),
    ],
)
def test_another_length_after_whether_a_lens_covers_is_another_lens_and_no_circle(club, turns, focal):
    *_, found = talk(club, "16mm C on mft, corners?", *turns)
    assert found.intent == "coverage"
    assert f"{focal} mm C-mount lens" in found.reading
    assert "image circle" not in found.reading


@pytest.mark.parametrize("reply", ["20", "it is 20 mm", "about 20"])
def test_a_circle_that_was_asked_for_is_told_by_its_number_alone(club, reply):
    *_, found = talk(club, "25mm c on mft, does it cover", reply)
    assert "20 mm image circle" in found.reading


def test_whether_the_ring_changes_on_another_body_is_told_by_its_ring(club):
    *_, found = talk(club, "35 mm PL on L", "will the corners be black", "and on my E aps-c", "does the ring change")
    assert "PL to E ring" in flat(found)


def test_the_squeeze_of_an_anamorphic_stays_with_it(club):
    *_, found = talk(club, "anamorphic 2x front on 85 m42, MFT", "horizontal like")
    assert found.lines[0].text.startswith("Drawn wide again by 2")


def test_a_body_stays_what_it_was_told_to_be_though_its_mount_has_few_so_large(club):
    *_, cover, found = talk(club, "13mm D lens on 1 inch sensor C camera", "how much of the frame", "infinity?")
    assert cover.question.body.ids == found.question.body.ids == ("c",)
