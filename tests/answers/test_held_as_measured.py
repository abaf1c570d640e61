"""A lens without a mount whose flange to image was measured: the holder judged, and its stack for close-ups."""

from __future__ import annotations

import pytest

from tests.answers.picture import close, flat, numbers


@pytest.mark.parametrize(
    ("asked", "holder"),
    [
        ("65mm f1.3 projector lens on E, 41mm flange to image", 23.0),
        ("window test done: image 38mm behind the shoulder of the 50/1.4 projector lens. E body, infinity??", 20.0),
        ("projector lens 90mm on RF, 70 mm from flange to image, infinity possible?", 50.0),
    ],
)
def test_a_holder_of_what_is_left_reaches_infinity(talked, asked, holder):
    found = talked(asked)
    assert [row["verdict"] for row in found["chains"]] == ["infinity"]
    assert close(holder) in [row[0] for row in numbers(found, "stack_mm")]


def test_it_is_reasoned_from_after(talked):
    found = talked("projector lens 65mm f1.3 on E, go", "41mm", "why")
    assert "a ring of 23 mm to be made" in flat(found)
    assert "own mount" not in flat(found)


def test_one_too_short_is_judged_on_the_flange(talked):
    found = talked("does a 50mm projector lens reach infinity on MFT, 15mm flange to image")
    assert [row["verdict"] for row in found["chains"]] == ["macro-only"]
    assert close(15 - 19.25) in [row[0] for row in numbers(found, "ring_thickness_mm")]


def test_travel_ends_near(talked):
    found = talked("65mm projector lens, 14mm of travel. how close")
    least, most, *_ = numbers(found, "near_from_sensor_mm")[0]
    assert least < 2 * 65 + 14 + 65**2 / 14 < most
    assert "14 mm of travel" in flat(found)


def test_close_up_its_stack_hangs_on_what_was_measured(talked):
    found = talked("50mm projector lens 1:1 on E, flange to image 46mm. how long a stack")
    assert close(46 + 50 - 18) in [row[0] for row in numbers(found, "stack_mm")]
    found = talked("shooting 50mm proj lens at 1:1 on E. parts")
    assert "flange to image, plus 50 mm of extension" in flat(found)
    assert "paper" in flat(found)


@pytest.mark.parametrize(
    ("asked_for", "barrel"),
    [
        ("sleeve for a 30.07 barrel. what bore do i turn it", 30.07),
        ("printing a holder for a 29.36 projector lens, what inner diameter", 29.36),
        ("sleeve bore for my 38.1 lens barrel", 38.1),
    ],
)
def test_a_plain_barrel_slides_in_its_sleeve(talked, asked_for, barrel):
    found = talked(asked_for)
    least, most = numbers(found, "bore_mm")[0]
    assert barrel < least < most <= barrel + 0.25
    assert "clamp" in flat(found)


@pytest.mark.parametrize("then", ["and if i add 5mm ring", "with a 5mm tube", "and with 5mm of tube behind"])
def test_a_tube_put_in_after_the_picture_asks_how_near(talked, then):
    found = talked("does a 25mm C lens cover RF", then)
    assert found["intent"] == "macro-distance"
    assert close(0.2) in [row[0] for row in numbers(found, "magnification")]


def test_a_helicoid_past_infinity_tells_how_near_it_brings_the_lens(talked):
    found = talked("m42 helicoid 25-55 and a 1mm M42-E ring, 135 m42 lens, where is infinity")
    out = 55 + 1 - (45.46 - 18)
    least, most, *_ = next(row for row in numbers(found, "near_from_sensor_mm", "fully out"))
    assert least < 2 * 135 + out + 135**2 / out < most
    assert "helicoid fully out" in flat(found)


@pytest.mark.parametrize(
    ("text", "seat"),
    [
        ("ring measured 27.30 M42 to E, do i still get infinity", 27.3),
        ("adapter measures 10.71 LTM to E, 50mm, infinity?", 10.71),
        ("my ring calipers 25.40 M42 to RF, infinity with a 35?", 25.4),
    ],
)
def test_a_reading_before_the_two_mounts_of_a_ring_is_that_of_the_ring(asked, text, seat):
    found = asked(text)
    assert f"your {seat:g} mm ring" in flat(found)
