"""What is asked on set: what a variable filter leaves, the shape of a squeezed picture, what to set for an old lens."""

from __future__ import annotations

from math import log2
from pathlib import Path

import pytest

from engine.ask import Desk
from engine.render.record import record_of
from engine.talk import Talk
from tests.answers.picture import close, one

FILTERS = """\
lenses:
  avocet:
    mount: d
    focal_length: 13 mm
    f_number: f/1.9
    front_thread: f40.5x0.5
filters:
  dusk:
    name: dusk
    mark: ND64
    thread: f58x0.75
"""


@pytest.mark.parametrize("text", ["variable nd maxes at 5, need 8.6", "my vari nd goes up to 5 stops, i need 8.6"])
def test_what_a_variable_filter_lacks_is_told(asked, text):
    found = asked(text)
    assert one(found, "light_difference_stops") == close(3.6)
    assert "f/5" not in found["reading"]


def test_a_variable_filter_told_after_the_density_leaves_the_rest_to_the_iris(talked):
    found = talked("f/1.4 full sun 1/50 iso 400, how much nd", "my variable maxes out at 6")
    stops = 15 + log2(4) - log2(1.4**2 * 50)
    assert one(found, "f_number") == close(1.4 * 2 ** ((stops - 6) / 2))


def test_a_variable_filter_that_is_strong_enough_leaves_nothing(talked):
    found = talked("f/2.8 full sun 1/50 iso 100, how much nd", "my variable maxes out at 8")
    assert "light_difference_stops" not in found["quantities"]
    assert "that is within it" in found["text"]


def test_the_base_of_a_camera_told_after_an_exposure_is_its_iso(talked):
    found = talked("1.4 lens, 25 fps, full sun, iso 100, which nd", "the cam base is 400 actually")
    assert one(found, "nd_stops") == close(15 + log2(4) - log2(1.4**2 * 50))


@pytest.mark.parametrize(
    ("text", "aspect"),
    [
        ("anamorphic 1.33x squeeze on 16:9, what shape do i get", 16 / 9 * 1.33),
        ("2x anamorphic on a 4:3 sensor, what aspect?", 4 / 3 * 2),
        ("1.5x anamorphic front on mft, desqueezed aspect", 17.3 / 13 * 1.5),
    ],
)
def test_a_squeezed_picture_is_drawn_wide_again(asked, text, aspect):
    assert one(asked(text), "aspect") == close(aspect)


@pytest.mark.parametrize(
    "text", ["which settings on my e-mount body for a manual lens", "what do i set on my z body for old glass"]
)
def test_what_to_set_is_told_where_no_one_setting_is_named(asked, text):
    found = asked(text)["text"]
    for setting in ("release without lens", "stabiliser", "working aperture", "magnifier", "crop mode", "transport"):
        assert setting in found


def test_a_setting_that_is_named_is_told_first(asked):
    assert "Set it by hand" in asked("which setting for the tiny circle of an 8mm lens")["text"]


def test_the_number_of_the_stabiliser_for_a_bare_focal_length_and_factor(asked, talked):
    assert one(asked("IS number for a 135 x0.71?"), "ibis_focal_mm", "with 0.71x") == close(95.85)
    found = talked("which settings on my e-mount body for a manual lens", "ok and IS number for a 135 x0.71?")
    assert one(found, "ibis_focal_mm", "with 0.71x") == close(95.85)


def test_a_speed_thing_is_a_reducer(asked):
    found = asked("0.71 speed thing vs plain ring for fd on aps-c, what would you do")
    assert "0.99 stops more light" in found["text"]


def test_step_rings_lead_to_the_own_filter_that_is_named(tmp_path: Path) -> None:
    gear = tmp_path / "gear.yaml"
    gear.write_text(FILTERS, "utf-8")
    desk = Desk(gear=gear)
    found = record_of(desk.ask("which step rings lead from the avocet to my dusk filter", Talk()), desk.knowledge)
    assert "one 58 mm filter" in found["text"]


def test_peaking_that_lights_up_is_no_lit_frame(asked):
    found = asked("peaking lights up half the frame")
    assert found["intent"] == "gear-setting"
    assert "Enlarge the picture" in " ".join(found["text"].split())
