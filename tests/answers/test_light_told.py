"""Light as it is told in passing: what was metered, filters that do or do not, other glass, what shutters differ by."""

from __future__ import annotations

from math import log2

import pytest

from tests.answers.picture import close, flat, numbers, one


@pytest.mark.parametrize(
    "text",
    [
        "meter says f8 at 1/50, my lens is fixed at f2. which nd",
        "lens is fixed at f2, the meter reads f8 at 1/50, nd?",
        "incident meter f8 iso 100 1/50. lens f2 no iris. which nd",
        "metered f/8 but shooting at f/2, nd needed to keep 1/50",
        "light meter reads 8, lens is 2, how many stops nd",
    ],
)
def test_what_was_metered_is_held_back_to_what_the_lens_opens_to(asked, text):
    assert numbers(asked(text), "nd_stops")[0] == close(4, 4)


@pytest.mark.parametrize(
    ("text", "begins"),
    [
        ("is nd64 enough for f1.9 in sun at 24p iso 100", "No: 6 stops of ND leave 1.6 stops too much light"),
        ("will an nd8 do the job at f4 in shade, 1/50 iso 100", "Yes, and more than enough: 3 stops"),
        ("is nd256 enough for f1.6 in full sun at 1/50 iso 100", "Yes: 8 stops of ND are enough"),
    ],
)
def test_whether_a_filter_is_enough_is_answered_first(asked, text, begins):
    assert flat(asked(text)).startswith(begins)


@pytest.mark.parametrize(
    ("text", "stops"),
    [
        ("f11 is how many stops slower than f2.8", 2 * log2(11 / 2.8)),
        ("how many stops is f/16 from f/4", 4),
        ("stops from 2 to 8?", 4),
        ("90 degrees vs 180 degrees how much less light", 1),
        ("2x converter costs how much light", 2),
    ],
)
def test_stops_between_two_are_told_however_they_are_set_apart(asked, text, stops):
    assert numbers(asked(text), "light_difference_stops")[0] == close(stops, stops)


def test_filters_that_are_not_grey_take_light_too(asked):
    assert numbers(asked("stack nd8 with a polariser, total stops"), "nd_stops")[0] == close(4, 5)
    assert "less than a tenth of a stop" in flat(asked("how much light does a uv filter eat"))


def test_sunny_sixteen_is_worked_out_and_told_by_its_rule(asked):
    found = asked("sunny 16 for iso 400?")
    assert numbers(found, "shutter_s") == [close(256 / 2**17, 256 / 2**17), close(1 / 400, 1 / 400)]


def test_a_reducer_is_what_changes_the_exposure_and_no_crop(asked):
    assert flat(asked("does a focal reducer change my exposure")).startswith("0.71x gains 1.0 stops of light")


def test_a_filter_behind_the_lens_is_told_of_by_the_usual_thicknesses(asked):
    found = asked("can i put the nd behind the lens")
    assert numbers(found, "glass_shift_mm")[1] == close(1 - 1 / 1.52, 1 - 1 / 1.52)


def test_the_iso_of_another_whole_setting(asked):
    found = asked("exposure is right at iso 800 f4 1/60 indoors, whats the iso for f1.4 1/50")
    assert one(found, "iso") == close(800 * (1.4 / 4) ** 2 * 50 / 60)


def test_which_lenses_take_a_filter_is_read_off_their_rims(asked):
    found = flat(asked("which lenses take a 52 mm filter"))
    assert "No mount tells it" in found
    assert "49 mm as well" in found


def test_a_wide_step_is_sold_in_one_ring_too(asked):
    assert "Single rings so wide, 46 to 67 mm" in flat(
        asked("46mm front thread, want to use 67 mm nd, which step ring")
    )


@pytest.mark.parametrize(
    "text",
    [
        "lens has no iris it is f8, meter wants f4, iso 100, what iso",
        "meter says f4, my lens is fixed at f8, iso 100 -> what iso",
    ],
)
def test_the_iso_goes_from_what_was_metered_to_what_the_lens_has(asked, text):
    assert "ISO 100 becomes ISO 400" in flat(asked(text))


def test_an_exposure_value_is_told_for_iso_100(asked):
    assert numbers(asked("lv 10 at f4"), "shutter_s")[0] == close(1 / 64, 1 / 64)
    assert numbers(asked("ev 12 1/64 which stop"), "f_number")[0] == close(8, 8)


def test_the_moon_that_is_exposed_for_is_as_bright_as_in_the_sun(asked):
    assert numbers(asked("can i shoot the moon at f11 iso 100"), "shutter_s")[0] == close(121 / 2**15, 121 / 2**13)
    assert "ND" not in flat(asked("can my 50 reach infinity on the moon, m42 on e"))


@pytest.mark.parametrize("text", ["stars at f2.8 iso 3200", "milky way 24mm f2.8 iso 3200 how long"])
def test_stars_are_exposed_for_as_such_and_never_as_full_sun(asked, text):
    assert numbers(asked(text), "shutter_s")[0] == close(15.68, 62.72)


def test_layers_that_are_counted_are_told_together(asked):
    assert numbers(asked("3 layers of 0.06 mm tape"), "shim_mm")[0] == close(0.18, 0.18)
    assert numbers(asked("sheet is 0.1 mm thick, want 0.1 mm. layers"), "layer_count")[0] == close(1, 1)


def test_what_a_turn_moves_is_no_pitch_to_the_inch(asked):
    assert numbers(asked("lead 6 mm, 90 degrees travel"), "shim_mm")[0] == close(1.5, 1.5)
    assert numbers(asked("3 degrees off, pitch 6 mm a turn, how much is that"), "shim_mm")[0] == close(0.05, 0.05)
    assert "7.5 divisions" in flat(asked("one division of the helicoid 0.02 mm, error 0.15 how many"))


@pytest.mark.parametrize("text", ["infinity at 20.5 of 18-33", "infinity at 20.5 on my 18-33 helicoid"])
def test_what_a_helicoid_has_left_is_told_without_a_lens(asked, text):
    assert flat(asked(text)).startswith("Infinity at 20.5 mm leaves 12.5 mm of its travel")


@pytest.mark.parametrize(("turns", "seconds"), [
    (["50mm enlarger lens on bellows, want 3:1", "meter said 1/15 before i put the bellows on"], 16 / 15),
    (["50mm enlarger lens on bellows at 3:1, f5.6. handheld meter says 1/15, what shutter"], 16 / 15),
    (["100mm on a 50 mm tube on E", "my hand meter says 1/60, so what shutter"], 2.25 / 60),
    (["50mm m42 with 50mm of tubes on X", "i metered 1/125 before adding the tubes"], 4 / 125),
    (["100mm macro on E at 1:1, f8", "meter reading was 1/30 without extension. what do i set"], 4 / 30),
])  # fmt: skip
def test_a_shutter_metered_without_the_extension_is_made_longer_by_it(talked, turns, seconds):
    found = talked(*turns)
    assert found["intent"] == "exposure-nd"
    assert close(seconds) in [row[0] for row in numbers(found, "shutter_s")]


@pytest.mark.parametrize("turn", ["no sorry, 1/125", "i mean iso 400", "and in open shade", "make that 1/100"])
def test_a_filter_is_asked_for_still_where_only_a_setting_changes(talked, turn):
    found = talked("M42 50mm on MFT", "filming in full sun, 1/60, iso 200. nd?", turn)
    assert flat(found).startswith("Stops of ND to hold back, by the f-number")


def test_lenses_that_have_no_iris_count_at_the_stop_they_all_have(talked):
    found = talked("24mm from the 110 slr on MFT, what ring", "filming in full sun, 1/60, iso 200. nd?")
    assert "7.1 stops" in flat(found)
    assert "f/2.8" in flat(talked("24mm from the 110 slr on MFT", "kids play at 3 m, from where to where is it sharp"))
