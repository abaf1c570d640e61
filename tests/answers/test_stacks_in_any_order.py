"""Stacks told in passing, in whatever order and spelling: where infinity falls on the draw, and how near it comes."""

from __future__ import annotations

import pytest

from tests.answers.picture import numbers

REGISTERS = {"E-mount": 18.0, "Micro Four Thirds": 19.25, "Z-mount": 16.0, "X-mount": 17.7, "RF-mount": 20.0}


@pytest.mark.parametrize(
    ("text", "body", "focal", "image", "out", "rings"),
    [
        ("80 enlarger lens, window image 73mm behind its shoulder. E body + flat m42 ring 1mm + 25-55 helicoid + m39/"
         "m42 ring 1mm. infinity, and how close all the way out", "E-mount", 80, 73, 55, 2),
        ("stack: m42 to Z 1, helicoid 17-31, step ring m39>m42 (1). 50 enlarger lens, register 43.5. inf? nearest?",
         "Z-mount", 50, 43.5, 31, 2),
        ("63mm enlarger lens, flange to image 62 mm. X mount + 25-55 helicoid, 39-42 bush 1mm, m42-X plate of 1.5 mm."
         " what range do I get", "X-mount", 63, 62, 55, 2.5),
        ("helicoid 15-26, 1.5mm flat m42-mft ring, 39-42 bush 1mm on MFT, 50 mm m39 enlarger lens, window image 38mm"
         " behind its shoulder; infinity where, closest?", "Micro Four Thirds", 50, 38, 26, 2.5),
        ("RF + helicoid 12-17 and flat M42 > RF ring (1.5mm) and 39-42 bush 0.5mm. 50 enlarger lens, its image 35.4 mm"
         " behind the flange. range from far to near?", "RF-mount", 50, 35.4, 17, 2),
        ("1mm flat m42-e, m42 helicoid 25 to 55, 1mm bush, my 75 enlarger lens throws a far tree sharp 70 mm behind its"
         " shoulder. what's the range", "E-mount", 75, 70, 55, 2),
    ],
)  # fmt: skip
def test_a_stack_tells_its_setting_for_infinity_and_its_near_end(asked, text, body, focal, image, out, rings):
    found = asked(text)
    assert f"a {body} body" in found["reading"].replace("an ", "a ")
    setting = image - REGISTERS[body] - rings
    assert any(low == pytest.approx(setting, abs=0.01) for low, _ in numbers(found, "helicoid_setting_mm"))
    x = out - setting
    near = 2 * focal + focal * focal / x + x  # thin lens
    told = [
        *numbers(found, "near_from_sensor_mm"),
        *((row["least"], row["greatest"]) for one in found.get("chains") or () for row in
          [(one.get("focus") or {}).get("near_from_sensor_mm") or {"least": 0, "greatest": 0}]),
    ]  # fmt: skip
    assert any(low <= near * 1.02 and high >= near * 0.98 and high < 1.35 * near for low, high in told), told


def test_a_stack_that_is_too_short_says_so_and_names_no_near_end(asked):
    found = asked("1mm flat m42-mft, m42 helicoid 17 to 31, 1mm bush. enlarger lens 63mm, a far tree sharp 60 mm behind"
                  " the shoulder. what's the range")  # fmt: skip
    assert "7.75 mm too short for infinity" in " ".join(str(found["text"]).split())
    assert not numbers(found, "near_from_sensor_mm")


def test_the_body_is_that_of_the_ring_that_ends_on_one_wherever_it_is_told(asked):
    found = asked("what range do I get from a 50mm c mount lens + c-mft cup + 3mm of c spacers")
    assert "on a Micro Four Thirds body" in found["reading"]


@pytest.mark.parametrize(
    ("stack", "rings"),
    [
        ("m42-e flat 1 + helicoid 25-55 + step 39-42 1mm", 2),
        ("m42 25/55 helicoid, 1.5mm 39/42 bush, m42/e flat 1mm", 2.5),
        ("1mm m42 to E flat and m39 - m42 1mm with a 25-55mm helicoid", 2),
        ("m39/42 ring 1mm, 25-55 helicoid, 1 mm board, m42-e plate of 1 mm", 3),
        ("m39-42 1.5, helicoid 25-55 (m42), flat m42 to E 1", 2.5),
        ("25-55 m42 helicoid, 2 mm m42/e flat adapter, m39/42 0.5mm", 2.5),
        ("bush 1, m42-e plate of 1 mm, helicoid 25-55", 2),
    ],
)
def test_every_ring_of_a_stack_counts_however_short_it_is_told(asked, stack, rings):
    found = asked(f"80 enlarger lens, register 74, E body: {stack}. infinity where, how near fully out?")
    assert any(low == pytest.approx(74 - 18 - rings) for low, _ in numbers(found, "helicoid_setting_mm"))
