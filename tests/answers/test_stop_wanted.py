"""Which stop is wanted: for a depth at a magnification, for a second thing; and several stops told. By hand."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers

BLUR = 43.267 / 1442


@pytest.mark.parametrize(
    "text", ["what f to hold 10 mm deep at 1:4 on ff", "10 mm deep at 0.25x, full frame, which f?"]
)
def test_for_a_depth_at_a_magnification(talked, text):
    found = talked(text)
    assert numbers(found, "f_number")[0] == (close(10 * 0.25**2 / (2 * BLUR * 1.25)),) * 2


def test_for_a_second_thing_farther_off(talked):
    found = talked("focus at 3m with a 50 f1.4 ff, at what stop is the 4m wall sharp")
    least, greatest = numbers(found, "f_number")[0]
    assert least <= 2500 * 1000 / (BLUR * 4000 * 2950) <= greatest
    assert greatest / least < 1.25


def test_the_widest_stop_and_another_that_is_supposed(talked):
    found = talked("hyperfocal for 12mm f2.8 on s16, and what if 5.6")
    first, second = (row[0] for row in numbers(found, "hyperfocal_mm"))
    assert (first - 12) / (second - 12) == close(2)


def test_another_frame_told_alone_keeps_what_is_asked(talked):
    found = talked("25/0.95 at 70 cm on mft depth", "on a 2/3 chip", "at 1.4 m")
    assert found["intent"] == "depth-of-field"
    assert "2/3 in" in found["reading"]


def test_another_size_told_alone_is_no_glass(talked):
    found = talked("how thick is the sharp bit at 0.2x f8 aps-c", "0.4x")
    assert numbers(found, "dof_mm")[0] == (close(2 * 8 * 28.3 / 1442 * 1.4 / 0.16, rel=0.01),) * 2


def test_a_helicoid_that_cannot_reach_the_size_says_so(talked):
    found = talked("a helicoid 25-55 with a 75mm enlarger lens on E, 1:1 possible?")
    assert "1x is out of reach" in flat(found)


@pytest.mark.parametrize(
    ("text", "size"),
    [
        ("two tubes of 12 and one of 25 behind a 90", 49 / 90),
        ("how close with a 28mm and 10mm ring on s35", 10 / 28),
        ("coin 20mm should be 15mm on the sensor. 60mm lens, how much tube", 0.75),
    ],
)
def test_which_number_is_whose(talked, text, size):
    assert close(size) in [row[0] for row in numbers(talked(text), "magnification")]


def test_a_lens_on_a_reverse_ring_is_reversed(talked):
    assert "24 mm lens reversed" in flat(talked("reverse ring + 24mm + EF body, how large, how far"))


def test_pictures_to_be_put_together_in_depth(talked):
    found = talked("how many shots to stack 12mm deep at 1:1 f5.6 ff")
    each = 2 * 5.6 * BLUR * 2
    assert numbers(found, "step_mm")[0] == (close(0.75 * each),) * 2
    assert numbers(found, "frame_count") == [(24, 24)]


def test_each_lens_at_its_own_distance(talked):
    found = talked("so which is shallower, 50 1.2 at 1m or 85 1.8 at 1.7m, ff")
    near = numbers(found, "dof_near_mm", "85 mm f/1.8 at 1.7 m")
    assert len(near) == 1
    assert 1670 < near[0][0] < 1690


def test_another_chip_told_by_its_figure(talked):
    assert "1/3" in talked('6mm f1.2 1/2" cctv hyperfocal', "and if the chip is 1/3")["reading"]


def test_a_stop_behind_a_body_is_set_and_no_lens(talked):
    found = talked("90mm f4 at 1 m full frame, dof", "f22", "on mft f11")
    assert [row["case"] for row in found["quantities"]["dof_mm"]] == ["90 mm f/11 at 1 m, Four Thirds"]


def test_a_wider_stop_than_the_one_told_with_the_lens_is_one_more(talked):
    found = talked("135mm 5m f4 apsc dof in cm, then at f2.8")
    first, second = (row[0] for row in numbers(found, "dof_mm"))
    assert first > 1.3 * second
