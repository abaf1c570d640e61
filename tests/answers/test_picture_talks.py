"""Talks that wander from the picture to light, close-ups and back: what each turn keeps, and its numbers."""

from __future__ import annotations

from math import hypot, log2

import pytest

from engine.render.record import record_of
from tests.answers.picture import numbers
from tests.answers.talks import flat, talk

M42_ON_E = "58mm f2 m42 on an e mount full frame"
ND_AT_25P = f"{M42_ON_E}, full sun, what nd do i need at f2.8 at 25p"
BELLOWS = "50mm f2.8 enlarger lens m39 on e mount full frame on a 35 to 140 mm bellows: how close"


def _told(club, answer, name, case=""):
    return [(low + high) / 2 for low, high in numbers(record_of(answer, club.knowledge), name, case)]


@pytest.mark.parametrize(
    "turn",
    [
        "my vari nd only goes 2 to 5 stops, enough?",
        "is a variable nd from 2 stops to 5 stops enough",
        "a vari nd, 2-5 stops",
    ],
)
def test_a_variable_filter_goes_to_the_larger_of_its_two_ends(club, turn):
    *_, last = talk(club, f"{M42_ON_E}, nd for full sun at f2.8 iso 800 50p", turn)
    assert "5 stops of ND leave 3.4 stops too much light" in flat(last)


def test_a_crop_told_counts_for_field_and_depth(club):
    first = "75mm f1.4 c mount lens on apsc e mount"
    *_, field = talk(club, f"{first}, there is a 1.2 crop, equivalent?", "and at 1 m")
    assert "Micro" not in field.reading
    assert _told(club, field, "field_width_mm")[0] == pytest.approx(
        23.6 / 1.2 / 0.0897, rel=0.02
    )  # m of 1 m from the sensor
    whole, cropped, again = talk(club, f"{first}, dof at 2 m f2", "with a 1.2x crop", "and without the crop")
    ratio = _told(club, whole, "hyperfocal_mm")[0] / _told(club, cropped, "hyperfocal_mm")[0]
    assert ratio == pytest.approx(1 / 1.2, rel=0.01)
    assert _told(club, again, "dof_mm") == _told(club, whole, "dof_mm")


@pytest.mark.parametrize("crop", ["there is a 1.2 crop", "a 1.2 crop in 4k", "it has a 1.2 crop", "4k60 is a 1.2 crop"])
def test_a_crop_behind_an_article_is_no_stop(club, crop):
    (found,) = talk(club, f"75mm f1.4 lens on apsc, {crop}, equivalent?")
    assert "f/1.2" not in found.reading
    assert "1.2 crop" in found.reading


@pytest.mark.parametrize(
    "told", ["1.4x digital teleconverter", "in camera teleconverter 1.4x", "1.4x teleconverter digital"]
)
def test_a_digital_teleconverter_is_a_crop_and_costs_no_light(club, told):
    (found,) = talk(club, f"25mm f1.4 on mft, {told}, equivalent")
    assert "slower" not in flat(found)
    assert _told(club, found, "equivalent_focal_mm")[0] == pytest.approx(25 * 1.4 * 43.27 / hypot(17.3, 13), rel=0.01)


def test_what_a_bellows_holds_is_as_far_out_in_every_answer(club):
    close, light, deep, half, lost = talk(
        club, BELLOWS, "light loss there", "how thick is the sharp zone at f8", "and at 100", "light loss"
    )
    x = 18 + 140 - 47.5  # register and draw less what is usual from flange to image
    for answer in (close, light, deep):
        assert _told(club, answer, "magnification", "bellows at 140 mm" if answer is not deep else "140 mm")[-1] == (
            pytest.approx(x / 50, rel=0.01)
        )
    assert _told(club, half, "magnification")[0] == pytest.approx((x - 40) / 50, rel=0.01)
    assert f"{2 * log2(1 + (x - 40) / 50):.1f} stops lost" in flat(lost)


@pytest.mark.parametrize("turn", ["10mm one of the same series?", "a 10mm one", "the 10", "my 10"])
def test_another_lens_is_no_image_circle(club, turn):
    *_, last = talk(club, "does a 16mm f1.8 c mount lens cover mft", turn)
    assert "image circle" not in last.reading
    assert "10 mm C-mount lens" in last.reading
    if "one" in turn:
        *_, last = talk(club, "does a 16mm f1.8 c mount lens cover mft", "i measured 13.5mm across", turn)
        assert "10 mm image circle" not in last.reading


@pytest.mark.parametrize(
    ("turn", "stops"), [("iso 800 is the base in log tho", 9.4), ("at iso 400", 8.4), ("cloudy", 4.4)]
)
def test_which_filter_is_asked_still_as_a_setting_changes(club, turn, stops):
    *_, last = talk(club, f"{M42_ON_E}, full sun, what nd do i need at f2.8", turn)
    assert _told(club, last, "nd_stops")[0] == pytest.approx(stops, abs=0.05)


@pytest.mark.parametrize(
    "turn",
    [
        "without the nd then",
        "i dont have an nd, what can i do",
        "no nd at hand",
        "can i do it without the nd",
        "and without a filter",
    ],
)
def test_without_a_filter_the_light_is_taken_up_otherwise(club, turn):
    *_, last = talk(club, ND_AT_25P, turn)
    assert last.intent == "exposure-nd"
    assert "Without a filter 6.4 stops too much light: close to f/26, or 1/4200 s." in flat(last)
    assert "full sun" in last.reading


@pytest.mark.parametrize(
    ("turns", "shutter"),
    [
        (["25p under led lights, 50hz, what shutter against flicker"], "1/50 s, 180 degrees at 25 a second"),
        (["what shutter angle at 24p in a 50hz country"], "1/50 s, 172.8 degrees at 24 a second"),
        (["what shutter angle at 24p in a 50hz country", "and in 60 hz"], "1/60 s, 144 degrees at 24 a second"),
        ([ND_AT_25P, "now indoors", "lights flicker, its 50hz here, what shutter", "at 60p?"], "1/100 s, 216 degrees"),
    ],
)
def test_lamps_and_their_mains_tell_the_shutter(club, turns, shutter):
    *_, last = talk(club, *turns)
    assert shutter in flat(last)
    assert "full sun" not in flat(last)


def test_which_shutter_for_a_rate_is_asked_of_light_beside_lens_and_body(club):
    (found,) = talk(club, f"{M42_ON_E}. what shutter for 25p")
    assert flat(found).startswith("1/50 s: 180 degrees at 25 frames a second.")


@pytest.mark.parametrize(
    ("turn", "kept"), [("no 2.0", "at f/2"), ("no 5mm", "5 mm extension tube"), ("nope 5.6", "at f/5.6")]
)
def test_a_number_behind_no_puts_right_and_leaves_nothing_away(club, turn, kept):
    *_, last = talk(club, "75mm f1.4 c mount on apsc e mount with a 10mm tube, how deep is it at f2.8", turn)
    assert kept in last.reading
    assert "extension tube" in last.reading
    assert "without" not in last.reading


def test_a_close_up_lens_goes_on_a_lens_that_is_not_turned_round(club):
    *_, last = talk(
        club,
        "how close does a 28mm m42 lens reversed get on an e mount apsc body",
        "what about a +10 diopter on my 100mm instead",
    )
    assert "reversed" not in last.reading
    assert _told(club, last, "magnification")[0] == pytest.approx(1, rel=0.01)


def test_a_shutter_metered_before_is_longer_at_either_end_of_the_bellows(club):
    *_, last = talk(club, BELLOWS, "light loss there", "so what shutter if it metered 1/60 before")
    assert "1/60 s metered without it becomes 1/6 s" in flat(last)
    assert "full sun" not in flat(last)


def test_what_part_is_lit_warns_of_no_projector(club):
    _, part, left = talk(
        club, "D-mount 13mm f1.9 on my mft camera, does it cover", "hmm what part of it is lit", "how many mp from 16"
    )
    assert "projector" not in flat(part)
    assert flat(part).startswith("Share of the frame lit")
    assert "16 megapixels" in left.reading


def test_the_hyperfocal_distance_of_the_answer_before_is_told_in_metres(club):
    *_, last = talk(club, f"{M42_ON_E}, how deep is the focus at 2m f2.8", "and hyperfocal for that?")
    assert flat(last).startswith("Hyperfocal distance: 40 m")


@pytest.mark.parametrize(
    ("say", "focal", "stop"),
    [("f105 2.5 on apsc, equivalent", 105, "f/2.5"), ("f50 1.4 lens on mft, equivalent", 50, "f/1.4")],
)
def test_a_length_told_as_f_and_a_number_is_no_stop(club, say, focal, stop):
    (found,) = talk(club, say)
    assert f"{focal} mm {stop} lens" in found.reading


def test_a_pinhole_told_as_f_and_a_number_is_a_stop(club):
    (found,) = talk(club, "pinhole f150 on mft, exposure in full sun")
    assert "f/150" in found.reading


@pytest.mark.parametrize("say", ["16mm cine lens on MFT equivalent", "a 16mm film lens on mft equivalent"])
def test_a_cine_lens_told_by_its_film_is_of_that_length_where_one_is_wanted(club, say):
    (found,) = talk(club, say)
    assert _told(club, found, "equivalent_focal_mm")[0] == pytest.approx(32, rel=0.01)


def test_the_film_of_a_row_of_lenses_is_no_lens_more(club):
    (found,) = talk(club, "16mm lenses: 10mm, 25mm, 75mm c mounts on mft, equivalents")
    assert "16 mm" not in found.reading
    assert {round(one) for one in _told(club, found, "equivalent_focal_mm")} >= {20, 50, 150}


@pytest.mark.parametrize(
    "turn", ["background blur at 5m behind", "how blurry is the wall 5 m behind", "how soft is a tree 5 m behind her"]
)
def test_what_stands_behind_leaves_the_subject_where_it_is(club, turn):
    *_, found, again = talk(club, "75mm f1.4 on apsc, portrait at 2 m, how deep", turn, "and at f4")
    for answer in (found, again):
        assert "at 2 m" in answer.reading
        assert "focused at 2 m, a point at 7 m" in flat(answer)


@pytest.mark.parametrize("say", ["does haze inside a lens matter", "internal haze on a 50mm m42, does it show"])
def test_haze_is_told_of_as_the_picture_shows_it(club, say):
    (found,) = talk(club, say)
    assert "black turns grey" in flat(found)
    assert "hazy sun" not in found.reading


def test_yellowed_glass_asked_of_light_is_told_in_light(club):
    *_, last = talk(
        club, "24mm on e mount full frame, will a polarizer vignette", "yellow glass in the lens, does that cost light"
    )
    assert last.intent == "exposure-nd"
    assert "Up to a stop" in flat(last)


def test_each_of_three_lenses_on_its_own_frame_has_its_depth(club):
    (found,) = talk(club, "35mm f2 on full frame vs 25mm f1.4 on mft vs 23 f1.4 apsc, dof at 1.5 m")
    assert len(_told(club, found, "dof_mm")) == 3


FRONTS = "i have lenses with 40.5, 49, 52 and 58 mm fronts and 67 filters, what step rings"


@pytest.mark.parametrize("turn", ["and only for the 49 and the 52", "and for a 49 and a 52 lens?", "just 49 and 52"])
def test_fronts_named_again_are_those_alone(club, turn):
    *_, last, stacked = talk(club, FRONTS, turn, "can i stack them")
    for answer in (last, stacked):
        assert "49 to 67 mm and 52 to 67 mm, 2 rings" in flat(answer)


def test_a_larger_size_after_fronts_is_another_filter(club):
    *_, last = talk(
        club,
        "my lens has 40.5mm front and i have 67 filters, what step ring",
        "and for a 49 and a 52?",
        "is a 77 better idea",
    )
    assert "one 77 mm filter" in flat(last)


@pytest.mark.parametrize(
    "turn",
    [
        "which should i take to film a room 4 m wide from 3m away",
        "what focal length do i need to see 4 m across from 3 m",
    ],
)
def test_a_field_so_far_off_asks_for_a_focal_length_in_a_talk(club, turn):
    *_, last = talk(club, "16mm f1.8 c mount on mft, does it cover", "10mm?", turn)
    m = 17.3 / 4000
    assert _told(club, last, "focal_length_mm")[0] == pytest.approx(3000 / (2 + m + 1 / m), rel=0.01)
    assert flat(last).startswith("4 m at 3 m")


def test_a_native_lens_that_looks_the_same_is_the_equivalent(club):
    *_, last = talk(
        club,
        "58mm f2 m42 on e mount full frame, dof at 2 m f8",
        "and on apsc crop mode",
        "what would a native lens have to be to look the same",
    )
    assert last.intent == "crop-equivalent"
    assert _told(club, last, "equivalent_focal_mm")[0] == pytest.approx(58 * 1.53, rel=0.02)


def test_a_hood_is_as_long_as_the_beam_to_the_corner_leaves_room(club):
    *_, hood, longer, wide, small = talk(
        club,
        "24mm f2.8 on e mount full frame, will a polarizer vignette",
        "hood?",
        "for 50mm then",
        "and at f2",
        "on apsc",
    )
    assert _told(club, hood, "hood_mm")[0] == pytest.approx((52 - 24 / 2.8) * 24 / 43.27, rel=0.01)
    assert _told(club, longer, "hood_mm")[0] == pytest.approx(52 * 50 / 43.27, rel=0.01)
    assert _told(club, wide, "hood_mm")[0] == pytest.approx((52 - 25) * 50 / 43.27, rel=0.01)
    assert _told(club, small, "hood_mm")[0] == pytest.approx((52 - 25) * 50 / 28.3, rel=0.01)


def test_a_wider_hood_may_be_longer(club):
    first, other = (
        talk(club, f"50mm f2 on full frame, how long may a hood of {width} mm thread be")[0] for width in (49, 58)
    )
    assert _told(club, first, "hood_mm")[0] < _told(club, other, "hood_mm")[0]


@pytest.mark.parametrize(
    ("say", "least"),
    [
        (
            "35mm f2 on full frame vs 25mm f1.4 on mft, which has less depth of field at 2 m",
            "25 mm f/1.4 at 2 m, Four Thirds",
        ),
        ("50mm f1.4 or 85mm f1.8 on full frame at 3 m, which is shallower", "85 mm f/1.8 at 3 m, full frame"),
    ],
)
def test_which_lens_is_least_deep_is_told_first(club, say, least):
    (found,) = talk(club, say)
    assert flat(found).startswith(f"Least deep first: {least}")


def test_a_frame_that_one_of_several_lenses_is_on_is_no_other_body(club):
    *_, last = talk(
        club,
        "35mm f2 on full frame vs 25mm f1.4 on mft",
        "which has shallower dof",
        "so if iso 400 on the ff what on the other",
    )
    assert "full frame body" not in last.reading
    assert "Micro Four Thirds body" in last.reading


@pytest.mark.parametrize("turn", ["and wide open vs stopped down, any diffrence?", "what if i stop down"])
def test_stopping_down_after_what_is_lit_is_asked_of_the_corners(club, turn):
    *_, last = talk(club, "25mm f1.4 c mount lens, will it cover my mft body", turn)
    assert last.intent == "coverage"
    assert flat(last).startswith("Corners that blacken as one stops down")


@pytest.mark.parametrize(("turns", "count"), [(["plus the nd"], 2), (["plus the nd", "and a third filter"], 3)])
def test_a_filter_more_before_the_lens_is_counted(club, turns, count):
    *_, last = talk(club, "24mm on e mount full frame, will a polarizer vignette", *turns)
    assert flat(last).startswith(f"{count} before a 24 mm on full frame")


def test_diffraction_is_asked_of_the_stop_that_counts_on_the_bellows(club):
    *_, last = talk(club, BELLOWS, "i set the lens to f8, whats the effective", "is that too soft by diffraction")
    assert last.intent == "depth-of-field"
    assert "At 2.2x f/8 counts as f/26" in flat(last)


def test_what_stands_behind_a_subject_on_tubes_is_told_from_where_they_bring_it(club):
    *_, last = talk(
        club,
        "75mm f1.4 c mount on apsc e mount with a 10mm tube, how deep is it at f2.8",
        "background blur at 5m behind",
    )
    assert "focused at 72 cm, a point at 5.72 m" in flat(last)


def test_the_next_lens_of_a_row_is_for_the_same_film(club):
    *_, found, wide = talk(
        club,
        "16mm lens from a 16mm cine camera on mft, does it cover",
        "10mm one of the same series?",
        "16mm f1.4 lens, does it cover mft",
    )
    assert "10 mm lens made for 16 mm film" in found.reading
    assert "film" not in wide.reading


def test_a_lens_told_by_its_length_and_stop_is_not_for_the_film_of_that_width(club):
    (found,) = talk(club, "does a 16 mm f/1.4 lens cover mft")
    assert "16 mm film lens" not in flat(found)


def test_a_field_wanted_in_a_crop_is_that_of_the_crop(club):
    *_, last = talk(
        club, "16mm f1.8 c mount on mft with 1.4x crop, does it cover", "which lens do i need to see 4 m wide from 3 m"
    )
    assert _told(club, last, "focal_length_mm")[0] == pytest.approx(12.9 / 1.4, rel=0.01)


def test_a_crop_on_top_of_the_frame_stays_on_top(club):
    *_, first, again = talk(club, "300mm f4 on mft with a 1.4x", "crop 2x digital on top", "and equivalent of that")
    for answer in (first, again):
        assert 1679 in {round(one) for one in _told(club, answer, "equivalent_focal_mm")}


def test_the_nearest_distance_told_takes_the_place_of_what_filled_the_frame(club):
    *_, last = talk(club, "300mm f4 on mft", "bird 30cm long fills what at 20m", "min focus is 2.5 m, magnification")
    assert "of field" not in last.reading
    assert 0.14 < _told(club, last, "magnification")[0] < 0.18


@pytest.mark.parametrize("turn", ["800 native", "base is 800", "native iso 800"])
def test_a_native_speed_is_an_iso(club, turn):
    *_, last = talk(club, "16mm f2 c mount on mft, nd at f4 24p sunny iso 400", turn)
    assert "ISO 800" in last.reading
    assert _told(club, last, "nd_stops")[0] == pytest.approx(8.4, abs=0.05)


def test_a_factor_told_alone_is_that_of_the_reducer(club):
    _, usual, told, deep = talk(
        club, "80mm f2.8 lens on full frame, equivalent", "with a focal reducer", ".7", "hyperfocal at f11 with that"
    )
    assert "56.8 mm" in flat(usual)
    assert "0.7x focal reducer" in told.reading
    assert "56 mm f/7.7" in flat(deep)


def test_a_reducer_told_without_its_factor_counts_for_depth_by_the_usual_one(club):
    (found,) = talk(club, "80mm f2.8 on full frame with a focal reducer, hyperfocal at f11")
    assert "56.8 mm f/7.8" in flat(found)


def test_a_scene_after_what_is_sharp_there_is_told_at_that_distance(club):
    *_, last = talk(club, "50mm f1.8 m42 on x mount apsc, dof at 1.5m f2", "how wide a scene is that")
    assert "At 1.5 m, 50 mm sees a field of 66 x 44 cm" in flat(last)


def test_a_distance_of_a_field_is_that_of_what_is_sharp_next(club):
    *_, last = talk(
        club, "16mm f2 c mount on mft, equivalent", "how wide at 10 ft", "sharp from where to where at f4 focused there"
    )
    assert last.intent == "depth-of-field"
    assert "3.048 m" in last.reading


@pytest.mark.parametrize("first", ["25mm f1.4 on mft", "75mm f1.4 lens on apsc"])
@pytest.mark.parametrize("turn", ["with the 1.3x crop", "in 4k60 mode i lose 1.3x", "a further 1.3x crop in video"])
def test_a_crop_told_by_its_factor_is_of_the_frame_that_is_talked_of(club, first, turn):
    whole, cropped = talk(club, f"{first}, equivalent", turn)
    ratio = _told(club, cropped, "equivalent_focal_mm")[0] / _told(club, whole, "equivalent_focal_mm")[0]
    assert ratio == pytest.approx(1.3, rel=0.01)
    assert "slower" not in flat(cropped)


def test_on_full_frame_the_same_factor_names_the_frame(club):
    *_, last = talk(club, "50mm f1.8 m42 on e mount full frame, equivalent", "with the 1.3x crop")
    assert round(_told(club, last, "equivalent_focal_mm")[0]) == 65


@pytest.mark.parametrize(
    ("turn", "stop"), [("ok the 85. hyperfocal f8", "f/8"), ("85 f5.6", "f/5.6"), ("the 85 at f4", "f/4")]
)
def test_a_lens_of_before_told_with_another_stop_is_closed_so_far(club, turn, stop):
    *_, last = talk(
        club, "85mm f1.4 k lens on z full frame, dof at 2 m", "and a 135 f2.8 instead", "the 135 at f4", turn
    )
    assert "85 mm f/1.4 K-mount lens" in last.reading
    assert f"at {stop}" in last.reading


def test_a_squeeze_stays_with_its_lens(club):
    *_, last = talk(
        club,
        "50mm f1.8 m42 with a 2x anamorphic on e mount full frame, what does it frame like",
        "does it cover",
        "equivalent again",
    )
    assert "what 25 mm would" in flat(last)
