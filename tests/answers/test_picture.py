"""What a lens shows on a sensor, as asked for and told: coverage, light, sharp zone, close up. Numbers by hand."""

from __future__ import annotations

from math import hypot, log2

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.render.terminal import plain_text

LENSES = """\
lenses:
  avocet:
    mount: c
    focal_length: 25 mm
    f_number: f/1.4
    made_for: 16mm
    image_circle: 14 mm
    close_focus: 0.5 m
    collar: 30.5 mm
    rear_reach: 3.9 mm
    front_thread: f40.5x0.5
    near_turn: clockwise
    throw: 200 deg
  godwit:
    mount: m42
    focal_length: 50 mm
    f_number: f/1.8
    made_for: 35mm-full-frame
    close_focus: 0.45 m
    focusing: unit
    hiatus: 2 mm
    front_focal_offset: 30 mm
    pupil_magnification: 1.1
  dunlin:
    mount: d
    focal_length: 12.5 mm
    f_number: f/1.9
    made_for: 8mm
    iris: fixed
bodies:
  skiff:
    mount: e-mount
    format: aps-c-1.5
    pixels: 6000 x 4000
  dory:
    mount: mft-mount
    format: four-thirds
  punt:
    mount: e-mount
    format: 35mm-full-frame
    crops: [aps-c-1.5]
    pixels: 7200 x 4800
"""
FILTERS = """\
filters:
  pale:
    mark: ND8
  deep:
    mark: ND 1.8
"""


@pytest.fixture(scope="module")
def desk(tmp_path_factory):
    path = tmp_path_factory.mktemp("gear") / "gear.yaml"
    path.write_text(LENSES, encoding="utf-8")
    made = Desk(gear=path)
    assert not made.problems
    return made


@pytest.fixture(scope="module")
def asked(desk):
    """The record of a question, with every number of a quantity under `all`."""

    def ask(text):
        return record_of(desk.ask(text), desk.knowledge)

    return ask


def numbers(record, name, case=""):
    """(least, greatest) of each number under this name whose case holds the words."""
    rows = record["quantities"].get(name, [])
    rows = rows if isinstance(rows, list) else [rows]
    out = []
    for row in rows:
        told, value = (row.get("case", ""), row) if isinstance(row, dict) else ("", {"least": row, "greatest": row})
        if case in told:
            out.append((value["least"], value["greatest"]))
    return out


def flat(record):
    """The text of an answer on one line."""
    return " ".join(record["text"].split())


def one(record, name, case=""):
    found = numbers(record, name, case)
    assert found, (name, case, record["quantities"].get(name))
    least, greatest = found[0]
    assert least == pytest.approx(greatest)
    return least


def close(*wanted, rel=1e-3):
    return pytest.approx(wanted if len(wanted) > 1 else wanted[0], rel=rel)


# --- coverage ----------------------------------------------------------------------------------------------------


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


# --- light -------------------------------------------------------------------------------------------------------


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
    assert "40.5 to 52 mm + 52 to 62 mm" in " ".join(found["text"].split())
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


# --- sharp zone --------------------------------------------------------------------------------------------------


def limits(f, n, c, subject, hiatus, p):
    """Near and far from the sensor, from the beam: written apart from the product's formulas."""
    spread = subject - 2 * f - hiatus
    x = (spread - (spread * spread - 4 * f * f) ** 0.5) / 2
    out = []
    for sign in (1, -1):
        # the image at x' where the cone from the pupil, p*f/N wide and p*f + x' away, is c wide at x
        pupil = p * f / n
        image = (x * pupil + sign * c * p * f) / (pupil - sign * c)
        out.append(2 * f + hiatus + f * f / image + image - (image - x) if image > 0 else float("inf"))
    return out


@pytest.mark.parametrize(
    ("blur_words", "blur"),
    [("", hypot(36, 24) / 1442), (", two pixels of blur", 2 * 36 / 7200), (", 0.02 mm circle of confusion", 0.02)],
)
def test_depth_of_field_by_the_lens_own_planes_and_the_blur_asked_for(asked, blur_words, blur):
    found = asked(f"depth of field of the godwit at f/8 at 3 m on the punt{blur_words}")
    near, far = limits(50, 8, blur, 3000, 2, 1.1)
    assert one(found, "dof_near_mm", "at 3 m") == close(near)
    assert one(found, "dof_far_mm", "at 3 m") == close(far)
    assert one(found, "hyperfocal_mm") == close(2500 / (8 * blur) + 50)


def test_feet_are_answered_in_feet(asked):
    found = asked("depth of field of the godwit at f/8 at 10 feet on the punt")
    assert " ft" in found["text"]
    assert " m " not in found["text"]
    assert one(found, "dof_near_mm", "at 10 ft") == close(limits(50, 8, hypot(36, 24) / 1442, 3048, 2, 1.1)[0])


def test_with_tubes_between_the_close_up_depth_is_told(asked):
    found = asked("depth of field of the godwit with 20 mm of tube at f/8 on the punt")
    m, c = 0.4, hypot(36, 24) / 1442
    wanted = 2 * 8 * c * (1 + m / 1.1) / (m * m - (8 * c / 50) ** 2)
    assert one(found, "dof_mm") == close(wanted)


@pytest.mark.parametrize(
    "text",
    [
        "re-mark the scale of the godwit on the punt with a ring 0.2 mm too thin",
        "what do the marks mean on the godwit on the punt with a ring 0.2 mm too thin",
        "where is infinity now on the godwit on the punt with a ring 0.2 mm too thin",
    ],
)
def test_the_scale_is_re_marked_for_a_thin_ring(asked, text):
    found = asked(text)
    f, gap, d = 50, 2, -0.2
    assert one(found, "scale_mark_mm") == close(2 * f + gap + f * f / 0.2 + 0.2)
    for mark in (1000, 3000):
        spread = mark - 2 * f - gap
        x = (spread - (spread**2 - 4 * f * f) ** 0.5) / 2 + d
        assert one(found, "remarked_mm", f"{mark // 1000} m mark") == close(2 * f + gap + f * f / x + x)
    assert "past infinity" in found["text"]


def test_marks_in_feet_direction_and_throw(asked):
    found = asked("focus marks in feet for the avocet on the skiff")
    assert "3 ft ->" in found["text"]
    assert "clockwise" in found["text"]
    assert "degrees from infinity" in found["text"]


def test_an_error_that_is_not_told_is_asked_for(asked):
    assert "By how much" in asked("re-mark the scale of the avocet")["text"]


# --- close up ----------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "text",
    [
        "how close does the godwit focus on the punt with 20 mm of tube at f/8",
        "macro with the godwit and a 20 mm extension tube on the punt at f/8",
        "smallest field of the godwit on the punt with 20 mm of extension at f/8",
    ],
)
def test_the_picture_close_up_at_the_far_end(asked, text):
    found = asked(text)
    case = "at the infinity mark"
    f, gap, a, p, x = 50, 2, 30, 1.1, 20
    assert one(found, "far_from_sensor_mm", case) == close(2 * f + gap + f * f / x + x)
    assert one(found, "magnification", case) == close(x / f)
    assert one(found, "working_distance_mm", case) == close(a + f * f / x)
    assert one(found, "field_width_mm", case) == close(36 * f / x)
    assert one(found, "field_height_mm", case) == close(24 * f / x)
    assert one(found, "effective_f_number", case) == close(8 * (1 + x / f / p))
    assert one(found, "light_difference_stops", case) == close(2 * log2(1 + x / f / p))


def test_tubes_named_alone_go_with_the_ring_that_seats_the_lens(asked):
    found = asked("can the godwit reach infinity on the punt with 20 mm of extension")
    assert found["chains"][0]["verdict"] == "macro-only"
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(20, abs=0.1)
    assert not found["chains"][0]["glass"]


def test_a_subject_that_would_touch_the_lens_is_warned_of(asked):
    text = " ".join(
        asked("does the subject touch the lens with the dunlin and 15 mm of tubes on the dory")["text"].split()
    )
    assert "Caution: at the infinity mark" in text
    assert (
        "Caution: at the infinity mark"
        not in asked("how close does the godwit focus on the punt with 10 mm of tube")["text"]
    )


def test_close_up_lenses_on_an_own_lens_at_infinity_and_at_its_nearest_mark(asked):
    found = asked("+4 close-up lens on the godwit on the punt: how close and how big")
    assert one(found, "working_distance_mm", "at infinity") == close(250)
    assert one(found, "magnification", "at infinity") == close(50 * 4 / 1000)
    assert one(found, "field_width_mm", "at infinity") == close(36 / 0.2)
    spread = 450 - 102
    x = (spread - (spread**2 - 4 * 2500) ** 0.5) / 2
    m = x / 50
    assert one(found, "magnification", "45 cm mark") == close(m + 0.2 * (1 + m))
    assert one(found, "working_distance_mm", "45 cm mark") == close(1 / (4 / 1000 + 1 / (30 + 2500 / x)))


def test_inches_are_answered_in_inches(asked):
    text = asked("how close with the godwit and a 20 mm tube, in inches")["text"]
    assert " in from the sensor" in text
    assert " cm" not in text


def test_unknown_planes_are_said_to_be_assumed_and_known_ones_are_not(asked):
    assert "Assumed by construction" in asked("how close does a 50mm lens focus with a 20 mm tube")["text"]
    assert "Assumed by construction" not in asked("how close does the godwit focus with a 20 mm tube")["text"]
