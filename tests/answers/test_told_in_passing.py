"""What is told in passing, without its word or its unit, and must not be taken for another thing."""

from __future__ import annotations

import pytest

from tests.answers.talks import flat, talk


def value_of(answer, name):
    return [row.value.nominal for row in answer.quantities or () if row.name == name]


@pytest.mark.parametrize("plate", ["a 1mm glassless plate", "a glassless plate, 1mm", "the 1 mm no-glass ring"])
def test_a_limit_within_what_is_told_of_a_ring_parts_no_length_from_it(club, plate):
    (found,) = talk(club, f"FD 135 on an F body with {plate}, where does it run out")
    told = [one.thickness_mm for one in found.question.adapters if one.thickness_mm]
    assert told == [(1.0, 1.0)]
    assert found.question.limits.without_glass


@pytest.mark.parametrize("told", ["helicoid ring gives 6 more", "6mm helicoid", "the helicoid adds 6"])
def test_a_helicoid_may_give_its_travel_without_the_unit(club, told):
    (found,) = talk(club, f"75 on M, close focus .9, {told}. how near")
    lengths = [one.thickness_mm for one in found.question.adapters]
    assert found.question.said("close_focus") == "900 mm"
    assert found.question.said("travel") == "6 mm" or lengths == [(6.0, 6.0)]


def test_a_millimetre_in_words_may_be_thin_too(club):
    (thin,) = talk(club, "plate is five hundredths thin, 20mm on it. still got infinity?")
    assert "0.05 mm too close" in flat(thin)


@pytest.mark.parametrize(
    "lens", ["75mm off a 16mm kit", "16mm neg era, 12mm wide", "a 25mm of 16mm vintage", "25mm f1.4 from a 16mm outfit"]
)
def test_the_days_of_a_format_are_those_of_the_lens(club, lens):
    (found,) = talk(club, f"{lens}, on an mft chip. vignette?")
    assert found.question.lens.format == "16mm"
    assert "Four Thirds needs 21.64 mm" in flat(found)


@pytest.mark.parametrize(
    ("said", "stops"), [("overcrank 25 to 100, same shutter angle, hit in stops", 2), ("24 to 48 fps, stops lost?", 1)]
)
def test_frame_rates_need_no_unit_where_motion_is_slowed(club, said, stops):
    (found,) = talk(club, said)
    assert value_of(found, "light_difference_stops") == [stops]


def test_the_iso_of_a_row_of_settings_needs_no_word_and_is_set_anew(club):
    first, second = talk(club, "full sun, f2, 400, 1/50. ND?", "drop to 100 asa")
    assert first.question.said("iso") == "400"
    assert second.question.said("iso") == "100"
    assert value_of(first, "nd_stops")[0] == pytest.approx(9.36, abs=0.01)


@pytest.mark.parametrize("said", ["75 comes sharp on skyline at 40m engraved", "75 reads 40 m on a star"])
def test_what_has_a_mark_in_metres_is_a_lens(club, said):
    (found,) = talk(club, f"{said}, shim?")
    assert value_of(found, "shim_mm") == [pytest.approx(0.1411, abs=0.001)]


def test_a_chart_near_by_stands_for_no_infinity(club):
    (found,) = talk(club, "only got a star chart at 5m, ok to set flange on a 100?")
    assert flat(found).startswith("No, 5 m is too near for 100 mm")


def test_rings_that_add_up_are_one_tube(club):
    (found,) = talk(club, "105mm lens and a set of rings which add up to 31mm. how near and how large")
    assert pytest.approx(value_of(found, "magnification")[0], abs=0.001) == 31 / 105


def test_a_ring_measured_in_a_talk_may_be_told_with_the_lens(club):
    _, found = talk(club, "50 and 135 in QBM, E body, what ring", "mine measures 26.66, with the 50 what happens")
    assert found.question.adapters[0].thickness_mm == (26.66, 26.66)
    assert found.question.lens.focal_length_mm == 50


def test_another_length_of_a_plain_ring_close_up_is_no_lens(club):
    _, found = talk(club, "50 1.4 C on mft with a 5mm ring, how close and how big", "and a 10?")
    assert 0.2 in [pytest.approx(one, abs=0.001) for one in value_of(found, "magnification")]


def test_glass_is_told_by_its_index(club):
    (found,) = talk(club, "4mm clear behind the lens (n1.517), focus moves how far")
    assert value_of(found, "glass_shift_mm") == [pytest.approx(4 * (1 - 1 / 1.517), abs=0.001)]


def test_where_a_shim_goes_is_told_first(club):
    *_, found = talk(club, "28 has infinity at 2 m, shim?", "where does it go, lens side or camera side")
    assert "on the lens side" in flat(found)[:200]


@pytest.mark.parametrize("word", ["seq", "crate", "state", "bucket"])
def test_an_ordinary_word_is_no_slip_of_a_name(club, word):
    (found,) = talk(club, f"projection lens, 38mm f1.4, onto an RF body for a {word}")
    assert found.unread is None
    assert found.question.lens.focal_length_mm == 38


@pytest.mark.parametrize(
    "said",
    [
        "1 mm filter goes between lens and chip (n 1.52). spacing change?",
        "1 mm glass between the lens and sensor, n 1.52, change in spacing",
        "a 1 mm thick filter sits between lens and imager, refocus by how much",
        "1 mm cover glass in front of my sensor, how much more spacing",
        "1 mm ir cut filter in front of the chip, how much does infinity move",
    ],
)
def test_glass_between_lens_and_sensor_tells_how_much_longer_the_seat_must_be(club, said):
    (found,) = talk(club, said)
    assert value_of(found, "glass_shift_mm") == [pytest.approx(1 - 1 / 1.52, abs=0.001)]
    assert "0.34 mm" in flat(found)[:200]


@pytest.mark.parametrize(
    "said",
    [
        "corrector wants 55, i measured 53.8 with my ring",
        "flattener wants 55 mm, i have 53.8",
        "coma corrector needs 55 mm backfocus, i get 53.8",
        "the corrector needs 55 and the stack comes to 53.8",
        "my corrector wants 55 mm and i come out at 53.8",
    ],
)
@pytest.mark.parametrize("before", [(), ("T2 telescope on a Z",)])
def test_what_is_measured_short_of_what_a_corrector_wants_is_made_up_by_a_spacer(club, said, before):
    *_, found = talk(club, *before, said)
    assert pytest.approx(value_of(found, "shim_mm")[0], abs=0.001) == 1.2


def test_two_focal_lengths_of_lenses_are_no_spacing(club):
    (found,) = talk(club, "need a 35 for E, only have a 28")
    assert found.question.said("total") is None


@pytest.mark.parametrize(
    ("before", "wish"),
    [
        (("85 mm projector lens on L",), "no iris, i want f/8"),
        ((), "my 85mm projection lens has no iris, how do i get f/8"),
        ((), "no diaphragm in the 85mm, want f/8"),
        ((), "enlarger lens 85 mm lost its blades, get f/8?"),
        ((), "85mm f/2 lens with blades stuck, can i get f/8 without the iris"),
    ],
)
def test_a_stop_wanted_of_a_lens_without_an_iris_is_a_hole(club, before, wish):
    *_, found = talk(club, *before, wish)
    assert pytest.approx(value_of(found, "hole_mm")[0], abs=0.01) == 85 / 8
    assert "works at" not in flat(found)


def test_a_projection_lens_of_a_stop_told_works_at_it(club):
    (found,) = talk(club, "85 mm projector lens f/2.8 on E body")
    assert not value_of(found, "hole_mm")


@pytest.mark.parametrize("piece", ["my ring does not screw on fully", "telescope adaptor won't screw on all the way"])
def test_a_thread_that_measures_so_much_before_its_ring_is_no_length_either(club, piece):
    (found,) = talk(club, f"thread measures 41.9 on my ring, {piece}")
    assert found.question.said("thread") == "41.9 mm"


@pytest.mark.parametrize("piece", ["my ring does not screw on fully", "telescope adaptor won't screw on all the way"])
def test_a_thread_that_measures_so_much_is_no_length_of_the_ring(club, piece):
    (found,) = talk(club, f"{piece}, the thread measures 41.9")
    assert found.question.said("thread") == "41.9 mm"
    assert "M42x0.75" in flat(found)


FAR_LIMITS = (
    "everything past 3 meters is blurry", "beyond 3 m all is soft", "nothing past 3m is sharp", "it stops at 3 m",
    "sharp only up to 3 m", "can't focus farther than 3m", "everything after 3 m is out of focus",
    "past about 3 m it gets blurry", "anything further than 3m is mush", "background beyond 3 metres never gets sharp",
    "far things are blurred from 3 m on", "my farthest sharp distance is 3 m",
)  # fmt: skip


@pytest.mark.parametrize("told", FAR_LIMITS)
def test_where_sharpness_ends_sets_a_lens_too_far_out_however_it_is_said(club, told):
    (seated,) = talk(club, f"50 1.8 m42 on E, {told}")
    assert flat(seated).startswith("A 50 mm f/1.8 M42 lens on an E-mount body: stops at 3 m"), flat(seated)[:200]
    (alone,) = talk(club, f"50 1.8 m42, {told}, how thick a shim")
    assert "too close" not in flat(alone).split(".")[0]


def test_what_is_asked_of_depth_at_a_distance_is_no_limit(club):
    (found,) = talk(club, "depth of field 50 1.8 m42 on E at 3 m, what is sharp beyond 3m")
    assert found.intent == "depth-of-field"


def test_glass_before_the_sensor_is_told_behind_the_picture_that_is_asked_about(club):
    (found,) = talk(club, "24 mm K lens with a 2 mm filter between lens and sensor on E, does it vignette")
    assert flat(found).startswith("24 mm K-mount lens: covers")
    assert pytest.approx(value_of(found, "glass_shift_mm")[0], abs=0.001) == 2 * (1 - 1 / 1.52)
