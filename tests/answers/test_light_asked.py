"""Light as it is asked for and told, the numbers worked by hand."""

from __future__ import annotations

from math import hypot, log2

import pytest

from engine.ask import Desk
from engine.render.terminal import plain_text
from tests.answers.picture import FILTERS, LENSES, close, flat, numbers, one


@pytest.mark.parametrize(
    ("text", "stops"),
    [
        ("which ND for f/1.4 in full sun at 1/50 ISO 800", 15 + 3 - log2(1.4**2 * 50)),
        ("nd for the avocet in full sun, 1/50, iso 100", 15 - log2(1.4**2 * 50)),
        ("nd for the avocet at f/4 in snow at 1/50 iso 100", 16 - log2(16 * 50)),
        ("nd for the avocet in full sun at 1/50 iso 100 f/2", 15 - log2(4 * 50)),
        ("t2.2 in full sun at 1/50 ISO 800, which ND", 18 - log2(2.2**2 * 50)),
        ("EV 12 f/2.8 1/50 ISO 400 how much nd", 14 - log2(2.8**2 * 50)),
        ("nd for the avocet with a 0.71x reducer in full sun, 1/50, ISO 800", 18 - log2((1.4 * 0.71) ** 2 * 50)),
        ("nd for the dunlin in full sun at 25 fps 180 degrees ISO 400", 17 - log2(1.9**2 * 50)),
    ],
)
def test_density_is_the_scene_less_what_the_setting_takes(asked, text, stops):
    found = asked(text)
    assert one(found, "nd_stops") == pytest.approx(stops, abs=1e-6)
    assert one(found, "nd_density") == pytest.approx(stops * 0.30103, abs=1e-4)
    assert found["text"].lstrip().startswith(("T2.2", f"{stops:.1f} stops"))


def test_what_is_not_told_of_an_exposure_is_said_to_be_assumed(asked):
    text = flat(asked("nd for the avocet at 1/50"))
    assert "assumed: full sun and ISO 100" in text


@pytest.mark.parametrize(
    ("scene", "least", "greatest"),
    [("candle light", 3, 5), ("a lit room", 5, 7), ("indoors", 5, 7), ("an office", 7, 8), ("overcast light", 12, 12)],
)
def test_a_scene_by_name_gives_the_shutter(asked, scene, least, greatest):
    found = asked(f"shutter speed for the avocet at f/8 in {scene} ISO 1600")
    times = [64 / 2 ** (ev + 4) for ev in (greatest, least)]
    assert numbers(found, "shutter_s")[0] == close(*times)


def test_the_iso_and_the_stop_are_worked_out_where_they_are_asked_for(asked):
    assert one(asked("EV 9, f/2, 1/50: what iso"), "iso") == close(100 * 4 * 50 / 2**9)
    assert one(asked("what aperture for full sun 1/50 ISO 100"), "f_number") == close((2**15 / 50) ** 0.5)


def test_too_little_light_is_answered_by_the_iso_that_would_do(asked):
    found = asked("what exposure for a lit room at f/4 1/50")
    assert found["text"].startswith("No ND")
    assert numbers(found, "iso")[0] == close(100 * 16 * 50 / 2**7, 100 * 16 * 50 / 2**5)


@pytest.mark.parametrize(
    ("own", "told", "total"),
    [
        # 8.4 stops are wanted
        ("I own an ND8 and an ND64", "stack ND64 and ND8: 9 stops, 0.6 stop darker", 9),
        ("I have ND4, ND8 and ND1000", "take ND1000: 10 stops, 1.6 stops darker", 10),
        ("filters: ND400 and ND16", "take ND400", log2(400)),
        ("I have an ND8", "take ND8: 3 stops, 5.4 stops lighter", 3),
    ],
)
def test_density_is_split_over_the_filters_at_hand(asked, own, told, total):
    found = asked(f"{own}, f/1.4 full sun 1/50 ISO 100, which")
    assert told in flat(found)
    assert one(found, "nd_stops", "filters stacked") == close(total)


def test_filters_of_the_gear_file_are_split_over_too(tmp_path):
    path = tmp_path / "gear.yaml"
    path.write_text(LENSES + FILTERS, encoding="utf-8")
    own = Desk(gear=path)
    assert not own.problems
    assert "of yours stack ND 1.8 and ND8" in plain_text(own.ask("nd for the avocet in full sun at 1/50 iso 100"))


def test_strong_density_brings_the_infrared_caution_and_weak_does_not(asked):
    assert "infrared" in asked("nd for f/2 in full sun at 1/50 iso 100")["text"]
    assert "infrared" not in asked("nd for f/8 in full sun at 1/50 iso 100")["text"]


def test_a_fixed_iris_is_said(asked):
    assert "iris is fixed" in asked("nd for the dunlin in full sun at 1/50 iso 100")["text"]


def test_shutter_and_angle(asked):
    assert one(asked("shutter for 24 fps at 172.8 degrees"), "shutter_s") == close(0.02)
    assert one(asked("what is 1/60 at 30 fps in degrees"), "shutter_angle_deg") == close(180)


def test_step_rings_lead_from_the_lens_own_thread(asked):
    found = asked("step ring from the avocet to a 62 mm filter")
    assert "40.5 to 49 mm + 49 to 62 mm" in " ".join(found["text"].split())
    assert "step down" in flat(asked("can I step the avocet to a 37 mm filter with a step ring"))


def test_whether_the_stack_clips_is_told_by_the_rim_it_needs(asked):
    found = asked("does a 40.5 mm filter vignette on the avocet on the skiff")
    least, greatest = numbers(found, "rim_needed_mm")[0]
    assert least < greatest
    assert numbers(found, "rim_clear_mm")[0] == close(35.5, 38.5)
    assert "may clip" in found["text"]


def test_a_filter_behind_the_lens_moves_the_focus_by_a_third_of_it(asked):
    assert one(asked("a 2 mm filter behind the lens: how far does the focus shift"), "glass_shift_mm") == close(
        2 * 0.52 / 1.52
    )


def test_diffraction_and_sensor_glass_are_told_where_they_matter(asked):
    found = asked("will f/22 give diffraction on four thirds")
    blur = hypot(17.3, 13) / 1442
    assert one(found, "diffraction_f_number") == close(blur / (2.44 * 0.00055))
    assert "microns" in asked("does the sensor cover glass blur a f/1.4 lens")["text"]


def test_the_shutter_behind_so_many_stops_of_density(asked):
    found = asked("8 stops nd, what shutter from 1/500")
    assert one(found, "shutter_s") == close(2**8 / 500)


def test_a_t_stop_and_an_f_number_are_so_many_stops_apart(asked):
    found = asked("t3.1 vs f2.8 difference in stops")
    assert one(found, "light_difference_stops") == close(2 * log2(3.1 / 2.8))


def test_a_bellows_at_a_length_is_drawn_so_far(asked):
    found = asked("bellows at 100mm with 50mm lens, how many stops")
    assert one(found, "light_difference_stops", "even pupils") == close(2 * log2(1 + 100 / 50))


@pytest.mark.parametrize(
    ("say", "light"),
    [
        ("f/2.8 outdoors, overcast, 1/50 iso 400", "overcast"),
        ("f/2 lens outdoors under trees (open shade), iso 100, 1/60", "open shade"),
        ("outside on a cloudy day, f4 1/50 iso 100, nd?", "bright cloud"),
        ("f4 1/50 iso 100 outdoors, nd?", "full sun"),
    ],
)
def test_where_the_light_is_counts_only_where_nothing_says_what_it_is(asked, say, light):
    assert light in asked(say)["reading"].replace("-", " ")


@pytest.mark.parametrize(
    "say", ["one reducer 0.71 for EF lenses on MFT, how much should I budget", "reducer 0.71, EF on MFT, cost?"]
)
def test_the_factor_of_a_reducer_is_no_distance_to_the_sensor(asked, say):
    found = asked(say)
    assert "are wanted to the sensor" not in flat(found)
    assert "EF to MFT reducer 0.71x [150 to 650 dollars]" in flat(found)


@pytest.mark.parametrize(
    ("text", "focal", "image"),
    [
        ("100 mm lens pulled to 150 on the bellows, extra exposure?", 100, 150),
        ("10 inches of bellows behind a 6 inch lens, correction?", 6, 10),
        ("6 inch lens racked out to 9, exposure factor?", 6, 9),
        ("front standard is 300 from the back with the 180, compensation?", 180, 300),
        ("80mm f/4 lens 160mm from the film plane: what's the working f", 80, 160),
    ],
)
def test_how_far_a_lens_stands_from_the_film_is_told_in_many_ways(asked, text, focal, image):
    found = asked(text)
    stops = 2 * log2(image / focal)
    assert numbers(found, "light_difference_stops")[1] == close(stops, stops)
    assert f"give {(image / focal) ** 2:.2f}".rstrip("0").rstrip(".") in flat(found)
