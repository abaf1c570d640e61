"""Rings told in passing: measured at so many places, told again, made so thick; a spacer asked for beside one."""

from __future__ import annotations

import pytest

from tests.answers.picture import flat, numbers


@pytest.mark.parametrize(
    "text",
    [
        "AR 40mm straight onto EF with a machined 1mm plate. how far can it focus",
        "a turned 1 mm plate under an AR 40 on EF, how far does it go",
    ],
)
def test_a_plate_made_so_thick_is_no_plate_with_so_much_taken_off(asked, text):
    found = asked(text)
    assert found["chains"][0]["verdict"] == "macro-only"
    assert "4.5 mm too far out" in flat(found)


@pytest.mark.parametrize(
    ("text", "off"),
    [
        ("will C/Y 28 on EF w 1.5mm ring hit infinity, ring measures 1.53", 0.03),
        ("a 2mm OM-EF ring, 35mm, mine measures 2.06 at 3 places. infinity?", 0.06),
        ("my M42-X ring is 27.70 at four points. 28mm f2.8 infinity ok?", -0.06),
    ],
)
def test_a_ring_measured_at_so_many_places_is_one_ring_and_no_stop(asked, text, off):
    found = asked(text)
    assert not any(f"at f/{stop}" in found["reading"] for stop in (3, 4))
    error = found["chains"][0]["register_error_mm"]
    assert error["least"] == pytest.approx(off, abs=0.001)


@pytest.mark.parametrize(
    ("text", "right"),
    [
        ("my ring must be 26.21; it's 26.34. how far does a 50 go and what do i take off", 0.13),
        ("the m42-e ring needs to be 27.46, comes out 27.55. 35mm, far limit?", 0.09),
    ],
)
def test_what_a_ring_must_be_is_what_it_should_be(asked, text, right):
    found = asked(text)
    assert "should be" in found["reading"]
    assert f"{right:g} mm" in flat(found)


@pytest.mark.parametrize(
    ("text", "spacer"),
    [
        ("what spacer between a 68.8 visoflex head and plain M to L adapter for infinity", 41.0),
        ("tube between my m39 slr lens and an LTM to E adapter so it reaches infinity?", 16.4),
    ],
)
def test_a_spacer_that_is_asked_for_is_what_the_ring_leaves(asked, text, spacer):
    found = asked(text)
    assert any(low == pytest.approx(spacer, abs=0.1) for low, _ in numbers(found, "ring_thickness_mm"))
    assert f"{spacer:g} mm more between lens and ring" in flat(found)[:300]


@pytest.mark.parametrize(
    "text", ["b4 i buy it, does a 25 c mount reach infinity on z", "how near does a 50 m42 go on E b4 it ends"]
)
def test_before_written_short_is_no_mount(asked, text):
    assert "B4" not in asked(text)["reading"]
    assert "B4" in asked("a b4 zoom on mft, infinity?")["reading"]


@pytest.mark.parametrize(
    "where", ["behind the end of the barrel", "off the rear rim", "past its rear edge", "back from the last ring of it"]
)
def test_an_image_told_from_wherever_the_lens_ends_is_its_flange_to_image(asked, where):
    found = asked(f"75mm projector lens, image is 58mm {where}. E body, infinity?")
    assert "58 mm flange to image" in found["reading"]


def test_a_lens_too_far_out_tells_its_far_end_where_its_own_near_mark_is_not_told(asked):
    found = asked("LTM 35 on m42 body thru a 1mm ring. how close does it get me")
    x = 45.46 - 28.8 + 1
    assert any(low <= 70 + 35 * 35 / x + x <= high for low, high in numbers(found, "far_from_sensor_mm"))


def test_of_rings_told_together_with_a_draw_the_setting_is_that_of_the_draw(asked):
    found = asked("m42 ring 1mm and another ring 1.4 mm under a 17-31 helicoid on E, 50 m42. range?")
    assert any(low == pytest.approx(27.46 - 2.4) for low, _ in numbers(found, "helicoid_setting_mm"))


def test_a_kit_for_a_measured_lens_is_as_long_as_its_image_asks(asked):
    found = asked("shopping list for my 80 enlarger lens on E, flange to image 74")
    assert any(low == high == pytest.approx(56) for low, high in numbers(found, "stack_mm"))
    assert "usually" not in flat(found)


@pytest.mark.parametrize(
    ("told", "off"),
    [("0.2 over", 0.2), ("two tenths under", -0.2), ("is 0.15 over", 0.15), ("five hundredths over", 0.05)],
)
def test_a_ring_so_much_over_or_under_is_off_by_that(asked, told, off):
    found = asked(f"my 28/3.5 om lens, om to mft ring {told}, infinity?")
    assert found["chains"][0]["register_error_mm"]["least"] == pytest.approx(off, abs=0.011)


def test_a_range_before_a_ring_from_mount_to_the_same_mount_is_no_distance(asked):
    found = asked("macro helicoid 18-30 M-M in front of M to E w/ visoflex 65 head. infinity?")
    assert "18..30 mm helicoid" in found["reading"]
    assert found["chains"][0]["verdict"] == "unusable"


def test_tube_for_a_size_starts_from_the_nearest_mark_that_is_told(asked):
    found = asked("i want half life size with my 100mm that stops at 1m. tube?")
    s = 1000 - 200
    own = (s - (s * s - 4 * 100 * 100) ** 0.5) / 2
    assert any(low == pytest.approx(50 - own, abs=0.3) for low, _ in numbers(found, "extension_mm"))


def test_of_several_spacers_each_has_its_far_end(asked):
    found = asked("16mm c lens on mft, spacers 0.5, 1 and 2mm: far limit with each")
    for x in (0.5, 1, 2):
        assert any(low <= 32 + 256 / x + x <= high for low, high in numbers(found, "far_from_sensor_mm"))


def test_a_tube_of_a_length_behind_a_lens_is_a_tube_and_no_image(asked):
    found = asked("40/2 M, closest 0.85 m by itself, with a tube of 10 mm behind it, L: how near and how large")
    assert "10 mm extension tube" in found["reading"]
    assert any(low <= 224 <= high for low, high in numbers(found, "near_from_sensor_mm"))


@pytest.mark.parametrize(
    "text",
    [
        "50mm focused at 30cm from the sensor, magnification?",
        "how big is it with a 50 at 0.3m from the sensor",
        "mag at 300mm from the sensor w/ 50mm? extension?",
    ],
)
def test_what_is_far_from_the_sensor_is_the_subject_and_no_image(asked, text):
    found = asked(text)
    assert "flange to image" not in found["reading"]
    assert any(low == pytest.approx(0.27, abs=0.02) for low, _ in numbers(found, "magnification"))
    assert "44 mm flange to image" in asked("50mm enlarger lens 44mm from the sensor, infinity on E?")["reading"]


def test_the_size_that_one_of_the_tubes_shall_bring_is_not_the_lens_s_own(asked):
    assert "28 mm comes nearest to the 30 mm" in flat(asked("tubes 7/14/28 which one gets my 75mm to about 0.4x"))
    assert "0.14x that the 50 mm lens has by itself" in flat(
        asked("my 50 does 0.14x alone, tubes 12 20 36, which gets how far")
    )


def test_a_helicoid_with_the_ends_of_one_that_carries_both_mounts_needs_no_further_ring(asked):
    found = asked("m42 50 on mft with a 17-30 helicoid, infinity")
    assert any(low == pytest.approx(26.21) for low, _ in numbers(found, "helicoid_setting_mm"))


@pytest.mark.parametrize(
    ("text", "lengths"),
    [
        ("how thick must a T2 ring to L be, and to MFT", (35.0, 35.75)),
        ("how long are the rings P6 to Z and P6 to G", (58.1, 47.4)),
        ("ring length fd to E, also fd to X", (24.0, 24.3)),
    ],
)
def test_rings_of_one_lens_to_several_bodies_are_each_told(asked, text, lengths):
    rings = numbers(asked(text), "ring_thickness_mm")
    assert all(any(low == pytest.approx(one) for low, _ in rings) for one in lengths)


def test_a_ring_to_another_body_stays_the_ring_that_one_has(asked):
    assert "M42 to E-mount adapter" in asked("i have an M42 to E ring, does it go to Z")["reading"]


@pytest.mark.parametrize(
    ("text", "shim"),
    [
        ("my adapter makes 100mm stop at 35m. thickness error", 0.287),
        ("the ring makes a 35mm stop at 6 m, too thick by?", 0.207),
    ],
)
def test_a_lens_that_a_ring_makes_stop_somewhere_is_no_sum(asked, text, shim):
    assert any(low == pytest.approx(shim, abs=0.006) for low, _ in numbers(asked(text), "shim_mm"))
