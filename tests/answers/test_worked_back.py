"""A formula asked the other way round: the lens, frame or glass that it must be for what was seen of it."""

from __future__ import annotations

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import numbers
from tests.desks import desk_of


@pytest.fixture(scope="module")
def club() -> Desk:
    return desk_of()


def first(found, name):
    return numbers(found, name)[0][0]


def told(club, text):
    return record_of(club.ask(text, Talk()), club.knowledge)


@pytest.mark.parametrize(
    ("text", "name", "value"),
    [
        ("got 0.5 times from 20 mm of rings. so what focal is that mystery lens", "focal_length_mm", 40),
        ("28mm of tubes gives 0.8x on an unmarked lens, whats the focal", "focal_length_mm", 35),
        ("i get 1:2 from 45 mm of bellows what focal length is my lens", "focal_length_mm", 90),
        ("hole 8mm and it acts as f8, so what lens is it", "focal_length_mm", 64),
        ("cut a 5 mm hole, meter says f11 so how long is the lens", "focal_length_mm", 55),
        ("with the ring 0.1 too thick it stops at 12 m, so which focal is it", "focal_length_mm", 34.5),
        ("it sits 3 tenths proud and gets to 8 m. how long a lens is it", "focal_length_mm", 48.7),
        ("my 17 acts like a 46 so how big is the sensor diagonal", "format_diagonal_mm", 16),
        ("a 25 looks like a 68 on my camera, what crop is that", "crop_factor", 2.72),
        ("what circle did i have if behind a 1.4x the disc is 40mm", "image_circle_mm", 28.6),
        ("circle is 30 with a 0.71 reducer in, what is the bare circle", "image_circle_mm", 42.3),
        ("i lose 1 stop close up, what magnification is that", "magnification", 0.414),
        ("85 with the glass is now a 60, what factor is it", "factor", 0.706),
    ],
)
def test_what_is_mostly_given_is_worked_out(club, text, name, value):
    found = told(club, text)
    assert first(found, name) == pytest.approx(value, rel=0.01)


@pytest.mark.parametrize(
    ("text", "value"),
    [
        ("12 and 24 stacked behind a 100 that gets 0.1x by itself", 0.46),
        ("12 and 24 mm tubes behind a 100 that gets 0.1x by itself", 0.46),
        ("12+24 tubes on 100 (0.1x native)", 0.46),
        ("10 and 16 together under a 55 which does 0.12x on its own", 0.12 + 26 / 55),
    ],
)
def test_tubes_put_together_are_answered_together_first(club, text, value):
    assert first(told(club, text), "magnification") == pytest.approx(value, rel=0.01)


def test_tubes_in_a_row_with_commas_are_answered_each(club):
    found = numbers(told(club, "10, 16, 26mm tubes on a 50/1.8 that does 0.14x already"), "magnification")
    assert [one[0] for one in found[:3]] == pytest.approx([0.34, 0.46, 0.66], rel=0.01)


@pytest.mark.parametrize(
    ("text", "ends"),
    [
        ("focusing ring m42 to e that goes 27.46 closed and 37.46 fully out, with a 35 on it", "27.46..37.46"),
        ("helicoid adapter m42-e, 27.46 closed, 37.46 open, with a 50", "27.46..37.46"),
        ("adapter with helicoid LTM to E 10.8 closed 16 extended, 35mm", "10.8..16"),
        ("my helicoidal m42-mft adapter goes 26.21 to 33, 50mm on it, range?", "26.21..33"),
        ("closed 26.2 open 31 m42 mft helicoid, 50mm", "26.2..31"),
        ("macro adapter F to E, 28.5 collapsed, 40 extended, 105 on it", "28.5..40"),
    ],
)
def test_both_ends_told_by_their_words_are_one_draw_of_one_ring(club, text, ends):
    found = told(club, text)
    assert f"{ends} mm" in found["reading"]
    assert found["reading"].count("helicoid") == 1
    assert found["chains"][0]["verdict"] == "infinity"


@pytest.mark.parametrize(
    "text", ["1.6x aps-c and a 28, feels like?", "28mm on a 1,6x apsc camera equivalent", "28mm on 1.6× aps-c equiv"]
)
def test_the_crop_told_with_a_format_tells_which_it_is(club, text):
    assert first(told(club, text), "equivalent_focal_mm") == pytest.approx(45.2, rel=0.01)
